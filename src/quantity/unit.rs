//! Units in which people read and answer, and how they turn into one another.

use super::{ML_A_LITRE, MM_A_METRE};
use serde::{Deserialize, Serialize};

/// What is measured: units of one dimension convert into one another, others never do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Dimension {
    /// A temperature on a scale with a zero point.
    Temperature,
    /// A difference of temperatures.
    TemperatureGap,
    /// Relative humidity, moisture content, percent of a mix.
    Percent,
    /// Time.
    Time,
    /// Film thickness.
    Thickness,
    /// Length of the work, gun distance.
    Length,
    /// Area of the work.
    Area,
    /// Area that a volume covers.
    Coverage,
    /// Volume of a liquid.
    Volume,
    /// Mass.
    Mass,
    /// Air pressure.
    Pressure,
    /// Things counted: coats, passes, parts.
    Count,
    /// A bare ratio.
    Ratio,
    /// Grade of an abrasive.
    Grit,
    /// Time by the stop watch: a cup running out.
    StopWatch,
    /// Kinematic viscosity.
    Viscosity,
    /// Mass of a litre.
    Density,
    /// Mass of one thing in a litre of another.
    Content,
    /// Speed of air.
    Speed,
    /// Volume of air.
    AirVolume,
    /// Air that is moved.
    AirFlow,
    /// Vapour in air, by volume.
    Vapour,
    /// Vapour or dust in air, by mass.
    VapourMass,
    /// Liquid through the gun.
    LiquidFlow,
    /// An angle.
    Angle,
    /// Gloss.
    Gloss,
}

/// A unit a value is shown or answered in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Unit {
    /// Degree Celsius.
    #[serde(rename = "C")]
    Celsius,
    /// Degree Fahrenheit.
    #[serde(rename = "F")]
    Fahrenheit,
    /// Kelvin, for differences.
    #[serde(rename = "K")]
    Kelvin,
    /// Fahrenheit degrees, for differences.
    #[serde(rename = "F-gap")]
    FahrenheitGap,
    /// Per cent.
    #[serde(rename = "%")]
    Percent,
    /// Minute.
    #[serde(rename = "min")]
    Minute,
    /// Hour.
    #[serde(rename = "h")]
    Hour,
    /// Day of 24 hours.
    #[serde(rename = "d")]
    Day,
    /// Micrometre.
    #[serde(rename = "um")]
    Micrometre,
    /// Thousandth of an inch.
    #[serde(rename = "mil")]
    Mil,
    /// Millimetre.
    #[serde(rename = "mm")]
    Millimetre,
    /// Inch.
    #[serde(rename = "in")]
    Inch,
    /// Square metre.
    #[serde(rename = "m2")]
    SquareMetre,
    /// Square foot.
    #[serde(rename = "ft2")]
    SquareFoot,
    /// Square metre a litre.
    #[serde(rename = "m2/L")]
    SquareMetreALitre,
    /// Square foot a US gallon.
    #[serde(rename = "ft2/gal")]
    SquareFootAGallon,
    /// Millilitre.
    #[serde(rename = "mL")]
    Millilitre,
    /// Litre.
    #[serde(rename = "L")]
    Litre,
    /// US fluid ounce.
    #[serde(rename = "floz")]
    FluidOunce,
    /// Gram.
    #[serde(rename = "g")]
    Gram,
    /// Kilogram.
    #[serde(rename = "kg")]
    Kilogram,
    /// Pascal.
    #[serde(rename = "Pa")]
    Pascal,
    /// A number of things.
    #[serde(rename = "count")]
    Count,
    /// A bare ratio.
    #[serde(rename = "ratio")]
    Ratio,
    /// Grade number of an abrasive in the P series.
    #[serde(rename = "P")]
    Grit,
    /// Second, by the stop watch.
    #[serde(rename = "s")]
    Second,
    /// Square millimetre a second: the centistokes.
    #[serde(rename = "mm2/s")]
    SquareMillimetreASecond,
    /// Kilogram a litre: the gram a millilitre.
    #[serde(rename = "kg/L")]
    KilogramALitre,
    /// Gram a litre.
    #[serde(rename = "g/L")]
    GramALitre,
    /// Metre.
    #[serde(rename = "m")]
    Metre,
    /// Foot.
    #[serde(rename = "ft")]
    Foot,
    /// Metre a second.
    #[serde(rename = "m/s")]
    MetrePerSecond,
    /// Foot a minute.
    #[serde(rename = "ft/min")]
    FootPerMinute,
    /// Cubic metre of air.
    #[serde(rename = "m3")]
    CubicMetre,
    /// Cubic foot of air.
    #[serde(rename = "ft3")]
    CubicFoot,
    /// Cubic metre a minute.
    #[serde(rename = "m3/min")]
    CubicMetrePerMinute,
    /// Cubic foot a minute.
    #[serde(rename = "ft3/min")]
    CubicFootPerMinute,
    /// Part per million by volume.
    #[serde(rename = "ppm")]
    PartsPerMillion,
    /// Milligram a cubic metre.
    #[serde(rename = "mg/m3")]
    MilligramPerCubicMetre,
    /// Millilitre a minute, through the gun.
    #[serde(rename = "mL/min")]
    MillilitrePerMinute,
    /// US fluid ounce a minute, through the gun.
    #[serde(rename = "floz/min")]
    FluidOuncePerMinute,
    /// Degree of an angle.
    #[serde(rename = "deg")]
    Degree,
    /// Gloss unit: hundredths of what polished black glass of index 1.567 mirrors at the same angle.
    #[serde(rename = "GU")]
    Gloss,
}

impl Unit {
    /// Every unit, for parsing and tests.
    pub const ALL: [Self; 43] = [
        Self::Celsius,
        Self::Fahrenheit,
        Self::Kelvin,
        Self::FahrenheitGap,
        Self::Percent,
        Self::Minute,
        Self::Hour,
        Self::Day,
        Self::Micrometre,
        Self::Mil,
        Self::Millimetre,
        Self::Inch,
        Self::SquareMetre,
        Self::SquareFoot,
        Self::SquareMetreALitre,
        Self::SquareFootAGallon,
        Self::Millilitre,
        Self::Litre,
        Self::FluidOunce,
        Self::Gram,
        Self::Kilogram,
        Self::Pascal,
        Self::Count,
        Self::Ratio,
        Self::Grit,
        Self::Second,
        Self::SquareMillimetreASecond,
        Self::KilogramALitre,
        Self::GramALitre,
        Self::Metre,
        Self::Foot,
        Self::MetrePerSecond,
        Self::FootPerMinute,
        Self::CubicMetre,
        Self::CubicFoot,
        Self::CubicMetrePerMinute,
        Self::CubicFootPerMinute,
        Self::PartsPerMillion,
        Self::MilligramPerCubicMetre,
        Self::MillilitrePerMinute,
        Self::FluidOuncePerMinute,
        Self::Degree,
        Self::Gloss,
    ];

    /// What it measures.
    #[must_use]
    pub const fn dimension(self) -> Dimension {
        match self {
            Self::Celsius | Self::Fahrenheit => Dimension::Temperature,
            Self::Kelvin | Self::FahrenheitGap => Dimension::TemperatureGap,
            Self::Percent => Dimension::Percent,
            Self::Minute | Self::Hour | Self::Day => Dimension::Time,
            Self::Micrometre | Self::Mil => Dimension::Thickness,
            Self::Millimetre | Self::Inch | Self::Metre | Self::Foot => Dimension::Length,
            Self::SquareMetre | Self::SquareFoot => Dimension::Area,
            Self::SquareMetreALitre | Self::SquareFootAGallon => Dimension::Coverage,
            Self::Millilitre | Self::Litre | Self::FluidOunce => Dimension::Volume,
            Self::Gram | Self::Kilogram => Dimension::Mass,
            Self::Pascal => Dimension::Pressure,
            Self::Count => Dimension::Count,
            Self::Ratio => Dimension::Ratio,
            Self::Grit => Dimension::Grit,
            Self::Second => Dimension::StopWatch,
            Self::SquareMillimetreASecond => Dimension::Viscosity,
            Self::KilogramALitre => Dimension::Density,
            Self::GramALitre => Dimension::Content,
            Self::MetrePerSecond | Self::FootPerMinute => Dimension::Speed,
            Self::CubicMetre | Self::CubicFoot => Dimension::AirVolume,
            Self::CubicMetrePerMinute | Self::CubicFootPerMinute => Dimension::AirFlow,
            Self::PartsPerMillion => Dimension::Vapour,
            Self::MilligramPerCubicMetre => Dimension::VapourMass,
            Self::MillilitrePerMinute | Self::FluidOuncePerMinute => Dimension::LiquidFlow,
            Self::Degree => Dimension::Angle,
            Self::Gloss => Dimension::Gloss,
        }
    }

    /// Multiplier and offset to the base unit of the dimension: `base = value * multiplier + offset`.
    ///
    /// Inch 25.4 mm exactly and US fluid ounce 29.5735295625 mL exactly, US gallon 128 of them; foot 304.8 mm: NIST Handbook 44, appendix C.
    const fn to_base(self) -> (f64, f64) {
        const FAHRENHEIT_STEP: f64 = 5.0 / 9.0;
        const FAHRENHEIT_ZERO_C: f64 = -32.0 * FAHRENHEIT_STEP;
        const HOURS_A_MINUTE: f64 = 1.0 / super::MINUTES_AN_HOUR;
        const MM_AN_INCH: f64 = 25.4;
        const UM_A_MIL: f64 = 25.4;
        const G_A_KILOGRAM: f64 = 1_000.0;
        const ML_A_FLUID_OUNCE: f64 = 29.573_529_562_5;
        const MM_A_FOOT: f64 = 304.8;
        const M_S_A_FOOT_A_MINUTE: f64 = 0.304_8 / 60.0;
        const M3_A_CUBIC_FOOT: f64 = 0.028_316_846_592;
        const M2_A_SQUARE_FOOT: f64 = 0.092_903_04;
        const LITRES_A_GALLON: f64 = 3.785_411_784;
        match self {
            Self::Fahrenheit => (FAHRENHEIT_STEP, FAHRENHEIT_ZERO_C),
            Self::FahrenheitGap => (FAHRENHEIT_STEP, 0.0),
            Self::Minute => (HOURS_A_MINUTE, 0.0),
            Self::Day => (super::HOURS_A_DAY, 0.0),
            Self::Inch => (MM_AN_INCH, 0.0),
            Self::Mil => (UM_A_MIL, 0.0),
            Self::Litre => (ML_A_LITRE, 0.0),
            Self::FluidOunce | Self::FluidOuncePerMinute => (ML_A_FLUID_OUNCE, 0.0),
            Self::Kilogram => (G_A_KILOGRAM, 0.0),
            Self::SquareFoot => (M2_A_SQUARE_FOOT, 0.0),
            Self::SquareFootAGallon => (M2_A_SQUARE_FOOT / LITRES_A_GALLON, 0.0),
            Self::Metre => (MM_A_METRE, 0.0),
            Self::Foot => (MM_A_FOOT, 0.0),
            Self::FootPerMinute => (M_S_A_FOOT_A_MINUTE, 0.0),
            Self::CubicFoot | Self::CubicFootPerMinute => (M3_A_CUBIC_FOOT, 0.0),
            _ => (1.0, 0.0),
        }
    }

    /// The unit that rules count in.
    #[must_use]
    pub const fn base(self) -> Self {
        match self.dimension() {
            Dimension::Temperature => Self::Celsius,
            Dimension::TemperatureGap => Self::Kelvin,
            Dimension::Percent => Self::Percent,
            Dimension::Time => Self::Hour,
            Dimension::Thickness => Self::Micrometre,
            Dimension::Length => Self::Millimetre,
            Dimension::Area => Self::SquareMetre,
            Dimension::Coverage => Self::SquareMetreALitre,
            Dimension::Volume => Self::Millilitre,
            Dimension::Mass => Self::Gram,
            Dimension::Pressure => Self::Pascal,
            Dimension::Count => Self::Count,
            Dimension::Ratio => Self::Ratio,
            Dimension::Grit => Self::Grit,
            Dimension::StopWatch => Self::Second,
            Dimension::Viscosity => Self::SquareMillimetreASecond,
            Dimension::Density => Self::KilogramALitre,
            Dimension::Content => Self::GramALitre,
            Dimension::Speed => Self::MetrePerSecond,
            Dimension::AirVolume => Self::CubicMetre,
            Dimension::AirFlow => Self::CubicMetrePerMinute,
            Dimension::Vapour => Self::PartsPerMillion,
            Dimension::VapourMass => Self::MilligramPerCubicMetre,
            Dimension::LiquidFlow => Self::MillilitrePerMinute,
            Dimension::Angle => Self::Degree,
            Dimension::Gloss => Self::Gloss,
        }
    }

    /// All units of the same dimension, the base unit first.
    #[must_use]
    pub fn siblings(self) -> Vec<Self> {
        let base = self.base();
        let others = |unit: &Self| unit.dimension() == self.dimension() && *unit != base;
        std::iter::once(base).chain(Self::ALL.into_iter().filter(others)).collect()
    }

    /// Turns a value in this unit into another unit of the same dimension; `None` between dimensions.
    #[must_use]
    pub fn convert(self, value: f64, to: Self) -> Option<f64> {
        if self == to {
            return Some(value);
        }
        if self.dimension() != to.dimension() {
            return None;
        }
        let (multiplier, offset) = self.to_base();
        let (to_multiplier, to_offset) = to.to_base();
        Some((value * multiplier + offset - to_offset) / to_multiplier)
    }

    /// The symbol that stands behind a number.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Celsius | Self::Kelvin => "°C",
            Self::Fahrenheit | Self::FahrenheitGap => "°F",
            Self::Percent => "%",
            Self::Minute => "min",
            Self::Hour => "h",
            Self::Day => "days",
            Self::Micrometre => "µm",
            Self::Mil => "mil",
            Self::Millimetre => "mm",
            Self::Inch => "in",
            Self::SquareMetre => "m²",
            Self::SquareFoot => "ft²",
            Self::SquareMetreALitre => "m²/L",
            Self::SquareFootAGallon => "ft²/gal",
            Self::Millilitre => "mL",
            Self::Litre => "L",
            Self::FluidOunce => "fl oz",
            Self::Gram => "g",
            Self::Kilogram => "kg",
            Self::Pascal => "Pa",
            Self::Count | Self::Ratio => "",
            Self::Grit => "grit",
            Self::Second => "s",
            Self::SquareMillimetreASecond => "mm²/s",
            Self::KilogramALitre => "kg/L",
            Self::GramALitre => "g/L",
            Self::Metre => "m",
            Self::Foot => "ft",
            Self::MetrePerSecond => "m/s",
            Self::FootPerMinute => "ft/min",
            Self::CubicMetre => "m³",
            Self::CubicFoot => "ft³",
            Self::CubicMetrePerMinute => "m³/min",
            Self::CubicFootPerMinute => "ft³/min",
            Self::PartsPerMillion => "ppm",
            Self::MilligramPerCubicMetre => "mg/m³",
            Self::MillilitrePerMinute => "mL/min",
            Self::FluidOuncePerMinute => "fl oz/min",
            Self::Degree => "°",
            Self::Gloss => "GU",
        }
    }

    /// Reads a symbol as a person types it (`um` and `µm`, `F` and `°F`, `hours`), among the units of one dimension.
    #[must_use]
    pub fn parse(text: &str, dimension: Dimension) -> Option<Self> {
        let text = text.trim().trim_start_matches('°').to_lowercase();
        let named = |unit: &Self| -> bool {
            let names: &[&str] = match unit {
                Self::Celsius => &["c", "celsius"],
                Self::Kelvin => &["c", "celsius", "k"],
                Self::Fahrenheit => &["f", "fahrenheit"],
                Self::FahrenheitGap => &["f", "fahrenheit", "f-gap"],
                Self::Percent => &["%", "percent", "% rh"],
                Self::Minute => &["min", "minute", "minutes"],
                Self::Hour => &["h", "hour", "hours"],
                Self::Day => &["d", "day", "days"],
                Self::Micrometre => &["µm", "μm", "um", "micron", "microns"],
                Self::Mil => &["mil", "mils", "thou"],
                Self::Millimetre => &["mm"],
                Self::Inch => &["in", "inch", "inches"],
                Self::SquareMetre => &["m²", "m2"],
                Self::SquareFoot => &["ft²", "ft2", "sq ft"],
                Self::SquareMetreALitre => &["m²/l", "m2/l"],
                Self::SquareFootAGallon => &["ft²/gal", "ft2/gal"],
                Self::Millilitre => &["ml"],
                Self::Litre => &["l"],
                Self::FluidOunce => &["fl oz", "floz", "oz"],
                Self::Gram => &["g"],
                Self::Kilogram => &["kg"],
                Self::Pascal => &["pa"],
                Self::Count => &["", "count"],
                Self::Ratio => &["", "ratio"],
                Self::Grit => &["grit", "p"],
                Self::Second => &["s", "sec", "seconds"],
                Self::SquareMillimetreASecond => &["mm²/s", "mm2/s", "cst"],
                Self::KilogramALitre => &["kg/l", "g/ml"],
                Self::GramALitre => &["g/l"],
                Self::Metre => &["m"],
                Self::Foot => &["ft", "foot", "feet"],
                Self::MetrePerSecond => &["m/s"],
                Self::FootPerMinute => &["ft/min", "fpm"],
                Self::CubicMetre => &["m³", "m3"],
                Self::CubicFoot => &["ft³", "ft3", "cu ft"],
                Self::CubicMetrePerMinute => &["m³/min", "m3/min"],
                Self::CubicFootPerMinute => &["ft³/min", "ft3/min", "cfm"],
                Self::PartsPerMillion => &["ppm"],
                Self::MilligramPerCubicMetre => &["mg/m³", "mg/m3"],
                Self::MillilitrePerMinute => &["ml/min"],
                Self::FluidOuncePerMinute => &["fl oz/min", "floz/min", "oz/min"],
                // The degree sign is taken off before names are compared.
                Self::Degree => &["", "deg", "degree", "degrees"],
                Self::Gloss => &["gu", "gloss units"],
            };
            names.contains(&text.as_str())
        };
        Self::ALL.into_iter().filter(|unit| unit.dimension() == dimension).find(named)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NIST Handbook 44 appendix C (inch, fluid ounce) and the definition of the Fahrenheit scale.
    #[test]
    fn conversions_agree_with_the_definitions() {
        let near = |a: Option<f64>, b: f64| (a.expect("same dimension") - b).abs() < 1e-9;
        assert!(near(Unit::Fahrenheit.convert(212.0, Unit::Celsius), 100.0));
        assert!(near(Unit::Celsius.convert(-40.0, Unit::Fahrenheit), -40.0));
        assert!(near(Unit::FahrenheitGap.convert(20.0, Unit::Kelvin), 100.0 / 9.0));
        assert!(near(Unit::Mil.convert(4.0, Unit::Micrometre), 101.6));
        assert!(near(Unit::FluidOunce.convert(1.0, Unit::Millilitre), 29.573_529_562_5));
        assert_eq!(Unit::Hour.convert(1.0, Unit::Celsius), None);
    }

    #[test]
    fn every_symbol_is_read_back_as_its_unit() {
        for unit in Unit::ALL {
            assert_eq!(Unit::parse(unit.symbol(), unit.dimension()), Some(unit), "{unit:?}");
        }
    }
}
