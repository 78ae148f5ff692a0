//! Inspection: what is decided about a fault on a finished face, from its severity, where it lies and the film there.

use super::fault::{Cure, Fault, Rework};
use super::film::{self, Levelling};
use super::sheet::Sheet;
use super::verdict::{CannotJudge, Judged, Ruling};
use crate::quantity::Micrometres;
use crate::terms;

/// Film at an arris counts half: coats draw back from it and the paper bears harder on it (common practice, no source).
pub const EDGE_SHARE: f64 = 0.5;

terms! {
    /// Where a fault lies.
    Zone {
        /// On a face that is seen.
        Show = "zone-show",
        /// At an arris.
        Edge = "zone-edge",
        /// Under a fitting or inside a cavity.
        Hidden = "zone-hidden",
    }
    /// What is decided.
    Decision {
        /// Leave it and note it.
        Accept = "decide-accept",
        /// Rub, nib or polish it out.
        RubOut = "decide-rub-out",
        /// Level it out of the film, once it is hard through.
        LevelOut = "decide-level-out",
        /// Open the place, mend it and recoat it.
        LevelLocally = "decide-level-locally",
        /// More clear first, no abrasive yet.
        ClearFirst = "decide-clear-first",
        /// Recoat or recolour the whole face.
        RecoatFace = "decide-recoat-face",
        /// Give it time; strip only what stays soft.
        Wait = "decide-wait",
        /// Mend the wood, then the finish over it.
        MendWood = "decide-mend-wood",
        /// Strip to wood or to a sound layer.
        Strip = "decide-strip",
    }
}

/// What is decided about a fault found on the clear. A fault in the film is cut out only where the film allows it; what
/// lies in or under a bad layer is never coated over. Zone and film may be unknown where they do not decide.
///
/// # Errors
/// [`CannotJudge`] when no cure of the fault is known, or the zone or the film decides and is not known.
pub fn decide(
    fault: &Fault,
    zone: Option<Zone>,
    film: Option<Micrometres>,
    sheet: &Sheet,
) -> Judged<Decision> {
    let cure = fault.cure.ok_or_else(|| CannotJudge::without("fault"))?;
    match cure {
        Cure::Layer => return Ok(Ruling::by("inspection.unsound-is-stripped", Decision::Strip)),
        Cure::Time => return Ok(Ruling::by("inspection.soft-wants-time", Decision::Wait)),
        Cure::Wood => return Ok(Ruling::by("inspection.wood-before-finish", Decision::MendWood)),
        Cure::Abrasive | Cure::Spot | Cure::Face => {}
    }
    let zone = fault.lies.or(zone).ok_or_else(|| CannotJudge::without("zone"))?;
    if zone == Zone::Hidden {
        return Ok(Ruling::by("inspection.hidden-small-accepted", Decision::Accept));
    }
    match cure {
        Cure::Spot => return Ok(Ruling::by("inspection.spot-is-opened", Decision::LevelLocally)),
        Cure::Face => return Ok(Ruling::by("inspection.face-is-recoated", Decision::RecoatFace)),
        _ => {}
    }
    let film = film.ok_or_else(|| CannotJudge::without("build_um"))?;
    let share = if zone == Zone::Edge { EDGE_SHARE } else { 1.0 };
    let counted = Micrometres::saturating(film.get() * share);
    let none = Micrometres::saturating(Micrometres::MIN);
    let may = film::levelling(counted, none, sheet);
    let decision = match (fault.severity, may.answer) {
        (Rework::Rub, Levelling::Level | Levelling::ClearFirst) => Decision::RubOut,
        (_, Levelling::Level) => Decision::LevelOut,
        _ => Decision::ClearFirst,
    };
    let rule = if decision == Decision::ClearFirst {
        "inspection.film-before-abrasive"
    } else {
        "inspection.smallest-cure"
    };
    let ruling = Ruling::by(rule, decision).resting_on(&may);
    Ok(if zone == Zone::Edge { ruling.and("inspection.edge-counts-half") } else { ruling })
}
