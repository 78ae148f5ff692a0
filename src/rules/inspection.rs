//! Inspection: what is decided about a fault on a finished face, from its severity, where it lies and the film there.

use super::fault::{Fault, Rework};
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
        /// Take the spot down, mend it and recoat it.
        LevelLocally = "decide-level-locally",
        /// More clear first, no abrasive yet.
        ClearFirst = "decide-clear-first",
        /// Recoat or recolour the whole face.
        RecoatFace = "decide-recoat-face",
        /// Strip to wood or to a sound layer.
        Strip = "decide-strip",
    }
}

/// What is decided about a fault found on the clear. A fault in the film is rubbed only where the film allows it; one
/// that lies under the clear is taken down to. Zone and film may be unknown where they do not decide.
///
/// # Errors
/// [`CannotJudge`] when the zone or the film decides and is not known.
pub fn decide(
    fault: &Fault,
    zone: Option<Zone>,
    film: Option<Micrometres>,
    sheet: &Sheet,
) -> Judged<Decision> {
    match fault.severity {
        Rework::Strip => return Ok(Ruling::by("inspection.unsound-is-stripped", Decision::Strip)),
        Rework::Face => return Ok(Ruling::by("inspection.face-is-recoated", Decision::RecoatFace)),
        Rework::Rub | Rework::Local => {}
    }
    let zone = zone.ok_or_else(|| CannotJudge::without("zone"))?;
    if zone == Zone::Hidden {
        return Ok(Ruling::by("inspection.hidden-small-accepted", Decision::Accept));
    }
    if fault.severity == Rework::Local && !fault.in_the_clear() {
        return Ok(Ruling::by("inspection.under-clear-taken-down", Decision::LevelLocally));
    }
    let film = film.ok_or_else(|| CannotJudge::without("build_um"))?;
    let share = if zone == Zone::Edge { EDGE_SHARE } else { 1.0 };
    let counted = Micrometres::saturating(film.get() * share);
    let none = Micrometres::saturating(Micrometres::MIN);
    let may = film::levelling(counted, none, sheet);
    let decision = match (fault.severity, may.answer) {
        (Rework::Local, Levelling::Level) => Decision::LevelLocally,
        (Rework::Rub, Levelling::Level | Levelling::ClearFirst) => Decision::RubOut,
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
