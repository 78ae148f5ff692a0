//! The angle of the gun: tilted along the stroke, heeled across it, swung in an arc.
//!
//! A point source with even flow over its fan; what bounces off at a slant comes on top of these losses.

use crate::quantity::{Degrees, Measure, Millimetres, Unit};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Ways a gun is held off square.
    Held {
        /// Square to the face, at one distance.
        Square = "held-square",
        /// Heeled: turned in the plane of the fan, one edge nearer than the other.
        Heeled = "held-heeled",
        /// Swung from wrist or elbow along the stroke.
        Arced = "held-arced",
    }
    /// What the film then looks like.
    Shape {
        /// The same all over.
        Even = "shape-even",
        /// One side of each stripe heavy, the other thin.
        OneSided = "shape-one-sided",
        /// Heavy in the middle of the stroke, thin at its ends.
        MiddleHeavy = "shape-middle-heavy",
    }
}

fn cos(angle: f64) -> f64 {
    libm::cos(angle.to_radians())
}

const fn turned(angle: Degrees) -> Measure {
    Measure::new(angle.get(), Unit::Degree, 0)
}

fn ratio(label: &'static str, formula: &'static str, ruling: Ruling<f64>) -> Ruling<f64> {
    let shown = Measure::new(ruling.answer, Unit::Ratio, 2);
    ruling.step(label, formula, shown)
}

/// Film per area of a gun tilted along its stroke with its aim kept, over the film of a square one: the cosine.
#[must_use]
pub fn tilt(angle: Degrees) -> Ruling<f64> {
    ratio("tilt-film", "cos θ", Ruling::by("spray.tilt", cos(angle.get()))).given(&[("θ", turned(angle))])
}

/// Film at the near edge over film at the far edge of a fan heeled by an angle:
/// (cos(θ - α) / cos(θ + α))³ with the fan's half angle α.
///
/// # Errors
/// [`CannotJudge`] when the far edge no longer meets the face.
pub fn heel(angle: Degrees, half_fan: Degrees) -> Judged<f64> {
    /// A right angle.
    const SQUARE: f64 = 90.0;
    if angle.get() + half_fan.get() >= SQUARE {
        return Err(CannotJudge::without("heel_deg"));
    }
    let one = cos(angle.get() - half_fan.get()) / cos(angle.get() + half_fan.get());
    Ok(ratio("near-over-far", "(cos(θ − α) / cos(θ + α))³", Ruling::by("spray.heel", one * one * one))
        .given(&[("θ", turned(angle)), ("α", turned(half_fan))]))
}

/// Film at an angle of the swing over the film in its middle, for a gun swung about a pivot behind its tip:
/// cos² φ h₀ / ((h₀ + r) / cos φ - r); constant turning and flow. A pivot of 0 is the wrist alone.
///
/// # Errors
/// [`CannotJudge`] when the distance in the middle is 0.
pub fn arc(swing: Degrees, pivot: Millimetres, middle: Millimetres) -> Judged<f64> {
    if middle.get() <= 0.0 {
        return Err(CannotJudge::without("gun_mm"));
    }
    let along = cos(swing.get());
    let far = (middle.get() + pivot.get()) / along - pivot.get();
    Ok(ratio(
        "end-over-middle",
        "cos² φ h₀ / ((h₀ + r) / cos φ − r)",
        Ruling::by("spray.arc", along * along * middle.get() / far),
    )
    .given(&[
        ("φ", turned(swing)),
        ("h₀", Measure::new(middle.get(), Unit::Millimetre, 0)),
        ("r", Measure::new(pivot.get(), Unit::Millimetre, 0)),
    ]))
}

/// What the film looks like for a way of holding the gun.
///
/// Sources: heeling and arcing as drawn in a refinishing textbook (fig. 28-17); arcing in a public aircraft-finishing
/// manual, 4.4.1.2: heavy in the middle, light at the ends.
#[must_use]
pub fn shape(held: Held) -> Ruling<Shape> {
    match held {
        Held::Square => Ruling::by("spray.square-to-the-face", Shape::Even),
        Held::Heeled => Ruling::by("spray.heel", Shape::OneSided),
        Held::Arced => Ruling::by("spray.arc", Shape::MiddleHeavy),
    }
}
