//! Other right ways: what a row of `tests/data/sequence-errors.csv` excepts, or asks for in the place of the error, leaves
//! nothing to show.

use crate::case::{other_way, puts_before};
use crate::steps::{begin, does, go, ready_for_the_gun, rest, up_to, up_to_work, wait, work};
use crate::support::content;
use crate::support::table::table;
use stepboard::content::{Ask, Content};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::decision::{Decision, Wait};
use stepboard::walk::report::report;
use stepboard::walk::{RoomAct, Walk, right};

/// A way that a row holds to be right, with its words.
type Way = (&'static str, &'static str, &'static str, fn(&mut Walk, &Content));

fn washes_first(walk: &mut Walk, content: &Content) {
    up_to_work(walk, content, Op::Stain);
    go(walk, ready_for_the_gun(), content);
    go(walk, [work(walk, content, Op::Washcoat, &[], &[("washcoat", "thin")]), wait(1.5)], content);
    other_way(walk, content, Op::Stain, &[], &[("sample", "not-tried")]);
}

fn recoats_once_the_window_is_open_again(walk: &mut Walk, content: &Content) {
    other_way(walk, content, Op::Clear, &[(Ask::Coats, 1.0)], &[]);
    go(walk, [Decision::Room(vec![RoomAct::GunCleaned])], content);
    go(walk, [Wait::Morning; 4].map(Decision::Wait), content);
    go(walk, [Decision::Wear(right::FOR_THE_BENCH)], content);
    does(walk, content, Op::Scuff);
    go(walk, ready_for_the_gun(), content);
    go(walk, [work(walk, content, Op::Clear, &[], &[("mix", "retarder")])], content);
}

fn damps_and_sands(walk: &mut Walk, content: &Content) {
    up_to_work(walk, content, Op::GlueCheck);
    does(walk, content, Op::Damp);
    // What was worn came off for the night.
    go(walk, [Decision::Wait(Wait::Morning), Decision::Wear(right::FOR_THE_BENCH)], content);
    does(walk, content, Op::Sand);
    other_way(walk, content, Op::Stain, &[], &[("stain", "water-dye")]);
}

fn plugs_and_levels_wet(walk: &mut Walk, content: &Content) {
    puts_before(walk, content, Op::Level, Op::PlugHoles);
    other_way(walk, content, Op::Level, &[], &[("lubricant", "water")]);
}

fn fits_guarded(walk: &mut Walk, content: &Content) {
    up_to(walk, content, |_, next| *next == Decision::HandOver);
    go(walk, [work(walk, content, Op::FitParts, &[], &[("fitted", "edges-guarded")])], content);
}

fn coats_unscuffed(walk: &mut Walk, content: &Content) {
    up_to_work(walk, content, Op::Scuff);
    go(walk, ready_for_the_gun(), content);
    does(walk, content, Op::Clear);
}

#[rustfmt::skip]
const WAYS: [Way; 10] = [
    ("ash-lyre", "se-14", "non-stearated sealer may go two thin coats", |walk, content| other_way(walk, content, Op::Seal,
        &[(Ask::Coats, 2.0), (Ask::Between, 1.5), (Ask::WetFilm, 60.0)], &[("sealer", "plain-sealer")])),
    ("cherry-box", "se-33", "Washcoat of about 3-7 % solids first", washes_first),
    ("white-lyre", "se-16", "after full cure and scuff", recoats_once_the_window_is_open_again),
    ("dyed-lute", "se-38", "Plug or wax holes", plugs_and_levels_wet),
    ("dyed-lute", "se-05", "Damp, dry, sand with last grit, then dye", damps_and_sands),
    ("polished-lute", "se-29", "only be made on the finished body", fits_guarded),
    ("oily-box", "se-35", "Solvent-drying coats dry on these woods",
        |walk, content| other_way(walk, content, Op::Seal, &[], &[("sealer", "plain-sealer")])),
    ("shellac-plate", "se-17", "shellac melt in: scuff only to level", coats_unscuffed),
    ("mixed-lyre", "se-39", "thin mist seal of both woods",
        |walk, content| other_way(walk, content, Op::Seal, &[(Ask::WetFilm, 40.0)], &[])),
    ("oiled-box", "se-18", "light use with solvent coats is fine",
        |walk, content| other_way(walk, content, Op::CleanOff, &[], &[("cloth", "tack-light")])),
];

#[test]
fn what_a_row_excepts_leaves_nothing_to_show() {
    let (content, rows) = (content(), table("sequence-errors.csv"));
    for (slug, id, says, way) in WAYS {
        let row = rows.iter().find(|row| row["id"] == id).expect("a row");
        let told = ["correct_rule", "condition_or_exception", "provenance"].map(|column| &row[column]);
        assert!(told.iter().any(|words| words.contains(says)), "{id} says nothing of `{says}`");
        let mut walk = begin(&content, slug);
        way(&mut walk, &content);
        let on = rest(&walk, &content);
        go(&mut walk, on, &content);
        let told = report(&walk, &content);
        assert!(
            told.found.is_empty() && told.lapses.is_empty(),
            "{slug} {id}: {:?} {:?}",
            told.found,
            told.lapses
        );
    }
}
