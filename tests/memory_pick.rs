//! What comes next on a day, on a board of five families.

mod support;

use stepboard::learn::memory::{Answered, Candidate, Care, Day, Reason, Remembered, candidates, pick};
use stepboard::record::Certainty;
use stepboard::rules::term::Stage;

const BOARD: [(&str, Stage, Care); 5] = [
    ("room-a", Stage::Room, Care::Safety),
    ("fill-a", Stage::Fill, Care::Ordinary),
    ("sand-a", Stage::Sand, Care::Ordinary),
    ("sand-b", Stage::Sand, Care::Ordinary),
    ("fill-b", Stage::Fill, Care::Ordinary),
];

fn board() -> Vec<Candidate<'static>> {
    let candidate = |(family, stage, care)| Candidate { family, stage, care, until: None };
    BOARD.into_iter().map(candidate).collect()
}

fn answered((day, family, right): (i32, &str, bool)) -> Answered {
    Answered {
        family: family.to_owned(),
        day: Day(day),
        right,
        certainty: Certainty::TestBoard,
        helped: false,
        active_seconds: None,
    }
}

/// What is picked on a day after answers of (day, family, right).
fn picked(today: i32, answers: &[(i32, &str, bool)]) -> (String, Reason) {
    let history: Vec<Answered> = answers.iter().copied().map(answered).collect();
    let board = board();
    let chosen = pick(&board, &Remembered::of(&history), Day(today)).expect("a card");
    (chosen.family.to_owned(), chosen.reason)
}

#[test]
fn stages_not_begun_come_first_in_the_order_of_the_work() {
    assert_eq!(picked(0, &[]), ("sand-a".into(), Reason::NotBegun));
    assert_eq!(picked(0, &[(0, "sand-a", false)]), ("fill-a".into(), Reason::NotBegun));
    let two = [(0, "sand-a", true), (0, "fill-a", true)];
    assert_eq!(picked(0, &two), ("room-a".into(), Reason::NotBegun));
    let three = [(0, "sand-a", true), (0, "fill-a", true), (0, "room-a", true)];
    assert_eq!(picked(0, &three), ("sand-b".into(), Reason::NotSeen));
}

#[test]
fn what_is_missed_on_safety_goes_before_all_else_the_day_after() {
    let answers = [(0, "sand-a", false), (0, "room-a", false), (0, "fill-a", false)];
    assert_eq!(picked(0, &answers).1, Reason::NotSeen, "not on the same day");
    assert_eq!(picked(1, &answers), ("room-a".into(), Reason::MissedOnSafety));
}

#[test]
fn due_and_not_seen_take_turns() {
    let mut answers = vec![(0, "sand-a", false), (0, "fill-a", false), (0, "room-a", true)];
    // The last card was the first of its family: one comes back, the one below its target longest ago.
    assert_eq!(picked(1, &answers), ("sand-a".into(), Reason::Due));
    answers.push((1, "sand-a", true));
    assert_eq!(picked(1, &answers), ("fill-b".into(), Reason::NotSeen));
    answers.push((1, "fill-b", true));
    assert_eq!(picked(1, &answers), ("room-a".into(), Reason::Due), "another stage goes first");
}

#[test]
fn the_weakest_of_what_is_due_comes_first() {
    let seen = [
        (0, "room-a", true),
        (0, "sand-a", false),
        (0, "fill-a", true),
        (9, "fill-b", true),
        (9, "sand-b", true),
        (9, "room-a", true),
    ];
    assert_eq!(picked(20, &seen), ("sand-a".into(), Reason::Due));
}

#[test]
fn with_nothing_due_the_weakest_comes_and_on_one_day_the_longest_ago() {
    let all = ["sand-a", "fill-a", "room-a", "sand-b", "fill-b"].map(|family| (0, family, true));
    assert_eq!(picked(0, &all), ("sand-a".into(), Reason::Weakest));
    let mut answers = all.to_vec();
    answers.push((0, "sand-a", true));
    assert_eq!(picked(0, &answers), ("fill-a".into(), Reason::Weakest));
}

#[test]
fn a_pass_about_to_expire_brings_its_family_back_sooner() {
    // Three right answers earn 46 days.
    let history: Vec<Answered> =
        [(0, "sand-a", true), (2, "sand-a", true), (13, "sand-a", true), (13, "fill-a", true)]
            .map(answered)
            .to_vec();
    let mut board: Vec<Candidate<'_>> =
        board().into_iter().filter(|one| ["sand-a", "fill-a"].contains(&one.family)).collect();
    let reason =
        |board: &[Candidate<'_>]| pick(board, &Remembered::of(&history), Day(20)).map(|one| one.reason);
    assert_eq!(reason(&board), Some(Reason::Weakest));
    for one in &mut board {
        one.until = Some(Day(20));
    }
    assert_eq!(reason(&board), Some(Reason::Due));
}

#[test]
fn one_family_alone_can_be_practised_and_none_gives_none() {
    let board = board();
    let history = Remembered::of(&[answered((0, "room-a", true))]);
    let room: Vec<Candidate<'_>> = board.into_iter().filter(|one| one.stage == Stage::Room).collect();
    assert_eq!(pick(&room, &history, Day(0)).map(|one| one.family), Some("room-a"));
    assert_eq!(pick(&[], &history, Day(0)), None);
}

/// A round of practice on the content that ships: stages mix, and one stage alone stays alone.
#[test]
fn practice_of_all_mixes_stages_and_practice_of_a_band_keeps_to_it() {
    let content = support::content();
    let all = candidates(&content, None, &|_| None);
    assert_eq!(all.len(), content.families.len());
    let mut past = Remembered::default();
    let mut before = None;
    for _ in 0..60 {
        let chosen = pick(&all, &past, Day(0)).expect("a card");
        let stage = content.family(chosen.family).expect("ships").stage;
        assert_ne!(Some(stage), before, "{}", chosen.family);
        before = Some(stage);
        past.take(&answered((0, chosen.family, true)));
    }
    let fill = candidates(&content, Some(Stage::Fill), &|_| None);
    assert!(!fill.is_empty() && fill.iter().all(|one| one.stage == Stage::Fill));
}

/// The budget is some 10 ms with 100,000 answers; whatever the machine, picking must not look at them again: twenty picks are
/// quicker than reading the answers once.
#[test]
#[allow(clippy::disallowed_methods, reason = "a test may measure time")]
fn a_pick_does_not_read_the_answers_again() {
    const ANSWERS: usize = 100_000;
    let content = support::content();
    let all = candidates(&content, None, &|_| None);
    let turns = all.iter().cycle().zip(0_i32..).take(ANSWERS);
    let history: Vec<Answered> =
        turns.map(|(one, nth)| answered((nth / 50, one.family, nth % 7 != 0))).collect();
    let read = std::time::Instant::now();
    let past = Remembered::of(&history);
    let read = read.elapsed();
    assert_eq!(past.count(), ANSWERS);
    let picked = std::time::Instant::now();
    for day in 0..20 {
        assert!(pick(&all, &past, Day(2_000 + day)).is_some());
    }
    let picked = picked.elapsed();
    println!("{ANSWERS} answers read in {read:?}, twenty picks in {picked:?}");
    assert!(picked < read, "{picked:?} for twenty picks, {read:?} for reading");
}

/// What is signed for comes back before it expires, family by family.
#[test]
fn what_is_signed_for_tells_each_family_its_end() {
    let content = support::content();
    let all = candidates(&content, None, &|slug| (slug == "pores-filled").then_some(Day(9)));
    for one in &all {
        let family = content.family(one.family).expect("ships");
        let signed = family.competencies.iter().any(|slug| slug == "pores-filled");
        assert_eq!(one.until, signed.then_some(Day(9)), "{}", one.family);
    }
    let two = candidates(&content, None, &|slug| Some(Day(if slug == "plan-kept" { 3 } else { 9 })));
    assert!(two.iter().any(|one| one.until == Some(Day(3))), "the earliest of several");
}
