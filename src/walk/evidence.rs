//! What a decision is evidence of: the card families that it exercises, and whether it was right on what was known then.
//!
//! The caller journals it within [`crate::record::Within::Walk`]; whether it counts is decided there: that of a guided walk
//! does not.

use super::decision::{Decision, RoomAct};
use super::lapse::Lapse;
use super::report::{Promise, promised, quickest};
use super::room::sprays;
use super::story::Walk;
use super::turn::Turn;
use crate::content::Content;
use crate::process::defect::Cause;
use crate::process::lying::Lying;
use crate::process::technique::Fumble;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::operation::{COATS, LAID, Operation};

/// The most that luck can have done for a decision that is right or wrong: a coin's chance. More than two ways are always at
/// hand, so it is an upper bound.
pub const LUCK_MOST: f64 = 0.5;

/// What a decision says of a card family.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Evidence {
    /// The turn.
    pub turn: usize,
    /// The card family.
    pub family: &'static str,
    /// Whether it was right on what was known then.
    pub right: bool,
}

/// Something that a decision exercises, and what makes it wrong.
struct Asked {
    family: &'static str,
    errors: &'static [OrderError],
    fumbles: &'static [Fumble],
    lapses: &'static [Lapse],
}

const fn errors(family: &'static str, errors: &'static [OrderError]) -> Asked {
    Asked { family, errors, fumbles: &[], lapses: &[] }
}

const fn lapses(family: &'static str, lapses: &'static [Lapse]) -> Asked {
    Asked { family, errors: &[], fumbles: &[], lapses }
}

const fn fumbles(family: &'static str, fumbles: &'static [Fumble]) -> Asked {
    Asked { family, errors: &[], fumbles, lapses: &[] }
}

/// The order of the main steps.
const ORDER: Asked = errors(
    "order-ticket",
    &[
        OrderError::FilledBeforeStain,
        OrderError::FillerOverRawStain,
        OrderError::ColourUnsealed,
        OrderError::WipedColourOverSeal,
        OrderError::Wood,
        OrderError::Fill,
        OrderError::Colour,
        OrderError::Clear,
        OrderError::Finish,
    ],
);

/// What each coat exercises.
const AT_A_COAT: [Asked; 8] = [
    Asked {
        family: "spray-decision",
        errors: &[OrderError::AirOutsideWindow],
        fumbles: &[],
        lapses: &[Lapse::AirUnread],
    },
    lapses("mask-wants", &[Lapse::NoRespirator, Lapse::WrongRespirator]),
    lapses("seal-check", &[Lapse::SealUnchecked]),
    lapses("before-gun", &[Lapse::NoRespirator, Lapse::GaugeUnread, Lapse::FiltersLoaded]),
    lapses("at-the-door", &[Lapse::NoSuit]),
    lapses("sparks-away", &[Lapse::SourcesIn]),
    fumbles("gun-distance", &[Fumble::DrySpray]),
    fumbles("sag-flow", &[Fumble::Run]),
];

/// All that the decisions of a walk are evidence of, in their order.
#[must_use]
pub fn evidence(walk: &Walk, content: &Content) -> Vec<Evidence> {
    let mut before = walk.at(0, content);
    let mut found = Vec::new();
    for (nth, turn) in walk.turns().iter().enumerate() {
        let asked = asked(&before, turn);
        let wrong = |one: &Asked| is_wrong(walk, turn, one);
        found.extend(asked.iter().map(|one| Evidence { turn: nth, family: one.family, right: !wrong(one) }));
        found.extend(rags(nth, turn));
        found.extend(promise(&before, walk, nth, turn));
        // It was carried out once.
        let _ = before.decide(turn.decision.clone(), content);
    }
    found
}

/// Whether an operation made what a family warns of.
fn is_wrong(walk: &Walk, turn: &Turn, asked: &Asked) -> bool {
    let (from, to) = turn.lines;
    let made = walk.run().defects().iter().filter(|defect| (from..to).contains(&defect.made));
    let bad = |cause: Cause| match cause {
        Cause::Order(error) => asked.errors.contains(&error),
        Cause::Technique(fumble) => asked.fumbles.contains(&fumble),
    };
    made.into_iter().any(|defect| bad(defect.cause))
        || turn.lapses.iter().any(|lapse| asked.lapses.contains(lapse))
}

/// What an operation exercises, by the work that it is done on.
fn asked(before: &Walk, turn: &Turn) -> Vec<Asked> {
    let Decision::Work(work) = &turn.decision else { return Vec::new() };
    let operation = work.operation;
    let lying: Vec<Lying> = work.parts.iter().filter_map(|part| before.part(*part)).collect();
    let mut found = Vec::new();
    if operation.is_main() {
        found.push(ORDER);
    }
    if LAID.contains(&operation) {
        found.extend(waits(operation, &lying));
    }
    if sprays(operation) {
        found.extend(AT_A_COAT);
    }
    let first_coat = COATS.contains(&operation) && lying.iter().any(|part| !part.is_coated());
    let oily = |part: &usize| before.start().job.parts.get(*part).is_some_and(|about| about.is_oily());
    if first_coat {
        found.push(errors("wants-filler", &[OrderError::PoresUnfilled]));
        if work.parts.iter().any(oily) {
            found.push(errors("first-coat-demand", &[OrderError::OilyWoodUnsealed]));
        }
    }
    match operation {
        Operation::Sand => found
            .push(errors("ready-for-stain", &[OrderError::SandedTooFine, OrderError::ScratchesUnderStain])),
        Operation::WipeFiller => found.push(errors("fill-wipe", &[OrderError::FillerWipedOffTime])),
        Operation::Scrape => found.push(errors(
            "when-to-scrape",
            &[OrderError::TrimAfterClear, OrderError::TrimOverOpenColour, OrderError::Clear],
        )),
        Operation::Mask | Operation::Unmask => {
            found.push(errors("mask-off", &[OrderError::MaskPulledWet, OrderError::MaskLeftOn]));
        }
        Operation::Level => {
            found.push(errors("level-when", &[OrderError::LevelledTooSoon]));
            found.push(errors("coats-for-build", &[OrderError::LevelledTooThin]));
            found.push(errors("level-next", &[OrderError::CoarseBeforeCompound]));
        }
        Operation::Buff => found.push(errors("level-gate", &[OrderError::LevelledTooSoon])),
        _ => {}
    }
    found
}

/// The waits that lie under what is laid.
fn waits(operation: Operation, lying: &[Lying]) -> Vec<Asked> {
    let over = |below: Operation| {
        lying.iter().any(|part| part.laid.last().is_some_and(|top| top.operation == below))
    };
    let mut found = Vec::new();
    if over(Operation::Fill) {
        found.push(errors("filler-wait", &[OrderError::FillerNotDry]));
    }
    if over(Operation::Stain) || over(Operation::Washcoat) {
        found.push(errors("ready-yet", &[OrderError::StainNotDry, OrderError::RecoatTooSoon]));
    }
    if COATS.contains(&operation) && lying.iter().any(Lying::is_coated) {
        let early =
            &[OrderError::RecoatTooSoon, OrderError::RecoatWindowClosed, OrderError::HardFilmUnscuffed];
        found.push(errors("recoat-now", early));
    }
    found
}

/// Rags put away in time, or left lying.
fn rags(nth: usize, turn: &Turn) -> Option<Evidence> {
    let left = turn.lapses.iter().any(|lapse| matches!(lapse, Lapse::RagsLeft | Lapse::ClothsLeft));
    let away = matches!(&turn.decision, Decision::Room(duties) if duties.contains(&RoomAct::RagsAway));
    (left || away).then_some(Evidence { turn: nth, family: "residue-place", right: !left })
}

/// What was said of the day: when another one is offered, or when the work is handed over without a word.
fn promise(before: &Walk, walk: &Walk, nth: usize, turn: &Turn) -> Option<Evidence> {
    let silent = turn.decision == Decision::HandOver && before.offered().is_none();
    let offered = match turn.decision {
        Decision::Offer(offer) => Some(offer.day),
        _ => None,
    };
    if !silent && offered.is_none() {
        return None;
    }
    let said = Promise { offered, ..promised(walk, quickest(walk)) };
    Some(Evidence { turn: nth, family: "delivery-day", right: said.holds() })
}
