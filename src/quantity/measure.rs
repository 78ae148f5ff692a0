//! A number with its unit, as it is shown and as it is read back.

use super::{Dimension, Unit};
use serde::{Deserialize, Serialize};

/// A number with its unit and the decimals it is shown with.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Measure {
    /// The number, in `unit`.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
    /// Decimals shown.
    pub decimals: u8,
}

impl Measure {
    /// A number shown with so many decimals.
    #[must_use]
    pub const fn new(value: f64, unit: Unit, decimals: u8) -> Self {
        Self { value, unit, decimals }
    }

    /// A whole number of things.
    #[must_use]
    pub const fn count(value: f64) -> Self {
        Self::new(value, Unit::Count, 0)
    }

    /// The value in the base unit of its dimension.
    #[must_use]
    pub fn base(self) -> f64 {
        self.unit.convert(self.value, self.unit.base()).unwrap_or(self.value)
    }

    /// The same measure in another unit; unchanged between dimensions.
    #[must_use]
    pub fn in_unit(self, unit: Unit) -> Self {
        match self.unit.convert(self.value, unit) {
            Some(value) if unit != self.unit => Self { value, unit, decimals: self.decimals_in(unit) },
            _ => self,
        }
    }

    /// Decimals that keep about the same fineness after a change of unit.
    fn decimals_in(self, unit: Unit) -> u8 {
        let one = self.unit.convert(1.0, unit).unwrap_or(1.0) - self.unit.convert(0.0, unit).unwrap_or(0.0);
        let shift = libm::round(-libm::log10(one.abs()));
        let wanted = (f64::from(self.decimals) + shift).clamp(0.0, 4.0);
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "clamped to 0 to 4 just above"
        )]
        {
            wanted as u8
        }
    }

    /// Whether it is a whole number once rounded to its decimals.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        let rounded = libm::round(self.value * libm::exp10(f64::from(self.decimals)));
        rounded % libm::exp10(f64::from(self.decimals)) == 0.0
    }

    /// The figure alone, rounded to its decimals, with a decimal point; never `-0`.
    #[must_use]
    pub fn figure(self) -> String {
        let text = format!("{:.*}", usize::from(self.decimals), self.value);
        match text.strip_prefix('-') {
            Some(rest) if rest.chars().all(|c| c == '0' || c == '.') => rest.to_owned(),
            _ => text,
        }
    }

    /// Figure and symbol, as shown: `12.5 °C`.
    #[must_use]
    pub fn text(self) -> String {
        self.written(&self.figure(), self.unit.symbol())
    }

    /// The same with figure and symbol as a language writes them.
    #[must_use]
    pub fn written(self, figure: &str, symbol: &str) -> String {
        match self.unit {
            Unit::Grit => format!("P{figure}"),
            _ if symbol.is_empty() => figure.to_owned(),
            _ => format!("{figure} {symbol}"),
        }
    }

    /// Reads text such as `12,5 C`, `54 °F` or `P220`; a comma counts as decimal point. `None` if it is not a number
    /// with a unit of that dimension.
    #[must_use]
    pub fn parse(text: &str, dimension: Dimension) -> Option<Self> {
        let text = text.trim();
        let text = if dimension == Dimension::Grit { text.trim_start_matches(['P', 'p']) } else { text };
        let end = text
            .find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+')))
            .unwrap_or(text.len());
        let (figure, symbol) = text.split_at(end);
        let value = read_number(figure)?;
        let decimals = figure.split(['.', ',']).nth(1).map_or(0, str::len);
        let unit = if symbol.trim().is_empty() {
            Unit::ALL.into_iter().find(|unit| unit.dimension() == dimension).map(Unit::base)?
        } else {
            Unit::parse(symbol, dimension)?
        };
        Some(Self { value, unit, decimals: u8::try_from(decimals.min(9)).ok()? })
    }
}

/// Reads a number as people type it: a comma counts as decimal point. A comma before exactly three digits may as well
/// part thousands, so it is refused; so are infinities and what is no number.
#[must_use]
pub fn read_number(text: &str) -> Option<f64> {
    /// Digits behind a comma that parts thousands.
    const THOUSANDS: usize = 3;
    let text = text.trim();
    if text.split_once(',').is_some_and(|(_, rest)| rest.len() == THOUSANDS) {
        return None;
    }
    text.replace(',', ".").parse().ok().filter(|number: &f64| number.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_is_read_back_as_the_rounded_measure() {
        let shown = Measure::new(53.96, Unit::Fahrenheit, 1);
        assert_eq!(shown.text(), "54.0 °F");
        assert_eq!(
            Measure::parse("54,0 F", Dimension::Temperature),
            Some(Measure::new(54.0, Unit::Fahrenheit, 1))
        );
        assert_eq!(Measure::parse("P220", Dimension::Grit), Some(Measure::new(220.0, Unit::Grit, 0)));
        assert_eq!(read_number("20,5"), Some(20.5));
        assert_eq!(read_number("1,000"), None, "a thousand, or one with three decimals?");
        assert_eq!(Measure::parse("12 kg", Dimension::Time), None);
        assert_eq!(Measure::new(-0.01, Unit::Kelvin, 1).text(), "0.0 °C");
    }
}
