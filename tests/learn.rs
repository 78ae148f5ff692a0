//! What comes next and what is held, on a board of our own.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod support;

use std::collections::BTreeSet;
use stepboard::content::{Content, FamilyInfo};
use stepboard::learn::{Past, ROUND, Why, held, minutes, next, seed};
use stepboard::record::Certainty;
use stepboard::rules::term::Stage;

/// A board of five families on three stages.
fn board() -> Content {
    let model = support::content().families[0].clone();
    let family = |id: &str, stage| FamilyInfo { id: id.to_owned(), stage, ..model.clone() };
    Content {
        families: vec![
            family("room-a", Stage::Room),
            family("fill-a", Stage::Fill),
            family("sand-a", Stage::Sand),
            family("sand-b", Stage::Sand),
            family("fill-b", Stage::Fill),
        ],
        ..Content::default()
    }
}

fn past(answers: &[(&str, bool, Certainty)]) -> Vec<Past> {
    let one = |(family, right, certainty): &(&str, bool, Certainty)| Past {
        family: (*family).to_owned(),
        right: *right,
        certainty: *certainty,
    };
    answers.iter().map(one).collect()
}

const JOB: Certainty = Certainty::OnTheJob;

fn pick(answers: &[(&str, bool, Certainty)]) -> (String, Why) {
    let board = board();
    let next = next(&board, &past(answers), None).unwrap();
    (next.family.id.clone(), next.why)
}

#[test]
fn stages_not_begun_come_first_in_the_order_of_the_work() {
    assert_eq!(pick(&[]), ("sand-a".into(), Why::NotBegun));
    assert_eq!(pick(&[("sand-a", false, JOB)]), ("fill-a".into(), Why::NotBegun));
    assert_eq!(pick(&[("sand-a", true, JOB), ("fill-a", true, JOB)]), ("room-a".into(), Why::NotBegun));
}

#[test]
fn what_did_not_hold_comes_back_the_oldest_first() {
    let answers = [("sand-a", false, JOB), ("fill-a", false, JOB), ("room-a", true, JOB)];
    assert_eq!(pick(&answers), ("sand-a".into(), Why::NotHeld));
    let asked_first = [("sand-a", true, Certainty::AskFirst), ("fill-a", true, JOB), ("room-a", true, JOB)];
    assert_eq!(pick(&asked_first), ("sand-a".into(), Why::NotHeld));
}

#[test]
fn stages_mix_and_no_family_comes_twice_running() {
    let answers = [("fill-a", true, JOB), ("room-a", true, JOB), ("sand-a", false, JOB)];
    assert_eq!(pick(&answers), ("fill-b".into(), Why::NotAsked));
    let board = board();
    let mut asked = past(&[]);
    for _ in 0..40 {
        let chosen = next(&board, &asked, None).unwrap().family.id.clone();
        assert_ne!(asked.last().map(|one| one.family.clone()), Some(chosen.clone()));
        asked.push(Past { family: chosen, right: false, certainty: JOB });
    }
}

#[test]
fn who_is_always_wrong_still_meets_every_family() {
    let board = board();
    let mut asked = past(&[]);
    for _ in 0..2 * board.families.len() {
        let chosen = next(&board, &asked, None).unwrap().family.id.clone();
        asked.push(Past { family: chosen, right: false, certainty: JOB });
    }
    let met: BTreeSet<&str> = asked.iter().map(|one| one.family.as_str()).collect();
    assert_eq!(met.len(), board.families.len());
}

#[test]
fn a_board_that_holds_asks_what_is_longest_ago() {
    let all = ["sand-a", "fill-a", "room-a", "sand-b", "fill-b"].map(|family| (family, true, JOB));
    assert_eq!(pick(&all), ("sand-a".into(), Why::LongestAgo));
}

#[test]
fn one_stage_alone_can_be_practised_even_with_one_family() {
    let board = board();
    let asked = past(&[("room-a", true, JOB)]);
    assert_eq!(next(&board, &asked, Some(Stage::Room)).unwrap().family.id, "room-a");
    assert!(next(&board, &asked, Some(Stage::Cure)).is_none());
}

#[test]
fn only_the_latest_answer_of_a_family_counts_as_held() {
    let board = board();
    let asked = past(&[("sand-a", true, JOB), ("sand-b", true, Certainty::AskFirst), ("sand-a", false, JOB)]);
    let sand = held(&board, &asked, Stage::Sand);
    assert_eq!((sand.held, sand.begun, sand.of), (0, 2, 2));
    let asked = past(&[("sand-a", false, JOB), ("sand-a", true, Certainty::TestBoard)]);
    let sand = held(&board, &asked, Stage::Sand);
    assert_eq!((sand.held, sand.begun, sand.of), (1, 1, 2));
    assert!((sand.share() - 0.5).abs() < f32::EPSILON);
}

#[test]
fn seeds_of_a_person_do_not_repeat_and_differ_between_people() {
    let seeds: BTreeSet<u32> = (0..5_000).map(|n| seed("Ana", n)).collect();
    assert_eq!(seeds.len(), 5_000);
    assert_ne!(seed("Ana", 1), seed("Jo", 1));
}

#[test]
fn a_round_takes_the_time_of_its_cards() {
    let board = board();
    let seconds = board.families[0].seconds;
    assert_eq!(minutes(&board, None), (ROUND * (seconds + 20)).div_ceil(60));
}
