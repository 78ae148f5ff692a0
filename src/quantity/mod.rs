//! Physical quantities as types, each with one range that constructors, files and messages share.
//!
//! A rule takes `Celsius` or `Micrometres`, never a bare number, so that a wrong unit does not compile.
//! Ranges are those of a finish room and its materials; outside them a value is a mistake of reading or typing.

mod measure;
mod unit;

pub use measure::{Measure, read_number};
pub use unit::{Dimension, Unit};

use serde::{Deserialize, Serialize};

/// Dust of binary arithmetic, in any unit: a number that rounding left this little past a limit counts as on it.
pub const DUST: f64 = 1e-9;
/// Per cent in a whole.
pub const PERCENT_A_WHOLE: f64 = 100.0;
/// Millimetres in a metre (SI brochure, 9th edition, table 7).
pub const MM_A_METRE: f64 = 1_000.0;
/// Milliseconds in a second (SI brochure, 9th edition, table 7).
pub const MS_A_SECOND: f64 = 1_000.0;
/// Millilitres in a litre (SI brochure, 9th edition, tables 7 and 8).
pub const ML_A_LITRE: f64 = 1_000.0;
/// Seconds in a minute (SI brochure, 9th edition, table 8).
pub const SECONDS_A_MINUTE: f64 = 60.0;
/// Minutes in an hour (SI brochure, 9th edition, table 8).
pub const MINUTES_AN_HOUR: f64 = 60.0;
/// Hours in a day (SI brochure, 9th edition, table 8).
pub const HOURS_A_DAY: f64 = 24.0;

/// A value that lies outside the range of its quantity.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{what} {value} is outside {min} to {max} {unit}")]
pub struct OutOfRange {
    /// Name of the quantity, in words.
    pub what: &'static str,
    /// The value refused.
    pub value: f64,
    /// Least value allowed.
    pub min: f64,
    /// Greatest value allowed.
    pub max: f64,
    /// Symbol of the unit.
    pub unit: &'static str,
}

/// Checks a bare number against a range; not-a-number is refused like any other value outside.
///
/// # Errors
/// [`OutOfRange`] naming the quantity, the value and the range.
pub fn within(
    what: &'static str,
    unit: &'static str,
    min: f64,
    max: f64,
    value: f64,
) -> Result<f64, OutOfRange> {
    if value >= min && value <= max { Ok(value) } else { Err(OutOfRange { what, value, min, max, unit }) }
}

macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident, $words:literal, $unit:literal, $min:literal, $max:literal;)+) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
        #[serde(try_from = "f64", into = "f64")]
        pub struct $name(f64);

        impl $name {
            /// Least value allowed.
            pub const MIN: f64 = $min;
            /// Greatest value allowed.
            pub const MAX: f64 = $max;

            /// Checks the range.
            ///
            /// # Errors
            /// [`OutOfRange`] when the value lies outside `MIN` to `MAX` or is not a number.
            pub fn new(value: f64) -> Result<Self, OutOfRange> {
                within($words, $unit, $min, $max, value).map(Self)
            }

            /// The nearest value in range, for values already checked elsewhere; not-a-number gives `MIN`.
            #[must_use]
            pub const fn saturating(value: f64) -> Self {
                if value >= $max {
                    Self($max)
                } else if value >= $min {
                    Self(value)
                } else {
                    Self($min)
                }
            }

            /// The number, in the unit of the type's name.
            #[must_use]
            pub const fn get(self) -> f64 {
                self.0
            }
        }

        impl TryFrom<f64> for $name {
            type Error = OutOfRange;
            fn try_from(value: f64) -> Result<Self, OutOfRange> {
                Self::new(value)
            }
        }

        impl From<$name> for f64 {
            fn from(value: $name) -> f64 {
                value.0
            }
        }
    )+};
}

quantities! {
    /// Temperature of air, work or material; also of a dew point, which lies far lower in dry cold air.
    Celsius, "temperature", "°C", -100.0, 100.0;
    /// Relative humidity over liquid water, 0 to 100.
    RelativeHumidity, "relative humidity", "% RH", 0.0, 100.0;
    /// Air pressure. From the highest shops to below sea level.
    Pascals, "pressure", "Pa", 50_000.0, 110_000.0;
    /// Mass of water per mass of oven-dry wood, in per cent.
    MoistureContent, "moisture content", "%", 0.0, 100.0;
    /// Time between operations; at most one year.
    Hours, "time", "h", 0.0, 8_784.0;
    /// Film thickness, particle size, vessel diameter.
    Micrometres, "thickness", "µm", 0.0, 5_000.0;
    /// Length or width of the work, distance of the gun.
    Millimetres, "length", "mm", 0.0, 10_000.0;
    /// Area of the work.
    SquareMetres, "area", "m²", 0.0, 1_000.0;
    /// Area that a litre of material covers.
    Coverage, "coverage", "m²/L", 0.0, 10_000.0;
    /// Volume of material.
    Millilitres, "volume", "mL", 0.0, 1_000_000.0;
    /// Time that a cup takes to run out; at most a quarter of an hour.
    Seconds, "time", "s", 0.0, 900.0;
    /// Kinematic viscosity.
    Viscosity, "viscosity", "mm²/s", 0.0, 20_000.0;
    /// Mass of a litre of material: from the lightest thinner to a pigmented coating.
    Density, "density", "kg/L", 0.5, 2.5;
    /// Mass in a litre of coating.
    GramsALitre, "content", "g/L", 0.0, 5_000.0;
    /// Mass of a part of a mix.
    Grams, "mass", "g", 0.0, 2_500_000.0;
    /// Mass of material used in a year.
    Kilograms, "mass", "kg", 0.0, 100_000.0;
    /// Speed of air at a booth's face.
    MetresPerSecond, "air speed", "m/s", 0.0, 20.0;
    /// Volume of air.
    AirVolume, "air volume", "m³", 0.0, 10_000_000.0;
    /// Air moved by a fan.
    AirFlow, "air flow", "m³/min", 0.0, 1_000_000.0;
    /// Vapour in air, parts per million by volume.
    PartsPerMillion, "vapour in air", "ppm", 0.0, 1_000_000.0;
    /// Vapour or dust in air by mass.
    MilligramsPerCubicMetre, "mass in air", "mg/m³", 0.0, 10_000_000.0;
    /// Lower explosive limit: per cent of vapour in air by volume at which it can burn.
    ExplosiveLimit, "lower explosive limit", "%", 0.1, 50.0;
    /// Mass of a mole of a substance.
    MolarMass, "molar mass", "g/mol", 1.0, 1_000.0;
    /// Liquid that leaves a gun.
    LiquidFlow, "fluid flow", "mL/min", 0.0, 2_000.0;
    /// Speed of a gun along the work: a hand in shading to a machine.
    GunSpeed, "gun speed", "m/s", 0.01, 5.0;
    /// Part of the full fan width that a pass shares with the one before.
    Overlap, "overlap", "", 0.0, 0.95;
    /// An angle off square, to either side.
    Degrees, "angle", "°", 0.0, 89.0;
    /// How much slower light runs in a material than in a vacuum.
    RefractiveIndex, "refractive index", "", 1.01, 3.0;
    /// Light held back by a layer: the decadic logarithm of what falls on it over what passes, once through.
    Absorbance, "absorbance", "", 0.0, 10.0;
    /// A share of a whole, 0 to 1.
    Fraction, "fraction", "", 0.0, 1.0;
    /// Diffusivity times time over film thickness squared.
    Fourier, "Fourier number", "", 0.0, 100.0;
    /// Film resistance over the resistance of the air at its surface.
    Biot, "Biot number", "", 0.001, 10_000.0;
}

impl Celsius {
    /// Water freezes here at normal pressure.
    pub const FREEZING: Self = Self(0.0);

    /// Absolute temperature in kelvin.
    #[must_use]
    pub fn kelvin(self) -> f64 {
        /// 0 °C in kelvin: exact by definition of the Celsius scale (SI brochure, 9th edition, 2.3.1).
        const ZERO_CELSIUS_K: f64 = 273.15;
        self.0 + ZERO_CELSIUS_K
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_outside_its_range_names_the_range() {
        let error = RelativeHumidity::new(101.0).expect_err("over 100 % must be refused");
        assert_eq!(error.to_string(), "relative humidity 101 is outside 0 to 100 % RH");
        assert!(Celsius::new(f64::NAN).is_err());
    }
}
