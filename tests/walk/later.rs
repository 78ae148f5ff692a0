//! One job with mistakes that come out later than they are made: each at the operation, or after the time, that its row of
//! `tests/data/sequence-errors.csv` says.

use crate::case::{is_of, other_way, rows};
use crate::shows::Shows;
use crate::steps::{begin, go, rest, up_to, up_to_work, work};
use crate::support::content;
use stepboard::content::{Ask, Content};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::decision::{Decision, Wait};
use stepboard::walk::report::report;
use stepboard::walk::{RoomAct, Walk, When};

/// A mistake: its row, what that says of where it shows, the operation that makes it, and how it is made.
type Mistake = (&'static str, &'static str, Op, fn(&mut Walk, &Content));

/// Wipes the filler off as soon as it is laid, by the clock.
fn wipes_at_once(walk: &mut Walk, content: &Content) {
    let fill = up_to_work(walk, content, Op::Fill);
    go(walk, [Decision::Work(fill), Decision::Room(vec![RoomAct::RagsAway])], content);
    let wipe = work(walk, content, Op::WipeFiller, &[], &[("wiped-when", "by-the-clock")]);
    go(walk, [wipe], content);
}

/// Lays two coats of clear with a quarter of an hour between them, on a morning.
fn coats_in_a_hurry(walk: &mut Walk, content: &Content) {
    up_to_work(walk, content, Op::Clear);
    let dirty = walk.room().gun_dirty().then(|| Decision::Room(vec![RoomAct::GunCleaned]));
    go(walk, dirty.into_iter().chain([Decision::Wait(Wait::Morning)]), content);
    other_way(walk, content, Op::Clear, &[(Ask::Coats, 2.0), (Ask::Between, 0.25)], &[]);
}

#[rustfmt::skip]
const MISTAKES: [Mistake; 6] = [
    ("se-01", "stain, and again in gloss", Op::Sand,
        |walk, content| other_way(walk, content, Op::Sand, &[], &[("strokes", "across-the-grain")])),
    ("se-18", "next coat", Op::CleanOff,
        |walk, content| other_way(walk, content, Op::CleanOff, &[], &[("cloth", "tack-heavy")])),
    ("se-05", "first seal coat", Op::Stain,
        |walk, content| other_way(walk, content, Op::Stain, &[], &[("stain", "water-dye")])),
    ("se-08", "seal coat", Op::WipeFiller, wipes_at_once),
    ("se-15", "levelling, weeks later", Op::Clear, coats_in_a_hurry),
    ("se-29", "assembly", Op::FitParts, |walk, content| {
        up_to(walk, content, |_, next| *next == Decision::HandOver);
        let fit = work(walk, content, Op::FitParts, &[], &[]);
        go(walk, [fit], content);
    }),
];

#[test]
fn mistakes_of_one_job_come_out_at_the_later_operation_that_their_rows_name() {
    let (content, rows) = (content(), rows());
    let mut walk = begin(&content, "rush-box");
    for (.., make) in MISTAKES {
        make(&mut walk, &content);
    }
    let on = rest(&walk, &content);
    go(&mut walk, on, &content);
    let told = report(&walk, &content);
    assert_eq!(told.found.len(), MISTAKES.len(), "{:?}", told.found);
    for (row, says, made, _) in MISTAKES {
        let (faults, words) = &rows[row];
        assert!(words.contains(says), "{row} says `{words}`");
        let found =
            told.found.iter().find(|found| is_of(found, row, faults)).unwrap_or_else(|| panic!("{row}"));
        let (shows, turn) = (Shows::read(says), &walk.turns()[found.turn]);
        assert_eq!(found.made.0, made, "{row}");
        assert_eq!(
            (found.shows_in, found.when),
            (shows.band(&walk, found), shows.when(&walk, found)),
            "{row}"
        );
        assert!(walk.lines()[found.made.1].turn < found.turn, "{row} comes out later than it is made");
        let seen = turn.decision.operation();
        assert_eq!(seen, shows.at(&walk, found), "{row} comes out at {seen:?}");
        assert_eq!(found.when == When::After, turn.decision == Decision::HandOver, "{row}");
    }
}
