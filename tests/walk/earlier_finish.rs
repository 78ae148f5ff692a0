//! Wrong ways over what an earlier finish left behind: silicone of a polish, and oil.

use crate::case::{Case, hold, other_way, sprays_instead};
use crate::steps::{does, go, ready_for_the_gun, up_to, up_to_work, wait};
use stepboard::content::{Ask, Content};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::decision::Decision;
use stepboard::walk::{RoomAct, Walk};

/// Drills and fits once all is buffed.
fn fits_last(walk: &mut Walk, content: &Content) {
    up_to(walk, content, |_, next| *next == Decision::HandOver);
    does(walk, content, Op::FitParts);
}

/// Packs the work an hour after its last coat.
fn packs_soon(walk: &mut Walk, content: &Content) {
    up_to(walk, content, |_, next| *next == Decision::HandOver);
    go(walk, [wait(1.0)], content);
    does(walk, content, Op::Pack);
}

/// Washes the silicone off and seals, with the pores as they are.
fn leaves_out_filler(walk: &mut Walk, content: &Content) {
    up_to_work(walk, content, Op::Fill);
    does(walk, content, Op::SolventWipe);
    go(walk, [Decision::Room(vec![RoomAct::RagsAway])], content);
    go(walk, ready_for_the_gun(), content);
    does(walk, content, Op::Seal);
}

#[rustfmt::skip]
pub(crate) fn cases() -> Vec<Case> {
    let case = |walk, row, says, wrong| Case { walk, row, says, wrong };
    vec![
        case("polished-lute", "fish-eye", "seconds after the wet coat lands",
            |walk, content| sprays_instead(walk, content, Op::SolventWipe, Op::Seal, &[], &[("mix", "retarder")])),
        case("polished-lute", "se-29", "assembly", fits_last),
        case("polished-lute", "se-26", "buffing",
            |walk, content| other_way(walk, content, Op::Level, &[(Ask::LastGrit, 400.0)], &[])),
        case("polished-lute", "se-34", "first coats; weeks after buffing", leaves_out_filler),
        case("oiled-box", "peeling", "in use",
            |walk, content| sprays_instead(walk, content, Op::SolventWipe, Op::Seal, &[], &[])),
        case("oiled-box", "se-30", "unpacking", packs_soon),
        case("oiled-box", "fat-edge", "as it dries",
            |walk, content| other_way(walk, content, Op::Clear, &[], &[("edges", "edge-from-both-faces")])),
    ]
}

#[test]
fn a_wrong_way_comes_to_what_its_row_says() {
    hold(&cases());
}
