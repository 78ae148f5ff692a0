//! How near a number must be. A tolerance belongs to the quantity, not to the card.

use crate::quantity::{DUST, Dimension, MINUTES_AN_HOUR, Measure};

/// How far a number may be off: the larger of the two.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tolerance {
    /// In base units.
    pub absolute: f64,
    /// Share of the right value.
    pub relative: f64,
}

/// The tolerance of a quantity. Temperatures are absolute: a share of a temperature means nothing. 5 % of a time, film,
/// length or volume is what shop instruments and clocks allow (common practice, no source).
#[must_use]
pub const fn of(dimension: Dimension) -> Tolerance {
    const SHARE: f64 = 0.05;
    match dimension {
        Dimension::Temperature | Dimension::TemperatureGap => Tolerance { absolute: 0.5, relative: 0.0 },
        Dimension::Percent => Tolerance { absolute: 0.3, relative: 0.02 },
        Dimension::Time => Tolerance { absolute: 1.0 / MINUTES_AN_HOUR, relative: SHARE },
        Dimension::Thickness => Tolerance { absolute: 0.5, relative: SHARE },
        Dimension::Length => Tolerance { absolute: 0.1, relative: SHARE },
        Dimension::Area | Dimension::Coverage => Tolerance { absolute: 0.005, relative: SHARE },
        Dimension::Volume | Dimension::Mass => Tolerance { absolute: 0.5, relative: SHARE },
        Dimension::Pressure => Tolerance { absolute: 50.0, relative: SHARE },
        Dimension::Count | Dimension::Grit => Tolerance { absolute: 0.0, relative: 0.0 },
        Dimension::Speed => Tolerance { absolute: 0.005, relative: SHARE },
        Dimension::AirVolume | Dimension::AirFlow => Tolerance { absolute: 0.5, relative: SHARE },
        Dimension::Vapour | Dimension::VapourMass => Tolerance { absolute: 0.5, relative: SHARE },
        Dimension::Ratio => Tolerance { absolute: 0.005, relative: SHARE },
        Dimension::StopWatch => Tolerance { absolute: 0.5, relative: SHARE },
        Dimension::Viscosity => Tolerance { absolute: 0.5, relative: SHARE },
        Dimension::Density => Tolerance { absolute: 0.005, relative: 0.0 },
        Dimension::LiquidFlow => Tolerance { absolute: 1.0, relative: SHARE },
        Dimension::Angle => Tolerance { absolute: 0.5, relative: 0.0 },
        // A glossmeter repeats to about a unit (common practice, no source).
        Dimension::Gloss => Tolerance { absolute: 1.0, relative: 0.0 },
        Dimension::Content => Tolerance { absolute: 1.0, relative: 0.02 },
    }
}

/// Whether a given number is near enough to the right one. The order matters: the second is the right one.
#[must_use]
pub fn agree(given: Measure, right: Measure) -> bool {
    given.unit.dimension() == right.unit.dimension()
        && (given.base() - right.base()).abs() <= room(right) + DUST
}

/// Whether two numbers are so far apart that no rounding lets one pass for the other.
#[must_use]
pub fn apart(a: Measure, b: Measure) -> bool {
    /// Both sides' tolerances and the rounding of what is shown.
    const ROOMS: f64 = 2.5;
    (a.base() - b.base()).abs() > ROOMS * room(a).max(room(b)) && a.text() != b.text()
}

/// How far a number may be off, in its own unit.
#[must_use]
pub fn room_in(right: Measure) -> f64 {
    let off = right.unit.base().convert(right.base() + room(right), right.unit);
    (off.unwrap_or(right.value) - right.value).abs()
}

fn room(right: Measure) -> f64 {
    let tolerance = of(right.unit.dimension());
    tolerance.absolute.max(tolerance.relative * right.base().abs())
}
