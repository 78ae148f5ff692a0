//! Which card families a decision exercises, by the work that it is done on, and what makes it wrong in each.

use super::decision::{Decision, RoomAct};
use super::lapse::Lapse;
use super::room::{DUSTY, sprays};
use super::story::Walk;
use super::turn::Turn;
use crate::process::lying::Lying;
use crate::process::technique::Fumble;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::operation::{COATS, LAID, Operation};

/// Something that a decision exercises, and what makes it wrong.
pub(super) struct Asked {
    pub(super) family: &'static str,
    pub(super) errors: &'static [OrderError],
    pub(super) fumbles: &'static [Fumble],
    pub(super) lapses: &'static [Lapse],
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
pub(super) const ORDER: Asked = errors(
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
const AT_A_COAT: [Asked; 9] = [
    Asked {
        family: "spray-decision",
        errors: &[OrderError::AirOutsideWindow],
        fumbles: &[],
        lapses: &[Lapse::AirUnread],
    },
    lapses("mask-kind", &[Lapse::NoRespirator, Lapse::WrongRespirator]),
    lapses("draw-and-mask", &[Lapse::NoRespirator]),
    lapses("before-gun", &[Lapse::NoRespirator, Lapse::GaugeUnread, Lapse::FiltersLoaded]),
    lapses("at-the-door", &[Lapse::NoSuit]),
    lapses("spray-spell", &[Lapse::FanOff]),
    lapses("sparks-away", &[Lapse::SourcesIn]),
    fumbles("gun-distance", &[Fumble::DrySpray]),
    fumbles("sag-flow", &[Fumble::Run]),
];

/// What an operation exercises, by the work that it is done on.
pub(super) fn asked(before: &Walk, turn: &Turn) -> Vec<Asked> {
    let work = match &turn.decision {
        Decision::Work(work) => work,
        // Over a bare bench there is nothing to stop it too early for.
        Decision::Room(duties) if duties.contains(&RoomAct::FanOff) && is_coated(before) => {
            return vec![lapses("fan-stop", &[Lapse::FanOff])];
        }
        // What the ticket orders and was left out is left out for good.
        Decision::HandOver if !before.lines().is_empty() => return vec![ORDER],
        _ => return Vec::new(),
    };
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
    // Levelling raises dust where it is done dry, which the duty that was left tells.
    let dusty = DUSTY.contains(&operation) || turn.lapses.contains(&Lapse::DustBreathed);
    if dusty {
        found.push(lapses("mask-kind", &[Lapse::DustBreathed, Lapse::WrongRespirator]));
    }
    // Without a respirator there is no seal to be checked.
    if (dusty || sprays(operation)) && before.room().worn.respirator.is_some() {
        found.push(lapses("seal-check", &[Lapse::SealUnchecked]));
    }
    let first_coat = COATS.contains(&operation) && lying.iter().any(|part| !part.is_coated());
    let oily = |part: &usize| before.start().job.parts.get(*part).is_some_and(|about| about.is_oily());
    let start = before.start();
    let porous = |part: &usize| start.job.parts.get(*part).is_some_and(|about| start.job.wants_filler(about));
    if first_coat && work.parts.iter().any(porous) {
        found.push(errors("wants-filler", &[OrderError::PoresUnfilled]));
    }
    if first_coat && work.parts.iter().any(oily) {
        found.push(errors("first-coat-demand", &[OrderError::OilyWoodUnsealed]));
    }
    match operation {
        Operation::Sand => found
            .push(errors("ready-for-stain", &[OrderError::SandedTooFine, OrderError::ScratchesUnderStain])),
        Operation::WipeFiller => found.push(errors("fill-wipe", &[OrderError::FillerWipedOffTime])),
        Operation::Scrape => found.push(errors(
            "when-to-scrape",
            &[OrderError::TrimAfterClear, OrderError::TrimOverOpenColour, OrderError::Clear],
        )),
        Operation::Unmask => {
            found.push(errors("mask-off", &[OrderError::MaskPulledWet, OrderError::MaskLeftOn]));
        }
        Operation::Clear if lying.iter().any(|part| part.done.contains(&Operation::Mask)) => {
            found.push(errors("mask-off", &[OrderError::MaskLeftOn]));
        }
        Operation::Level => {
            found.push(errors("level-when", &[OrderError::LevelledTooSoon]));
            found.push(errors("coats-for-build", &[OrderError::LevelledTooThin]));
        }
        Operation::Buff => {
            found.push(errors("level-next", &[OrderError::CoarseBeforeCompound]));
            found.push(errors("level-gate", &[OrderError::LevelledTooSoon]));
            found.push(lapses("at-the-wheel", &[Lapse::WheelUnchecked]));
        }
        _ => {}
    }
    found
}

/// Whether film lies on any part.
fn is_coated(walk: &Walk) -> bool {
    (0..walk.start().parts()).any(|part| walk.part(part).is_some_and(|lying| lying.is_coated()))
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
