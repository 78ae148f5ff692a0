//! Distance of the gun for a body coat, by the kind of gun.

use crate::quantity::Millimetres;
use crate::rules::shading::{DistanceCall, distance_call};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Judged;
use crate::terms;

terms! {
    /// Kinds of gun, told apart by how they break up the material.
    Gun {
        /// High volume of air at low pressure: held near.
        Hvlp = "hvlp-gun",
        /// Conventional air gun: held farther.
        Conventional = "conventional-gun",
    }
}

/// Nearest and farthest distance of a gun for a body coat, from the sheet.
///
/// Sources: HVLP 4 to 6 or 6 to 8 in, conventional 8 to 10 in (a refinishing textbook, p. 686; a public finishing manual
/// gives 6 to 10 in for most processes); the sheet cannot go under 4 in and 6 in.
#[must_use]
pub fn band(sheet: &Sheet, gun: Gun) -> (Millimetres, Millimetres) {
    let (from, to) = match gun {
        Gun::Hvlp => (Setting::HvlpDistanceFrom, Setting::HvlpDistanceTo),
        Gun::Conventional => (Setting::BodyDistanceFrom, Setting::BodyDistanceTo),
    };
    (sheet.millimetres(from), sheet.millimetres(to))
}

/// What a distance calls for in a body coat.
///
/// # Errors
/// [`crate::rules::verdict::CannotJudge`] when the gun is not told and guns differ at this distance.
pub fn judge(sheet: &Sheet, gun: Option<Gun>, held: Millimetres) -> Judged<DistanceCall> {
    distance_call("spray.distance-by-gun", "gun", gun, held, |gun| band(sheet, gun))
}
