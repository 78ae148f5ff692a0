//! Wrong ways in a cold, damp week and on a damp afternoon; practitioners' case 1, milky spots on a rainy, cool day, asks the
//! same (common practice, no source).

use crate::case::{Case, hold, other_way};
use crate::steps::{does, go, ready_for_the_gun, up_to};
use stepboard::content::{Ask, Content};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::sheet::Setting;
use stepboard::walk::decision::Decision;
use stepboard::walk::{Walk, right};

/// Takes the gun up in air that the sheet stops, where a right way waits for it to turn.
fn sprays_in_bad_air(walk: &mut Walk, content: &Content, coat: Op) {
    let limit = walk.start().sheet.get(Setting::HumidityLimit);
    up_to(walk, content, |walk, next| {
        let damp = walk.air().is_some_and(|air| air.humidity.get() > limit);
        let comes = right::next_work(walk, content).is_some_and(|work| work.operation == coat);
        damp && comes && matches!(next, Decision::Wait(_))
    });
    go(walk, ready_for_the_gun(), content);
    does(walk, content, coat);
}

#[rustfmt::skip]
pub(crate) fn cases() -> Vec<Case> {
    let case = |walk, row, says, wrong| Case { walk, row, says, wrong };
    vec![
        case("cold-plate", "se-19", "minutes to days",
            |walk, content| sprays_in_bad_air(walk, content, Op::Seal)),
        case("cold-plate", "se-20", "first coat",
            |walk, content| other_way(walk, content, Op::Seal, &[], &[("warmth", "heater-on-it")])),
        case("cold-plate", "se-15", "levelling, weeks later",
            |walk, content| other_way(walk, content, Op::Clear, &[(Ask::Coats, 2.0), (Ask::Between, 0.25)], &[])),
        case("shellac-plate", "se-19", "minutes to days",
            |walk, content| sprays_in_bad_air(walk, content, Op::Clear)),
        case("shellac-plate", "se-32", "stain, scrape test",
            |walk, content| other_way(walk, content, Op::Sand, &[(Ask::LastGrit, 500.0)], &[])),
        case("shellac-plate", "lap-stripe", "as the colour builds",
            |walk, content| other_way(walk, content, Op::Clear, &[(Ask::Overlap, 0.3)], &[])),
        case("shellac-plate", "se-01", "stain, and again in gloss",
            |walk, content| other_way(walk, content, Op::Sand, &[], &[("ladder", "straight-to-last")])),
    ]
}

#[test]
fn a_wrong_way_comes_to_what_its_row_says() {
    hold(&cases());
}
