//! A fault is worked up on the bench: which tests are for nothing, which look-alike has to be ruled out first. What a fault
//! shows is the content's, from the sources named there; the scenes are worked by hand from it.

mod support;

use stepboard::content::Content;
use stepboard::rules::fault::{Case, Observation, Probe, Test};
use support::content;

fn probe<'a>(content: &'a Content, key: &str) -> Probe<'a> {
    content.probes().into_iter().find(|probe| probe.key == key).expect("a probe")
}

/// A case of a fault with tests at hand; each shows the first answer that the fault names.
fn case<'a>(content: &'a Content, fault: &str, twins: &[&str], tests: &[&str]) -> Case<'a> {
    let fault = content.fault(fault).expect("a fault");
    let shows = |key: &str| fault.seen.get(key).and_then(|answers| answers.first()).map(String::as_str);
    let seen = Observation { probe: probe(content, "mark"), answer: shows("mark").expect("a look") };
    Case {
        faults: content.faults.iter().collect(),
        fault,
        twins: twins.iter().map(|twin| content.fault(twin).expect("a fault")).collect(),
        seen: vec![seen],
        tests: tests.iter().map(|key| Test { probe: probe(content, key), shows: shows(key) }).collect(),
    }
}

/// [la-09; B1, T2] Blush and bloom look the same; a damp cloth takes the bloom and leaves the blush.
#[test]
fn blush_is_not_named_before_bloom_is_wiped_for() {
    let content = content();
    let case = case(&content, "blush", &["bloom-haze"], &["damp_wipe", "water_stood", "test_block"]);
    assert_eq!(case.still_alike(&[]).map(|twin| twin.id.as_str()), Some("bloom-haze"));
    assert_eq!(case.still_alike(&["water_stood"]).map(|twin| twin.id.as_str()), Some("bloom-haze"));
    assert_eq!(case.still_alike(&["damp_wipe"]), None);
    let enough = case.enough().answer;
    assert!(enough.contains(&"damp_wipe"), "{enough:?}");
}

/// [la-09] What tells neither of the two leaves both open, however much of it is done.
#[test]
fn what_tells_nothing_of_either_rules_nothing_out() {
    let content = content();
    let case = case(&content, "blush", &["bloom-haze"], &["test_block", "palm", "white_lies"]);
    assert!(case.still_alike(&["test_block", "palm", "white_lies"]).is_some());
}

/// Of all faults only soft film shows dents [T18, G1 5-31]: with one test that fits it is named, and the next is too much.
#[test]
fn once_it_can_be_named_every_test_is_for_nothing() {
    let content = content();
    let dented = content.faults.iter().filter(|fault| fault.seen["mark"].iter().any(|mark| mark == "dents"));
    assert_eq!(dented.count(), 1, "the scene rests on it");
    let case = case(&content, "soft-film", &[], &["thumbnail", "cloth_press"]);
    assert_eq!(case.enough().answer.len(), 1);
    // Either of the two would have done, and one is never too many.
    assert_eq!(case.needless(&["cloth_press", "thumbnail"]).answer, ["thumbnail", "cloth_press"]);
    assert_eq!(case.needless(&["thumbnail"]).answer, Vec::<&str>::new());
    assert_eq!(
        case.needless(&["thumbnail", "cloth_press"]).answer,
        case.needless(&["cloth_press", "thumbnail"]).answer
    );
}

/// A hollow or a bump under the finger tells fish-eye from a nib [la-04; B1, G2]; a test of which a fish-eye says nothing was
/// worth trying, and is counted for its minutes only.
#[test]
fn a_test_that_shows_nothing_is_not_needless() {
    let content = content();
    let case = case(&content, "fish-eye", &[], &["fingertip", "tape_pull", "odour"]);
    assert!(case.tests.iter().filter(|test| test.shows.is_none()).count() == 2, "the scene rests on it");
    assert_eq!(case.needless(&["tape_pull", "odour", "fingertip"]).answer, Vec::<&str>::new());
}

/// Cracks are cold checks, splits of the wood or crow's feet [la-21, la-22; T1, T3, G2 11.4.2.6]. How they run is seen in a
/// minute; that tape does not lift the film costs an hour of mending, and a split answers it alike.
#[test]
fn the_quickest_tests_that_name_it_are_enough() {
    let mut content = content();
    content
        .faults
        .retain(|fault| ["cold-check", "substrate-crack", "crows-foot"].contains(&fault.id.as_str()));
    let case = case(&content, "cold-check", &[], &["tape_pull", "crack_way"]);
    assert_eq!(case.enough().answer, ["crack_way"]);
    assert_eq!(case.needless(&["tape_pull", "crack_way"]).answer, ["tape_pull"]);
}
