//! Film: from wet to dry, coats for a build, what counts as build, what levelling leaves over the colour.
//!
//! The formulas assume that volumes add and that no pores take film up: a coating dries a little thicker than this on a
//! flat panel and thinner over open grain, so a witness strip sprayed beside the work has the last word.

mod build;
mod coats;
mod coverage;
mod cut_through;
mod levelling;
mod solids;
mod thickness;
mod wet_film;
mod wet_to_dry;

pub use build::{Layer, counts_as_build};
pub use coats::{build, coats_for, coats_today};
pub use coverage::{coverage, volume_for};
pub use cut_through::{CutRisk, CutThrough, Place, ToRub, cut_through};
pub use levelling::{Levelling, left, levelling};
pub use solids::volume_solids;
pub use thickness::{Thickness, rises, thickness};
pub use wet_film::{Facing, Sag, WetFilm, sag_flow, wet_film};
pub use wet_to_dry::{clear_solids, dry, sheet_coat, wet_for};

use crate::quantity::{Measure, Unit};

/// A thickness as shown.
const fn um(value: f64) -> Measure {
    Measure::new(value, Unit::Micrometre, 0)
}
