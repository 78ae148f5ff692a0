//! The fade of a shaded edge: equal coats of falling width, and whether their steps blend.
//!
//! Where the coats end one after another the colour falls in steps. Each coat itself ends softly, over half the width of
//! the fan; steps no wider than that run into one another (geometry of the fan; that they then look smooth is common
//! practice, no source).

use super::fan::Section;
use crate::quantity::{DUST, Fraction, Measure, Millimetres, Unit};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// A fade from full colour at the edge to none.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fade {
    /// Width over which the colour falls.
    pub width: Millimetres,
    /// Equal coats, each ending one step nearer to the edge than the last.
    pub coats: u32,
    /// Full width of the fan on the work.
    pub fan: Millimetres,
    /// How the fan's film falls to its edge.
    pub section: Section,
}

/// Half of the fan lies beyond the line it is aimed at.
const HALF: f64 = 2.0;

/// Coats of falling width that a fade takes, so that no step is wider than half the fan.
///
/// # Errors
/// [`CannotJudge`] when the fan has no width.
pub fn coats_for(width: Millimetres, fan: Millimetres) -> Judged<f64> {
    if fan.get() <= 0.0 {
        return Err(CannotJudge::without("pattern_mm"));
    }
    let step = fan.get() / HALF;
    let coats = libm::ceil(width.get() / step - DUST).max(1.0);
    Ok(Ruling::by("spray.fade-steps", coats)
        .step("fade-step", "w / 2", Measure::new(step, Unit::Millimetre, 0))
        .given(&[("w", Measure::new(fan.get(), Unit::Millimetre, 0))])
        .step("fade-coats", "⌈F / (w / 2)⌉", Measure::count(coats))
        .given(&[
            ("F", Measure::new(width.get(), Unit::Millimetre, 0)),
            ("w", Measure::new(fan.get(), Unit::Millimetre, 0)),
        ]))
}

/// Share of the full colour at a distance from the edge: what all coats have laid there, each falling from full to none
/// over half a fan past the line where it ends.
#[must_use]
pub fn depth(fade: Fade, from_edge: Millimetres) -> Fraction {
    if fade.coats == 0 {
        return Fraction::saturating(0.0);
    }
    let coats = f64::from(fade.coats);
    let soft = fade.fan.get() / HALF;
    let mut sum = 0.0;
    for nth in 0..fade.coats {
        let ends = fade.width.get() * f64::from(nth) / coats;
        let past = from_edge.get() - ends;
        sum += if past <= 0.0 {
            1.0
        } else if soft > 0.0 {
            fade.section.height(past / soft)
        } else {
            0.0
        };
    }
    Fraction::saturating(sum / coats)
}
