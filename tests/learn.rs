//! What comes next and what is held, on a board of our own.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod support;

use std::collections::BTreeSet;
use stepboard::content::{Content, FamilyInfo};
use stepboard::learn::{Latest, Past, ROUND_MINUTES, Round, held, seed};
use stepboard::record::Certainty;
use stepboard::rules::term::Stage;

/// A board of five families on three stages.
fn board() -> Content {
    let model = support::content().families[0].clone();
    let family = |id: &str, stage| FamilyInfo { id: id.to_owned(), stage, ..model.clone() };
    let families = vec![
        family("room-a", Stage::Room),
        family("fill-a", Stage::Fill),
        family("sand-a", Stage::Sand),
        family("sand-b", Stage::Sand),
        family("fill-b", Stage::Fill),
    ];
    Content { families, ..Content::default() }
}

fn past(answers: &[(&str, bool, Certainty)]) -> Latest {
    let mut latest = Latest::default();
    for (family, right, certainty) in answers {
        latest.take(family, Past { right: *right, certainty: *certainty });
    }
    latest
}

const JOB: Certainty = Certainty::OnTheJob;

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

/// Ten minutes: no other number of cards comes nearer, and one card is a round where a card takes longer.
#[test]
fn a_round_takes_about_ten_minutes() {
    const VERDICT_SECONDS: u32 = 20;
    let mut board = board();
    for seconds in [20, 30, 46, 60, 100, 2_000] {
        board.families.iter_mut().for_each(|family| family.seconds = seconds);
        let round = Round::of(&board, None);
        let card = seconds + VERDICT_SECONDS;
        assert!((round.minutes * 60).abs_diff(round.cards * card) <= 30, "{round:?}");
        let off = |cards: u32| (cards * card).abs_diff(ROUND_MINUTES * 60);
        assert!(off(round.cards) <= off(round.cards + 1) && round.cards >= 1, "{seconds} s: {round:?}");
        assert!(round.cards == 1 || off(round.cards) <= off(round.cards - 1), "{seconds} s: {round:?}");
        assert!(round.ends(round.cards - 1) && (round.cards == 1 || !round.ends(round.cards - 2)));
    }
    let ships = support::content();
    for stage in [None, Some(Stage::Fill), Some(Stage::Room)] {
        let minutes = Round::of(&ships, stage).minutes;
        assert!((9..=11).contains(&minutes), "{stage:?}: {minutes} min");
    }
}
