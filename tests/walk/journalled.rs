//! What is written down of a walk: each decision once, with what was known then, told before anything showed.

use crate::steps::{begin, does, go, ready_for_the_gun, rest, up_to_work};
use crate::support::content;
use crate::support::log::date;
use stepboard::content::Content;
use stepboard::record::{Decided, Event, FORMAT, Journal, Ready, Stamp, Walked, Way, decisions_of};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::term::Term;
use stepboard::walk::decision::Decision;
use stepboard::walk::journalled::{Clerk, Desk};
use stepboard::walk::{Kept, Mode, Read, RoomAct, Saved, Walk};

const DEVICE: &str = "a";

fn kept(walk: &Walk, mode: Mode) -> Kept {
    let saved = Saved { mode, ..walk.saved() };
    Kept::begun("w".to_owned(), "Ana".to_owned(), "2027-01-01T08:00:00Z".to_owned(), saved)
}

/// Writes down what is not written down yet, behind the events.
fn write(clerk: &mut Clerk, kept: &Kept, walk: &Walk, events: &mut Vec<Event>, content: &Content) -> usize {
    let stamp = || Stamp {
        format: FORMAT,
        sequence: 0,
        device: DEVICE.to_owned(),
        at: "2027-01-01T08:00:00Z".to_owned(),
        date: Some(date(0)),
        person: kept.person.clone(),
    };
    let new = clerk.rest(walk, events, Desk { kept, content, stamp: &stamp });
    let count = new.len();
    for mut walked in new {
        walked.stamp.sequence = u64::try_from(events.len()).expect("few") + 1;
        events.push(walked.into());
    }
    count
}

fn all(events: &[Event]) -> Vec<&Decided> {
    events.iter().filter_map(Event::walked).filter_map(Walked::decided).collect()
}

#[test]
fn each_decision_is_written_once_however_often_the_walk_is_taken_up() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    let on = rest(&walk, &content);
    let (kept, mut events, mut clerk) = (kept(&walk, Mode::Own), Vec::new(), Clerk::default());
    for decision in on.iter().take(6) {
        go(&mut walk, [decision.clone()], &content);
        assert_eq!(write(&mut clerk, &kept, &walk, &mut events, &content), 1);
        assert_eq!(write(&mut clerk, &kept, &walk, &mut events, &content), 0);
    }
    // The page was closed between two decisions that were stored and written down.
    let text = serde_json::to_string(&Journal::new(events)).expect("plain data");
    let mut events = serde_json::from_str::<Journal>(&text).expect("a journal").events().to_vec();
    go(&mut walk, [on[6].clone(), on[7].clone()], &content);
    assert_eq!(write(&mut Clerk::default(), &kept, &walk, &mut events, &content), 2);
    assert_eq!(write(&mut Clerk::default(), &kept, &walk, &mut events, &content), 0);
    let written = all(&events);
    let nth: Vec<u32> = written.iter().map(|one| one.nth).collect();
    assert_eq!(nth, (1..=8).collect::<Vec<u32>>());
    for (one, decision) in written.iter().zip(&on) {
        assert_eq!(serde_json::from_value::<Decision>(one.decision.clone()).expect("a decision"), *decision);
        assert_eq!((one.way, one.again, one.over, one.broke.len()), (Way::Own, false, false, 0));
        for of in &one.exercised {
            assert_eq!(content.family(&of.family).map(|info| info.version), Some(of.version));
        }
    }
}

/// Guided, the last decision can be taken back: what was decided first stays written down.
#[test]
fn what_is_taken_back_stays_and_what_is_decided_instead_is_written_down() {
    let content = content();
    let begun = begin(&content, "plain-plate");
    let on = rest(&begun, &content);
    let kept = kept(&begun, Mode::Guided);
    let (mut walk, mut events, mut clerk) = (begun, Vec::new(), Clerk::default());
    go(&mut walk, on.iter().take(3).cloned(), &content);
    write(&mut clerk, &kept, &walk, &mut events, &content);
    let back = walk.at(2, &content);
    assert_eq!(write(&mut clerk, &kept, &back, &mut events, &content), 0);
    let mut other = back.clone();
    go(&mut other, [Decision::Wait(stepboard::walk::Wait::Morning)], &content);
    assert_eq!(write(&mut clerk, &kept, &other, &mut events, &content), 1);
    assert_eq!(all(&events).iter().map(|one| one.nth).collect::<Vec<u32>>(), [1, 2, 3, 3]);
    assert!(all(&events).iter().all(|one| one.way == Way::Guided));
    let stands = decisions_of(&events, DEVICE, "w");
    assert_eq!(stands.len(), 3);
    assert_eq!(stands[&3].decision, serde_json::json!({ "wait": "morning" }));
    // Read anew it is as it was.
    assert_eq!(write(&mut Clerk::default(), &kept, &other, &mut events, &content), 0);
}

#[test]
fn what_goes_on_from_an_earlier_walk_says_so_and_repeats_nothing() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    let on = rest(&walk, &content);
    go(&mut walk, on.iter().take(4).cloned(), &content);
    let branch = Kept { id: "branch".to_owned(), taken_over: Some(4), ..kept(&walk, Mode::Own) };
    let (mut events, mut clerk) = (Vec::new(), Clerk::default());
    assert_eq!(write(&mut clerk, &branch, &walk, &mut events, &content), 0);
    go(&mut walk, [on[4].clone()], &content);
    assert_eq!(write(&mut clerk, &branch, &walk, &mut events, &content), 1);
    let [one] = all(&events)[..] else { panic!("one decision") };
    assert_eq!((one.nth, one.again), (5, true));
}

/// One window is overtaken by another on the same walk and writes down what it shows now: the other has written it.
#[test]
fn what_two_windows_write_down_of_one_walk_is_told_once() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    let on = rest(&walk, &content);
    go(&mut walk, on.iter().take(3).cloned(), &content);
    let kept = kept(&walk, Mode::Own);
    let (mut journal, mut other) = (Vec::new(), Vec::new());
    write(&mut Clerk::default(), &kept, &walk, &mut journal, &content);
    // The second knows nothing of what the first has written meanwhile.
    assert_eq!(write(&mut Clerk::default(), &kept, &walk, &mut other, &content), 3);
    let is_told = |event: &Event| event.walked().is_some_and(|one| one.is_told_by(&journal));
    assert!(other.iter().all(is_told));
    let mut on_another = other[0].clone();
    "b".clone_into(&mut on_another.stamp_mut().device);
    assert!(!is_told(&on_another));
    go(&mut walk, [on[3].clone()], &content);
    write(&mut Clerk::default(), &kept, &walk, &mut other, &content);
    assert_eq!(other.iter().filter(|event| is_told(event)).count(), 3);
}

/// After somebody else's walk was graded, another try of it is one's own, and written down as told before.
#[test]
fn another_try_after_somebody_elses_walk_is_ones_own() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    let on = rest(&walk, &content);
    go(&mut walk, on.iter().take(2).cloned(), &content);
    let named = vec![(0, "se-01".to_owned())];
    let theirs = Kept { named, graded: true, ..kept(&walk, Mode::Inspect) };
    let own = theirs.another_try(&walk, "branch".to_owned(), "2027-01-02T08:00:00Z".to_owned());
    assert_eq!((own.saved.mode, own.graded, own.named.len(), own.taken_over), (Mode::Own, false, 0, Some(2)));
    let mut walk = own.saved.replay(&content).expect("it was walked");
    go(&mut walk, [on[2].clone()], &content);
    let mut events = Vec::new();
    assert_eq!(write(&mut Clerk::default(), &own, &walk, &mut events, &content), 1);
    let [one] = all(&events)[..] else { panic!("one decision") };
    assert_eq!((one.way, one.nth, one.again), (Way::Own, 3, true));
}

/// A coat over filler that is not dry (se-09), sprayed with nothing before mouth and nose (29 CFR 1910.134(a)): the decision
/// says both at once, with what could be known of the room.
#[test]
fn a_wrong_decision_says_which_rules_it_broke_and_what_was_known() {
    let content = content();
    let mut walk = begin(&content, "shaded-lute");
    let wipe = up_to_work(&mut walk, &content, Op::WipeFiller);
    go(&mut walk, [Decision::Work(wipe), Decision::Room(vec![RoomAct::RagsAway])], &content);
    let [worn, duties] = ready_for_the_gun();
    let Decision::Wear(worn) = worn else { panic!("something to put on") };
    go(&mut walk, [Decision::Wear(stepboard::walk::Worn { respirator: None, ..worn }), duties], &content);
    let (kept, mut events, mut clerk) = (kept(&walk, Mode::Own), Vec::new(), Clerk::default());
    write(&mut clerk, &kept, &walk, &mut events, &content);
    assert!(all(&events).iter().all(|one| one.broke.is_empty()));
    does(&mut walk, &content, Op::Seal);
    write(&mut clerk, &kept, &walk, &mut events, &content);
    let last = *all(&events).last().expect("written");
    assert_eq!(last.broke, ["se-09", "hazard.draw-is-no-respirator"]);
    let wrong =
        |family: &str| last.exercised.iter().find(|one| one.family == family).map(|one| one.is_right());
    assert_eq!(
        (wrong("filler-wait"), wrong("mask-kind"), wrong("at-the-door")),
        (Some(false), Some(false), Some(true))
    );
    assert_eq!(last.known.respirator, None);
    let read = last.known.air.expect("the air was read");
    let meters = walk.turns().iter().flat_map(|turn| &turn.read);
    let air = meters
        .filter_map(|one| if let Read::Air(air) = one { Some(*air) } else { None })
        .next_back()
        .expect("read");
    assert_eq!((read.air_c, read.rh, read.work_c), (air.air.get(), air.humidity.get(), air.work.get()));
    assert!(read.hours_ago < 0.01, "{read:?}");
    assert!(last.exercised.iter().all(|one| one.family != "seal-check"), "nothing was worn that has a seal");
    assert!(
        [Ready::Fan, Ready::GaugeRead, Ready::SourcesOut].iter().all(|one| last.known.ready.contains(one))
    );
    assert!(!last.known.ready.contains(&Ready::RagsAbout));
    assert!(last.known.parts.values().any(|done| done == Op::WipeFiller.slug()), "{:?}", last.known.parts);
    assert!(last.known.shown.is_empty(), "nothing showed before");
}
