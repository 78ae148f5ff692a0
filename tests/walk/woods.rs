//! Wrong ways with oily wood, mixed woods and open pores. Practitioners know the box of cocobolo: lacquer dries on it and
//! lets go where it was not washed (common practice, no source).

use crate::case::{Case, hold, other_way, puts_before, sprays_instead};
use crate::steps::{does, go, up_to, up_to_work, work};
use stepboard::content::{Ask, Content};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::decision::Decision;
use stepboard::walk::{RoomAct, Walk};

/// Wipes the filler off as soon as it is laid.
fn wipes_at_once(walk: &mut Walk, content: &Content) {
    let fill = up_to_work(walk, content, Op::Fill);
    let parts = fill.parts.clone();
    go(walk, [Decision::Work(fill), Decision::Room(vec![RoomAct::RagsAway])], content);
    let Decision::Work(mut wipe) =
        work(walk, content, Op::WipeFiller, &[], &[("wiped-when", "by-the-clock")])
    else {
        unreachable!()
    };
    wipe.parts = parts;
    go(walk, [Decision::Work(wipe)], content);
}

/// Scuffs the colour flat before the first clear.
fn scuffs_the_colour(walk: &mut Walk, content: &Content) {
    up_to_work(walk, content, Op::Clear);
    let hard = work(walk, content, Op::Scuff, &[], &[("scuffed", "hard")]);
    go(walk, [hard], content);
}

/// Packs the work as soon as it is off the gun.
fn packs_at_once(walk: &mut Walk, content: &Content) {
    up_to(walk, content, |_, next| *next == Decision::HandOver);
    does(walk, content, Op::Pack);
}

/// Masks a line, lays the colour and pulls the tape while it still runs.
fn pulls_the_mask_wet(walk: &mut Walk, content: &Content) {
    let colour = up_to_work(walk, content, Op::Colour);
    go(
        walk,
        [work(walk, content, Op::Mask, &[], &[("masked", "colour-line")]), Decision::Work(colour)],
        content,
    );
    go(walk, [work(walk, content, Op::Unmask, &[], &[("pulled", "straight-off")])], content);
}

/// Masks a seat that stays bare, leaves the tape on through colour and clear, and pulls it off a hard film without a cut round
/// it.
fn pulls_the_mask_late(walk: &mut Walk, content: &Content) {
    let colour = up_to_work(walk, content, Op::Colour);
    let mask = work(walk, content, Op::Mask, &[], &[("masked", "bare-part")]);
    go(walk, [mask, Decision::Work(colour)], content);
    up_to_work(walk, content, Op::Level);
    go(walk, [work(walk, content, Op::Unmask, &[], &[("pulled", "straight-off")])], content);
}

#[rustfmt::skip]
pub(crate) fn cases() -> Vec<Case> {
    let case = |walk, row, says, wrong| Case { walk, row, says, wrong };
    vec![
        case("oily-box", "se-35", "tape test",
            |walk, content| sprays_instead(walk, content, Op::SolventWipe, Op::Seal, &[], &[("sealer", "dewaxed-shellac")])),
        case("oily-box", "se-20", "first coat",
            |walk, content| other_way(walk, content, Op::Seal, &[], &[("warmth", "heater-on-it")])),
        case("oily-box", "dry-spray", "at touch-dry",
            |walk, content| other_way(walk, content, Op::Clear, &[(Ask::Distance, 500.0)], &[])),
        case("mixed-lyre", "se-22", "at once", pulls_the_mask_wet),
        case("mixed-lyre", "se-21", "unmasking", pulls_the_mask_late),
        case("mixed-lyre", "se-39", "sanding or first wet coat",
            |walk, content| other_way(walk, content, Op::Sand, &[], &[("sanding-dust", "wiped-across")])),
        case("mixed-lyre", "se-08", "seal coat", wipes_at_once),
        case("mixed-lyre", "se-25", "next coat", scuffs_the_colour),
        case("mixed-lyre", "se-27", "buffing",
            |walk, content| other_way(walk, content, Op::Buff, &[], &[("wheels", "one-for-all")])),
        case("ash-lyre", "se-14", "months; impact",
            |walk, content| other_way(walk, content, Op::Seal, &[(Ask::Coats, 2.0), (Ask::Between, 1.0)],
                &[("sealer", "sanding-sealer")])),
        case("ash-lyre", "orange-peel", "as the coat flashes",
            |walk, content| other_way(walk, content, Op::Clear, &[], &[("mix", "unthinned")])),
        case("ash-lyre", "se-30", "unpacking", packs_at_once),
        case("ash-lyre", "se-28", "next coat",
            |walk, content| puts_before(walk, content, Op::Clear, Op::Polish)),
    ]
}

#[test]
fn a_wrong_way_comes_to_what_its_row_says() {
    hold(&cases());
}
