//! What an instructor sees of walks: which were walked and how they ended, and which rules are broken most often.

use crate::support::log::{Log, ana, decided};
use stepboard::exchange::crew::{Misread, Slipped, Slips, WalkCame, WalkWhat, stuck, walks};
use stepboard::record::{Decided, Event, Inspected, Voids, WalkStep, Walked, Way, Wrong};

const SEAL: &str = "seal-check";
const RULE: &str = "hazard.seal-check-each-time";

#[test]
fn each_walk_is_told_once_with_what_was_wrong_on_it_and_how_it_ended() {
    let seen = Inspected { seed: 7, found: 2, half: 0, missed: Vec::new(), wrong: 1 };
    let mut over = decided(&[]);
    (over.nth, over.over) = (2, true);
    let mut log = ana();
    log.decides("w", "a-job", &[(SEAL, Some(RULE))]).decides("v", "a-job", &[(SEAL, None)]);
    log.walks("i", "a-job", WalkStep::Inspected(seen.clone()));
    log.walks("w", "a-job", WalkStep::Decided(Box::new(over))).walks("v", "a-job", WalkStep::LetGo);
    // On another tablet the name is another walk's.
    let mut other = Log::new("b", "Ana");
    other.decides("w", "another-job", &[]);
    log.events.extend(other.events);
    let all = walks(&log.events);
    let of = |nth: usize| match all[nth].what {
        WalkWhat::Walked { way, again, decisions, wrong, came } => (way, again, decisions, wrong, came),
        WalkWhat::Inspected(_) => panic!("walked"),
    };
    assert_eq!(all.len(), 4);
    assert_eq!(of(0), (Way::Own, false, 2, 1, WalkCame::Over));
    assert_eq!(of(1), (Way::Own, false, 1, 0, WalkCame::Left));
    assert_eq!(all[2].what, WalkWhat::Inspected(&seen));
    assert_eq!((of(3), all[3].last.job.as_str()), ((Way::Own, false, 1, 0, WalkCame::Open), "another-job"));
}

fn misread(log: &Log) -> Vec<Slipped> {
    let voids = Voids::of(&log.events);
    let mut slips = Slips::new("a-01", "Ana");
    for walked in log.events.iter().filter_map(Event::walked) {
        walked.decided().iter().for_each(|one| slips.take_decided(walked, one, &voids));
    }
    slips.told().collect()
}

#[test]
fn a_rule_that_is_broken_on_walks_stands_among_what_people_are_stuck_on() {
    let mut guided = decided(&[(SEAL, Some(RULE))]);
    guided.way = Way::Guided;
    let mut bare = decided(&[]);
    (bare.nth, bare.broke) = (3, vec!["hazard.eyes-and-skin-covered".to_owned()]);
    let mut log = ana();
    log.decides("w", "a-job", &[(SEAL, Some(RULE))]).walks("g", "a-job", WalkStep::Decided(Box::new(guided)));
    log.decides("w", "a-job", &[(SEAL, None)]).walks("w", "a-job", WalkStep::Decided(Box::new(bare)));
    let found = misread(&log);
    let of = |rule: &str| found.iter().find(|one| one.misread == Misread::Rule(rule.to_owned()));
    let seal = of(RULE).expect("broken twice");
    // Guided it was warned of: that is not sure and wrong.
    assert_eq!((seal.count, seal.sure, seal.right_since), (2, 1, 1));
    assert_eq!(seal.kinds(), [SEAL]);
    // What no card asks is told all the same.
    let bare = of("hazard.eyes-and-skin-covered").expect("broken once");
    assert_eq!((bare.count, bare.kinds().len()), (1, 0));
    assert_eq!(bare.example, log.events[3].walked().map(|one: &Walked| one.stamp.name()).expect("written"));
    assert_eq!(stuck(found).len(), 2);
    log.voids(Wrong::Rule { rule: RULE.to_owned(), cards: Vec::new() }, "Wrong table");
    assert_eq!(misread(&log).len(), 1);
}

/// Two windows on one walk may each write the same decisions down; what a guide took back is decided anew.
#[test]
fn what_two_windows_wrote_is_told_once() {
    let decides = |log: &mut Log, nth: u32, way: Way, on: &str| {
        let said = serde_json::json!({ "wait": on });
        let one = Decided { nth, way, decision: said, ..decided(&[(SEAL, Some(RULE))]) };
        log.walks("w", "a-job", WalkStep::Decided(Box::new(one)));
    };
    let figures = |log: &Log| match walks(&log.events)[0].what {
        WalkWhat::Walked { decisions, wrong, .. } => (decisions, wrong, misread(log)[0].count),
        WalkWhat::Inspected(_) => panic!("walked"),
    };
    let mut own = ana();
    for nth in [1, 2, 1, 2] {
        decides(&mut own, nth, Way::Own, "morning");
    }
    assert_eq!(figures(&own), (2, 2, 2));
    let mut guided = ana();
    for (nth, on) in [(1, "morning"), (1, "morning"), (2, "morning"), (1, "noon"), (2, "morning")] {
        decides(&mut guided, nth, Way::Guided, on);
    }
    assert_eq!(figures(&guided), (4, 4, 4));
}
