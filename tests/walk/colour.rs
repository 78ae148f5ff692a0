//! Wrong ways with light colour over bleeding wood, with stain and with dye, all in coats that do not melt together.

use crate::case::{Case, hold, other_way, puts_before};
use crate::steps::{does, go, ready_for_the_gun, up_to_work, work};
use stepboard::content::{Ask, Content};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::term::Stage;
use stepboard::walk::decision::{Decision, Wait};
use stepboard::walk::{RoomAct, Walk, When};

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
    use When::AtWork;
    let case = |walk, row, says, shows, when, lost, wrong| Case { walk, row, says, shows, when, lost, wrong };
    vec![
        // Its first wet coat is the seal, as the row says of where it is made; white over it tells it.
        case("white-lyre", "extractive-bleed", "the first wet coat", Some(Stage::Seal), AtWork, (2.0, 8.0),
            |walk, content| other_way(walk, content, Op::Seal, &[], &[("sealer", "plain-sealer")])),
        case("white-lyre", "se-18", "next coat", Some(Stage::Seal), AtWork, (3.0, 24.0),
            |walk, content| other_way(walk, content, Op::CleanOff, &[], &[("cloth", "tack-light")])),
        case("white-lyre", "se-16", "minutes", Some(Stage::Clear), AtWork, (5.0, 72.0), recoats_in_the_closed_window),
        case("white-lyre", "se-24", "levelling", Some(Stage::Buff), AtWork, (4.0, 168.0), levels_too_thin),
        case("cherry-box", "se-33", "stain", Some(Stage::Stain), AtWork, (4.0, 24.0),
            |walk, content| other_way(walk, content, Op::Stain, &[], &[("sample", "not-tried")])),
        case("cherry-box", "se-10", "first coats to months", Some(Stage::Seal), AtWork, (4.0, 48.0),
            |walk, content| other_way(walk, content, Op::Stain, &[], &[("excess", "left-to-dry")])),
        case("cherry-box", "se-11", "next coat", Some(Stage::Seal), AtWork, (4.0, 24.0),
            |walk, content| puts_before(walk, content, Op::Seal, Op::Sand)),
        case("dyed-lute", "se-13", "first clear", Some(Stage::Clear), AtWork, (4.0, 24.0),
            |walk, content| other_way(walk, content, Op::Seal, &[(Ask::WetFilm, 150.0)], &[])),
        case("dyed-lute", "se-37", "levelling and buffing", Some(Stage::Buff), AtWork, (3.0, 168.0),
            |walk, content| other_way(walk, content, Op::Level, &[], &[("depth", "until-all-is-flat")])),
        case("dyed-lute", "se-38", "hours to a day", Some(Stage::Buff), AtWork, (2.0, 168.0),
            |walk, content| other_way(walk, content, Op::Level, &[], &[("lubricant", "water")])),
        case("dyed-lute", "se-05", "first seal coat", Some(Stage::Seal), AtWork, (1.0, 8.0),
            |walk, content| other_way(walk, content, Op::Stain, &[], &[("stain", "water-dye")])),
    ]
}

#[test]
fn a_wrong_way_comes_to_what_its_row_says() {
    hold(&cases());
}
