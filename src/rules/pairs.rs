//! Values of a shop sheet that must stand in order: a limit below another, the beginning of a span before its end.
//!
//! The order follows from what the values mean; no source is needed for it.

use super::sheet::{Setting, Sheet};
use super::term::Term;

/// Lower value, higher value, and whether they may be equal.
const PAIRS: [(Setting, Setting, bool); 18] = [
    (Setting::FillerWipeFrom, Setting::FillerWipeTo, true),
    (Setting::WaitModelFrom, Setting::WaitModelTo, false),
    (Setting::GapRetarder, Setting::GapSpray, true),
    (Setting::MoistureFrom, Setting::MoistureTo, true),
    (Setting::MoistureTo, Setting::MoistureReject, true),
    (Setting::WashcoatFrom, Setting::WashcoatTo, true),
    (Setting::ClearWet, Setting::WetWarn, true),
    (Setting::WetWarn, Setting::WetSag, true),
    (Setting::ClearCoatsFrom, Setting::ClearCoatsTo, true),
    (Setting::LevelGrit, Setting::CompoundGrit, true),
    (Setting::BodyDistanceFrom, Setting::BodyDistanceTo, true),
    (Setting::ShadeDistanceFrom, Setting::ShadeDistanceTo, true),
    (Setting::HvlpDistanceFrom, Setting::HvlpDistanceTo, true),
    (Setting::GlossLow, Setting::GlossHigh, true),
    (Setting::DifferenceNoticed, Setting::DifferencePlain, true),
    (Setting::DayFrom, Setting::DayTo, false),
    (Setting::ClearWait, Setting::RecoatCloses, false),
    (Setting::RecoatCloses, Setting::RecoatOpensAgain, false),
];

/// Values that stand for never where they are 0.
const NEVER: [Setting; 2] = [Setting::RecoatCloses, Setting::RecoatOpensAgain];

/// Two values of a sheet in the wrong order.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error(
    "`{}` is {high_value}; with `{}` at {low_value} it must be {} {low_value}",
    high.slug(), low.slug(), if *may_equal { "at least" } else { "over" }
)]
pub struct Clash {
    /// The value that must be lower.
    pub low: Setting,
    /// The value that must be higher.
    pub high: Setting,
    /// What the sheet says of the lower one.
    pub low_value: f64,
    /// What the sheet says of the higher one.
    pub high_value: f64,
    /// Whether they may be equal.
    pub may_equal: bool,
}

/// The values of a sheet that stand in the wrong order. A recoat window that never closes or never opens again (0) is
/// in order with anything.
#[must_use]
pub fn clashes(sheet: &Sheet) -> Vec<Clash> {
    let clash = |&(low, high, may_equal): &(Setting, Setting, bool)| {
        let (low_value, high_value) = (sheet.get(low), sheet.get(high));
        let unset = [(low, low_value), (high, high_value)]
            .iter()
            .any(|(setting, value)| NEVER.contains(setting) && *value == 0.0);
        let rises = low_value < high_value || (may_equal && low_value == high_value);
        (!unset && !rises).then_some(Clash { low, high, low_value, high_value, may_equal })
    };
    PAIRS.iter().filter_map(clash).collect()
}
