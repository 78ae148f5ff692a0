//! Which demonstrations count, and what is missing.

use super::support::log::date;
use super::support::watch::{ILSE, Watch};
use super::{TODAY, ask, ask_after, levelled};
use std::sync::Arc;
use stepboard::content::OnFile;
use stepboard::learn::observation::{Missing, Shown, Worth};
use stepboard::record::Judged::{Met, NotSeen, NotYet};
use stepboard::record::{Event, LocalDate};

pub(crate) fn worths(shown: &Shown<'_>) -> Vec<Worth> {
    shown.demonstrations.iter().map(|(_, worth)| *worth).collect()
}

fn to_see<'a>(shown: &Shown<'a>) -> Vec<&'a str> {
    shown.to_see.iter().map(|one| one.id.as_str()).collect()
}

#[test]
fn as_many_as_are_asked_for_on_as_many_days() {
    let competency = levelled();
    let mut watch = Watch::new("a", ILSE);
    let none = ask(&[], &competency);
    assert_eq!(none.missing, [Missing::Demonstrations, Missing::Days, Missing::Criteria]);
    assert_eq!(none.to_see.len(), 6);
    for (occasion, day) in [("o1", 30), ("o2", 30), ("o3", 31), ("o4", 31)] {
        watch.saw(&competency, occasion, day, &[]);
    }
    let found = ask(&watch.events, &competency);
    assert_eq!((found.count, found.days, found.to_see.len()), (4, 2, 0));
    assert_eq!(found.missing, [Missing::Days]);
    watch.saw(&competency, "o5", 40, &[]);
    let found = ask(&watch.events, &competency);
    assert_eq!((found.count, found.days, found.missing.len()), (5, 3, 0));
}

#[test]
fn one_failed_critical_criterion_fails_the_demonstration() {
    let competency = levelled();
    let mut watch = Watch::new("a", ILSE);
    watch.saw(&competency, "o1", 30, &[("levelled-3", NotYet)]);
    let found = ask(&watch.events, &competency);
    assert_eq!(worths(&found), [Worth::Failed]);
    assert_eq!((found.count, found.days, found.to_see.len()), (0, 0, 6), "nothing of it counts");
    // One that is not critical fails alone, and must be seen met at another.
    watch.saw(&competency, "o2", 31, &[("levelled-2", NotYet)]);
    let found = ask(&watch.events, &competency);
    assert_eq!(worths(&found), [Worth::Failed, Worth::Counts]);
    assert_eq!(to_see(&found), ["levelled-2"]);
    watch.saw(&competency, "o3", 32, &[]);
    assert_eq!(to_see(&ask(&watch.events, &competency)), Vec::<&str>::new());
}

#[test]
fn what_was_not_seen_must_be_seen_at_another() {
    let competency = levelled();
    let mut watch = Watch::new("a", ILSE);
    for (nth, day) in (30..34).enumerate() {
        watch.saw(&competency, &format!("o{nth}"), day, &[("levelled-1", NotSeen), ("levelled-6", NotSeen)]);
    }
    let found = ask(&watch.events, &competency);
    assert_eq!((found.count, found.days), (4, 4));
    assert_eq!((to_see(&found), found.missing), (vec!["levelled-1", "levelled-6"], vec![Missing::Criteria]));
    // A criterion that was never heard of then, as where one was added to the competency, was not seen.
    let mut older = watch.made(&competency, "o9", 40, &[]);
    older.judged.remove("levelled-6");
    watch.put(older);
    assert_eq!(to_see(&ask(&watch.events, &competency)), ["levelled-6"]);
    assert_eq!(ask(&watch.events, &competency).demonstrations[0].0.judged("levelled-1"), NotSeen);
}

#[test]
fn work_that_was_helped_with_does_not_count() {
    let competency = levelled();
    let mut watch = Watch::new("a", ILSE);
    let mut helped = watch.made(&competency, "o1", 30, &[]);
    helped.alone = false;
    watch.put(helped);
    let found = ask(&watch.events, &competency);
    assert_eq!((worths(&found), found.count), (vec![Worth::Helped], 0));
}

/// The months of the competency, and the day of the last sign-off.
#[test]
fn what_lies_too_long_ago_or_before_the_last_sign_off_does_not_count() {
    let competency = levelled();
    let mut watch = Watch::new("a", ILSE);
    watch.saw(&competency, "o1", 30, &[]);
    watch.saw(&competency, "o2", 45, &[]);
    let on = |after: Option<LocalDate>, today: &str| {
        let today: LocalDate = today.parse().expect("a date");
        worths(&ask_after(&watch.events, &competency, after, today))
    };
    // 31 January 2027 and 24 months.
    assert_eq!(on(None, "2029-01-30"), [Worth::Counts, Worth::Counts]);
    assert_eq!(on(None, "2029-01-31"), [Worth::Lapsed, Worth::Counts]);
    assert_eq!(on(Some(date(29)), "2027-03-02"), [Worth::Counts, Worth::Counts]);
    assert_eq!(on(Some(date(30)), "2027-03-02"), [Worth::Lapsed, Worth::Counts]);
    assert_eq!(on(Some(date(45)), "2027-03-02"), [Worth::Lapsed, Worth::Lapsed]);
}

/// 29 CFR 1910.134(e)(1): a medical clearance; (f)(2): a fit test, at least yearly.
#[test]
fn what_is_on_file_must_be_in_force() {
    let competency = super::support::shop::competency("mask-worn");
    let mut watch = Watch::new("a", ILSE);
    watch.filed(OnFile::MedicalClearance, 10, 800);
    let on_file = |events: &[Event], day: u32| {
        !ask_after(events, &competency, None, date(day)).missing.contains(&Missing::OnFile)
    };
    assert!(!on_file(&watch.events, TODAY), "no fit test");
    watch.filed(OnFile::FitTest, 10, 800);
    assert!(on_file(&watch.events, TODAY));
    assert!(on_file(&watch.events, 374) && !on_file(&watch.events, 375), "a year after 11 January 2027");
    assert!(!on_file(&watch.events, 9), "its day is to come");
    let papers = ask_after(&watch.events, &competency, None, date(400)).papers;
    assert_eq!(papers.iter().map(|paper| paper.in_force).collect::<Vec<_>>(), [true, false]);
    // What the competency does not ask for is left out.
    let other = super::support::shop::competency("two-part");
    assert!(ask(&watch.events, &other).papers.is_empty());
    // A paper of somebody else's is no paper of theirs.
    for event in &mut watch.events {
        if let Event::Filed(filing) = event {
            let filing = Arc::make_mut(filing);
            filing.subject = "18".to_owned();
        }
    }
    assert!(!on_file(&watch.events, TODAY));
}

#[test]
fn another_person_and_another_competency_are_kept_apart() {
    let competency = levelled();
    let other = super::support::shop::competency("buffed");
    let mut watch = Watch::new("a", ILSE);
    watch.saw(&competency, "o1", 30, &[]);
    // The same name of an occasion: one piece of work may show two competencies.
    watch.saw(&other, "o1", 30, &[]);
    let mut others = watch.made(&competency, "o1", 31, &[]);
    others.subject = "18".to_owned();
    watch.put(others);
    assert_eq!((ask(&watch.events, &competency).count, ask(&watch.events, &other).count), (1, 1));
    assert_eq!(ask(&watch.events, &competency).demonstrations[0].0.judged("levelled-1"), Met);
}
