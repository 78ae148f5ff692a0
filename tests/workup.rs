//! A fault is worked up on the bench: which tests are for nothing, which look-alike has to be ruled out first. What a fault
//! shows is the content's, from the sources named there; the scenes are worked by hand from it.

mod support;

use stepboard::content::Content;
use stepboard::rules::fault::{Case, Observation, Probe, Test, entropy};
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
        faults: &content.faults,
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
    let enough = case.enough().expect("it can be told").answer;
    assert!(enough.contains(&"damp_wipe"), "{enough:?}");
}

/// [la-09] Without the cloth, and without anything else that tells the two apart, it cannot be named.
#[test]
fn what_would_decide_is_named_where_it_is_not_at_hand() {
    let content = content();
    let case = case(&content, "blush", &["bloom-haze"], &["test_block", "palm"]);
    let missing = case.enough().expect_err("nothing tells the two apart").missing;
    let [key] = missing.as_slice() else { panic!("{missing:?}") };
    let of = |fault: &str| content.fault(fault).expect("a fault").seen.get(key.as_str()).cloned();
    let (blush, bloom) = (of("blush").expect("it speaks of it"), of("bloom-haze").expect("it speaks of it"));
    assert!(!blush.iter().any(|answer| bloom.contains(answer)), "`{key}` tells them apart");
}

/// Of all faults only soft film shows dents [T18, G1 5-31]: with one test that fits it is named, and the next is too much.
#[test]
fn once_it_can_be_named_every_test_is_for_nothing() {
    let content = content();
    let dented = content.faults.iter().filter(|fault| fault.seen["mark"].iter().any(|mark| mark == "dents"));
    assert_eq!(dented.count(), 1, "the scene rests on it");
    let case = case(&content, "soft-film", &[], &["thumbnail", "cloth_press"]);
    assert_eq!(case.enough().expect("named").answer.len(), 1);
    assert_eq!(case.needless(&["cloth_press", "thumbnail"]).answer, ["thumbnail"]);
    assert_eq!(case.needless(&[]).answer, Vec::<&str>::new());
}

/// A test tells nothing the second time.
#[test]
fn a_test_done_again_is_for_nothing() {
    let content = content();
    let case = case(&content, "fish-eye", &[], &["came", "pore_line", "fingertip"]);
    let needless = case.needless(&["came", "came"]).answer;
    assert_eq!(needless, ["came"]);
}

/// Cracks are cold checks, splits of the wood or crow's feet [la-21, la-22; T1, T3, G2 11.4.2.6]. How they run is seen in a
/// minute; whether tape lifts the film costs an hour of mending and three of these faults answer it alike or not at all.
#[test]
fn a_long_test_that_mars_is_for_nothing_where_a_look_tells_more() {
    let content = content();
    let case = case(&content, "cold-check", &[], &["crack_way", "tape_pull"]);
    assert_eq!(case.needless(&["tape_pull"]).answer, ["tape_pull"]);
    assert_eq!(case.needless(&["crack_way"]).answer, Vec::<&str>::new());
    assert_eq!(case.enough().expect("it can be told").answer.first(), Some(&"crack_way"));
}

/// Entropy of two alike faults is one bit (C. E. Shannon 1948, section 6): so much a deciding test tells at most.
#[test]
fn no_test_tells_more_than_there_is_to_know() {
    let content = content();
    let least = entropy([0.5, 0.5].into_iter());
    assert!((least - 1.0).abs() < 1e-12);
    for fault in &content.faults {
        let keys: Vec<&str> = fault.seen.keys().map(String::as_str).filter(|key| *key != "mark").collect();
        let case = case(&content, &fault.id, &[], &keys);
        let enough = case.enough().expect("no twin to rule out").answer;
        assert!(case.needless(&enough).answer.is_empty(), "{}: {enough:?}", fault.id);
        assert!(enough.len() <= keys.len(), "{}", fault.id);
    }
}
