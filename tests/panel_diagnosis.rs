//! What the verdict on a diagnosis says of each test. What a fault shows is the content's, from the sources named there.

mod support;

use stepboard::card::{Answer, Card, Diagnosis, Mark, Weighed, Worth, deal, grade, solve, weigh};
use stepboard::content::World;
use support::content;

/// Cards that are dealt: enough for many faults and for each of the twins.
const SEEDS: u32 = 120;

/// Each card on which the fault can be named, with its right answer.
fn cases(mut see: impl FnMut(&World<'_>, &Card, &Diagnosis)) {
    let content = content();
    let sheet = content.sheets.first().expect("a sheet");
    let world = World { content: &content, sheet };
    for seed in 1..=SEEDS {
        let card = deal(&world, "panel-diagnosis", seed).expect("a card");
        if let Some(Answer::Diagnosis(right)) = solve(&card, &world).map(|solution| solution.right) {
            see(&world, &card, &right);
        }
    }
}

fn mark(world: &World<'_>, card: &Card, given: &Diagnosis) -> Mark {
    grade(card, world, &Answer::Diagnosis(given.clone())).expect("a grade").mark
}

fn weighed(world: &World<'_>, card: &Card, right: &Diagnosis, tests: &[String]) -> (Diagnosis, Vec<Weighed>) {
    let given = Diagnosis { tests: tests.to_vec(), ..right.clone() };
    let answers = [right, &given].map(|one| Answer::Diagnosis(one.clone()));
    (given, weigh(card, world, &answers[0], &answers[1]))
}

fn those(tests: &[Weighed], worth: Worth) -> Vec<&str> {
    tests.iter().filter(|one| one.worth == worth).map(|one| one.test.as_str()).collect()
}

#[test]
fn of_a_right_diagnosis_no_test_is_needless_or_missing() {
    cases(|world, card, right| {
        let (given, tests) = weighed(world, card, right, &right.tests);
        assert_eq!(mark(world, card, &given), Mark::Right);
        assert_eq!(those(&tests, Worth::Needed), right.tests, "{}", card.seed);
        assert_eq!(tests.len(), right.tests.len());
    });
}

/// With every needless test left out the rest is right, and nothing is needless where it was right before.
#[test]
fn without_its_needless_tests_a_diagnosis_is_right() {
    let (mut seen, mut silent) = (0, 0);
    cases(|world, card, right| {
        let all = card.offered.as_ref().expect("an offer").tests.clone();
        let (given, tests) = weighed(world, card, right, &all);
        let needless = those(&tests, Worth::Needless);
        seen += needless.len();
        silent += those(&tests, Worth::Silent).len();
        assert_eq!(mark(world, card, &given) == Mark::Right, needless.is_empty(), "{}", card.seed);
        assert_eq!(tests.len(), all.len());
        let kept: Vec<String> =
            all.iter().filter(|test| !needless.contains(&test.as_str())).cloned().collect();
        let (given, _) = weighed(world, card, right, &kept);
        assert_eq!(mark(world, card, &given), Mark::Right, "{}", card.seed);
    });
    assert!(seen > 0 && silent > 0, "{seen} needless, {silent} silent");
}

/// [la-09; B1, T2] Blush and bloom look the same; a damp cloth takes the bloom and leaves the blush. With nothing done
/// something is missing, with the cloth nothing is.
#[test]
fn between_blush_and_bloom_a_damp_wipe_is_enough() {
    let wipe = || vec!["damp_wipe".to_owned()];
    let mut seen = 0;
    cases(|world, card, right| {
        let offered = card.offered.as_ref().expect("an offer");
        let alike = ["blush", "bloom-haze"].contains(&right.fault.as_str());
        if alike && offered.tests.contains(&wipe()[0]) {
            let (given, tests) = weighed(world, card, right, &[]);
            assert_ne!(mark(world, card, &given), Mark::Right);
            assert_ne!(those(&tests, Worth::Missing), Vec::<&str>::new(), "{}", card.seed);
            let (given, tests) = weighed(world, card, right, &wipe());
            assert_eq!(mark(world, card, &given), Mark::Right);
            assert_eq!(those(&tests, Worth::Needed), wipe(), "{}: {tests:?}", card.seed);
            seen += 1;
        }
    });
    assert!(seen > 1, "{seen} cards");
}
