//! Air: dew point, wet bulb, humidity ratio, the spray gate.

use super::Calculation;

pub(super) const ALL: &[&Calculation] = &[];
