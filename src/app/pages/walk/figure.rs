//! A number of an operation as it is shown and typed: a share of one in per cent, as people say it.

use crate::content::Number;
use crate::quantity::{Measure, PERCENT_A_WHOLE, Unit};

/// Decimals that a step asks for.
fn decimals(step: f64) -> u8 {
    let whole = |value: f64| (value - value.round()).abs() < 1e-9;
    if whole(step) {
        0
    } else if whole(step * 10.0) {
        1
    } else {
        2
    }
}

/// A value as it is said.
pub(super) fn said(number: &Number, value: f64) -> Measure {
    if number.unit == Unit::Ratio {
        return Measure::new(value * PERCENT_A_WHOLE, Unit::Percent, decimals(number.step * PERCENT_A_WHOLE));
    }
    Measure::new(value, number.unit, decimals(number.step))
}

/// The value that was typed in the unit that is shown; `None`: it is none.
pub(super) fn typed(number: &Number, typed: f64, unit: Unit) -> Option<f64> {
    if number.unit == Unit::Ratio { Some(typed / PERCENT_A_WHOLE) } else { unit.convert(typed, number.unit) }
}
