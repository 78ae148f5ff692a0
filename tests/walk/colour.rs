//! Wrong ways with light colour over bleeding wood, with stain and with dye, all in coats that do not melt together.

use crate::case::{Case, hold, other_way, puts_before};
use crate::steps::{does, go, ready_for_the_gun, up_to_work, work};
use stepboard::content::{Ask, Content};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::decision::{Decision, Wait};
use stepboard::walk::{RoomAct, Walk};

/// Lays clear two days after the last one: scuffed, but while the window of the sheet is closed.
fn recoats_in_the_closed_window(walk: &mut Walk, content: &Content) {
    let clear = up_to_work(walk, content, Op::Clear);
    go(walk, [Decision::Work(clear), Decision::Room(vec![RoomAct::GunCleaned])], content);
    go(walk, [Wait::Morning; 2].map(Decision::Wait), content);
    does(walk, content, Op::Scuff);
    go(walk, ready_for_the_gun(), content);
    go(walk, [work(walk, content, Op::Clear, &[], &[("mix", "retarder")])], content);
}

/// Levels what two coats of clear came to, after their whole wait.
fn levels_too_thin(walk: &mut Walk, content: &Content) {
    other_way(walk, content, Op::Clear, &[(Ask::Coats, 2.0)], &[]);
    go(walk, [Decision::Room(vec![RoomAct::GunCleaned])], content);
    go(walk, [Wait::Morning; 12].map(Decision::Wait), content);
    does(walk, content, Op::Level);
}

#[rustfmt::skip]
pub(crate) fn cases() -> Vec<Case> {
    let case = |walk, row, says, wrong| Case { walk, row, says, wrong };
    vec![
        // Its first wet coat is the seal, as the row says of where it is made; white over it tells it.
        case("white-lyre", "extractive-bleed", "the first wet coat",
            |walk, content| other_way(walk, content, Op::Seal, &[], &[("sealer", "plain-sealer")])),
        case("white-lyre", "se-18", "next coat",
            |walk, content| other_way(walk, content, Op::CleanOff, &[], &[("cloth", "tack-light")])),
        case("white-lyre", "se-16", "minutes", recoats_in_the_closed_window),
        case("white-lyre", "se-24", "levelling", levels_too_thin),
        case("cherry-box", "se-33", "stain",
            |walk, content| other_way(walk, content, Op::Stain, &[], &[("sample", "not-tried")])),
        case("cherry-box", "se-10", "first coats to months",
            |walk, content| other_way(walk, content, Op::Stain, &[], &[("excess", "left-to-dry")])),
        case("cherry-box", "se-11", "next coat",
            |walk, content| puts_before(walk, content, Op::Seal, Op::Sand)),
        case("dyed-lute", "se-13", "first clear",
            |walk, content| other_way(walk, content, Op::Seal, &[(Ask::WetFilm, 150.0)], &[])),
        case("dyed-lute", "se-37", "levelling and buffing",
            |walk, content| other_way(walk, content, Op::Level, &[], &[("depth", "until-all-is-flat")])),
        case("dyed-lute", "se-38", "hours to a day",
            |walk, content| other_way(walk, content, Op::Level, &[], &[("lubricant", "water")])),
        case("dyed-lute", "se-05", "first seal coat",
            |walk, content| other_way(walk, content, Op::Stain, &[], &[("stain", "water-dye")])),
    ]
}

#[test]
fn a_wrong_way_comes_to_what_its_row_says() {
    hold(&cases());
}
