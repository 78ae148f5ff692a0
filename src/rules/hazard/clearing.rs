//! When the fan may stop. A decay formula for a well-mixed room exists; it is no clearance time and is here to say so.

use crate::quantity::{AirFlow, AirVolume, Fraction, Hours, MINUTES_AN_HOUR};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// How the sprayed work stands.
    WorkState {
        /// Sprayed and still giving off vapour.
        Wet = "work-gives-off",
        /// No vapour comes off any more.
        Dry = "work-is-dry",
        /// Rolled out to a ventilated drying room.
        Gone = "work-rolled-out",
    }
    /// What else may give off vapour in the booth.
    LeftIn {
        /// Nothing.
        Nothing = "nothing-left-in",
        /// An open can or a full gun.
        OpenLiquid = "open-can-or-gun",
        /// Wet overspray or wipes.
        WetResidue = "wet-residue",
    }
    /// What happens with the fan.
    FanMove {
        /// It may stop.
        Stop = "fan-may-stop",
        /// It runs on.
        RunOn = "fan-runs-on",
        /// Can shut and gun cleaned under the running fan, then it runs on until nothing gives off vapour.
        CloseFirst = "close-cans-first",
        /// Residue out under the running fan.
        ResidueFirst = "residue-out-first",
    }
}

/// What happens with the fan: it runs until work and residue have stopped giving off vapour (29 CFR 1910.107(d)(2)). No
/// number of minutes stands in for looking.
///
/// # Errors
/// [`CannotJudge`] when it decides how the work stands, or what was left in, and that is not known.
pub fn fan_stop(work: Option<WorkState>, left: Option<LeftIn>) -> Judged<FanMove> {
    let answer = match (work, left) {
        (_, Some(LeftIn::OpenLiquid)) => FanMove::CloseFirst,
        (_, Some(LeftIn::WetResidue)) => FanMove::ResidueFirst,
        (_, None) => return Err(CannotJudge::without("left_in")),
        (None, Some(LeftIn::Nothing)) => return Err(CannotJudge::without("work_state")),
        (Some(WorkState::Wet), Some(LeftIn::Nothing)) => FanMove::RunOn,
        (Some(WorkState::Dry | WorkState::Gone), Some(LeftIn::Nothing)) => FanMove::Stop,
    };
    Ok(Ruling::by("hazard.fan-round-the-gun", answer).and("hazard.no-clearing-time"))
}

/// The time in which the vapour of a perfectly mixed space would fall to a share of its start with no more coming:
/// `volume / flow x ln(1 / share)` (textbook). Real booths mix badly and wet work keeps giving off, so it is never used
/// as a clearance time; it stands here to show how far too short that would be.
///
/// # Errors
/// [`CannotJudge`] when no air moves, or the share is nothing.
pub fn well_mixed_decay(space: AirVolume, flow: AirFlow, share: Fraction) -> Judged<Hours> {
    if flow.get() <= 0.0 {
        return Err(CannotJudge::without("flow"));
    }
    if share.get() <= 0.0 {
        return Err(CannotJudge::without("share"));
    }
    let minutes = space.get() / flow.get() * -libm::log(share.get());
    Ok(Ruling::by("hazard.no-clearing-time", Hours::saturating(minutes / MINUTES_AN_HOUR)))
}
