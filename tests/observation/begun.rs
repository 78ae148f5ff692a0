//! An observation that is being made.

use super::levelled;
use super::support::watch::{APPRENTICE, ILSE, Watch, by};
use stepboard::record::{Begun, Event, Judged, Stopwatch};

fn begun() -> Begun {
    Begun {
        by: ILSE.to_owned(),
        subject: APPRENTICE.to_owned(),
        competency: "levelled".to_owned(),
        occasion: "4f09ab".to_owned(),
        joined: false,
        on: "2027-01-31".to_owned(),
        paper: false,
        work: " Ticket 204,\nback ".to_owned(),
        alone: Some(true),
        judged: [("levelled-1".to_owned(), Judged::Met), ("levelled-2".to_owned(), Judged::NotYet)].into(),
        note: String::new(),
        stopwatch: Stopwatch::default(),
    }
}

#[test]
fn what_was_not_judged_was_not_seen_and_texts_can_be_signed() {
    let competency = levelled();
    let mut watch = Watch::new("a", ILSE);
    watch.saw(&competency, "o1", 30, &[]);
    let Some(Event::Observed(other)) = watch.events.pop() else { panic!("an observation") };
    let written = |begun: &Begun| {
        let criteria = competency.criteria.iter().map(|one| one.id.as_str());
        begun.observed(other.stamp.clone(), criteria, 0, by(ILSE))
    };
    let found = written(&begun()).expect("all that is needed");
    assert!(found.unfit().is_empty());
    assert_eq!((found.work.as_str(), found.seconds, found.judged.len()), ("Ticket 204, back", None, 6));
    let judged = [1, 2, 3].map(|nth| found.of(&format!("levelled-{nth}")));
    assert_eq!(judged, [Judged::Met, Judged::NotYet, Judged::NotSeen]);
    assert_eq!(written(&Begun { alone: None, ..begun() }), None);
    assert_eq!(written(&Begun { on: "2027-02-30".to_owned(), ..begun() }), None);
    // It is kept at every touch, and goes on where it was.
    let text = serde_json::to_string(&begun()).expect("json");
    assert_eq!(serde_json::from_str::<Begun>(&text).expect("read again"), begun());
    assert!(begun().is_of(ILSE, APPRENTICE, "levelled") && !begun().is_of("a-2", APPRENTICE, "levelled"));
}

#[test]
fn the_stopwatch_starts_and_stops() {
    let started = Stopwatch::default().pressed("2027-01-31T08:00:00Z".to_owned(), 0);
    assert_eq!(started, Stopwatch { seconds: 0, since: Some("2027-01-31T08:00:00Z".to_owned()) });
    let stopped = started.pressed("2027-01-31T08:01:30Z".to_owned(), 90);
    assert_eq!(stopped, Stopwatch { seconds: 90, since: None });
}
