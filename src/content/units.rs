//! The units a person reads in.

use crate::quantity::{Dimension, Measure, Unit};
use serde::{Deserialize, Serialize};

/// Choice of units. Rules always count in base units; this is only how values are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Units {
    /// Whether temperatures are shown in Fahrenheit.
    pub fahrenheit: bool,
    /// Whether lengths, films and volumes are shown in US units.
    pub us: bool,
}

impl Units {
    /// Celsius and metric.
    pub const METRIC: Self = Self { fahrenheit: false, us: false };
    /// Fahrenheit and US units.
    pub const US: Self = Self { fahrenheit: true, us: true };

    /// The unit to show for one of the same dimension.
    #[must_use]
    pub const fn shown(self, unit: Unit) -> Unit {
        match unit.dimension() {
            Dimension::Temperature => {
                if self.fahrenheit {
                    Unit::Fahrenheit
                } else {
                    Unit::Celsius
                }
            }
            Dimension::TemperatureGap => {
                if self.fahrenheit {
                    Unit::FahrenheitGap
                } else {
                    Unit::Kelvin
                }
            }
            Dimension::Thickness if self.us => Unit::Mil,
            Dimension::Length if self.us => match unit {
                Unit::Metre | Unit::Foot => Unit::Foot,
                _ => Unit::Inch,
            },
            Dimension::Area if self.us => Unit::SquareFoot,
            Dimension::Coverage if self.us => Unit::SquareFootAGallon,
            Dimension::Speed if self.us => Unit::FootPerMinute,
            Dimension::AirVolume if self.us => Unit::CubicFoot,
            Dimension::AirFlow if self.us => Unit::CubicFootPerMinute,
            Dimension::Volume if self.us => Unit::FluidOunce,
            Dimension::LiquidFlow if self.us => Unit::FluidOuncePerMinute,
            _ => unit,
        }
    }

    /// The measure as it is shown: in the unit to show, less than an hour in minutes, whole times without decimals.
    #[must_use]
    pub fn show(self, measure: Measure) -> Measure {
        let shown = measure.in_unit(self.shown(measure.unit));
        let short = shown.unit == Unit::Hour && shown.value > 0.0 && shown.value < 1.0;
        let shown = if short { Measure { decimals: 0, ..shown.in_unit(Unit::Minute) } } else { shown };
        if shown.unit.dimension() == Dimension::Time && shown.is_whole() {
            return Measure { decimals: 0, ..shown };
        }
        shown
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_is_shown_as_a_shop_says_it() {
        let shown = |hours, decimals| Units::METRIC.show(Measure::new(hours, Unit::Hour, decimals)).text();
        assert_eq!(shown(0.6, 1), "36 min");
        assert_eq!(shown(0.0, 1), "0 h");
        assert_eq!(shown(1.0, 1), "1 h");
        assert_eq!(shown(14.4, 1), "14.4 h");
        assert_eq!(shown(366.96, 1), "367 h");
        assert_eq!(Units::METRIC.show(Measure::new(5.1, Unit::Day, 1)).text(), "5.1 days");
    }
}
