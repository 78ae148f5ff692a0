//! The air and the work when something was sprayed, beside the limits of the sheet that they are read against.

use super::story::Walk;
use crate::quantity::{Celsius, RelativeHumidity};
use crate::rules::air::spray_gate;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::plan::Climate;
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::RuleId;

/// What was read, and what the sheet asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AirThen {
    /// Air, humidity and surface of the work.
    pub climate: Climate,
    /// Dew point of that air.
    pub dew_point: Celsius,
    /// Surface of the work less the dew point, K.
    pub gap_k: f64,
    /// The least gap for a coat as mixed, and with retarder, K.
    pub gap_spray_k: f64,
    /// With retarder, K.
    pub gap_retarder_k: f64,
    /// The humidity up to which it is sprayed.
    pub humidity_limit: RelativeHumidity,
    /// Below this, air or work, nothing is sprayed.
    pub cold_stop: Celsius,
}

/// Whether a rule is about the air that a coat is sprayed in.
#[must_use]
pub fn is_of_air(rule: RuleId) -> bool {
    [OrderError::AirOutsideWindow, OrderError::ColdWork].iter().any(|error| error.slug() == rule.0)
}

/// The air at a moment, in hours after the first midnight, beside the limits; `None` where nothing is known of it.
#[must_use]
pub fn air_then(walk: &Walk, moment: f64) -> Option<AirThen> {
    let (start, sheet) = (walk.start(), &walk.start().sheet);
    let climate = start.air.at(moment - start.day.opens().get())?;
    let gate = spray_gate(climate.air, climate.humidity, climate.work, sheet).answer;
    Some(AirThen {
        climate,
        dew_point: gate.dew_point,
        gap_k: gate.gap,
        gap_spray_k: sheet.get(Setting::GapSpray),
        gap_retarder_k: sheet.get(Setting::GapRetarder),
        humidity_limit: RelativeHumidity::saturating(sheet.get(Setting::HumidityLimit)),
        cold_stop: Celsius::saturating(sheet.get(Setting::ColdStop)),
    })
}
