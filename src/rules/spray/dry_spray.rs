//! Dry spray: a rough, sandy film whose droplets dried in flight, and what is changed first.

use super::distance::{Gun, judge};
use crate::quantity::Millimetres;
use crate::rules::air::Thinner;
use crate::rules::shading::DistanceCall;
use crate::rules::sheet::Sheet;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What is changed about a sandy film.
    DryCall {
        /// Hold the gun nearer.
        Nearer = "dry-come-nearer",
        /// Slow the mix within the retarder limit.
        Slower = "dry-slow-the-mix",
        /// Move slower or open the fluid: too little lands to flow.
        Wetter = "dry-lay-wetter",
    }
}

/// What is changed first about a sandy film: the distance where it is beyond the gun's band, then the thinner where it is
/// a fast one, then how wet the coat is laid.
///
/// Sources: too far, droplets dry in flight and land rough (a refinishing textbook, pp. 686 to 687; a public
/// aircraft-finishing manual, 4.4.1.1); the order of the three is common practice, no source.
///
/// # Errors
/// [`CannotJudge`] when the gun decides and is not told, or the thinner decides and is not told.
pub fn sandy(
    sheet: &Sheet,
    gun: Option<Gun>,
    held: Millimetres,
    thinner: Option<Thinner>,
) -> Judged<DryCall> {
    let distance = judge(sheet, gun, held)?;
    if distance.answer == DistanceCall::ComeNearer {
        return Ok(Ruling::by("spray.dry-in-flight", DryCall::Nearer).resting_on(&distance));
    }
    let thinner = thinner.ok_or_else(|| CannotJudge::without("thinner"))?;
    let call = match thinner {
        Thinner::Fast => Ruling::by("spray.fast-solvent-dries", DryCall::Slower),
        Thinner::Retarded => Ruling::by("spray.too-little-lands", DryCall::Wetter),
    };
    Ok(call.resting_on(&distance))
}
