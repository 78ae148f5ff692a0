//! What the questions about drying and curing share: the room, the clock and the sheet's day.

use crate::bench::Facts;
use crate::card::Dice;
use crate::content::World;
use crate::quantity::{Celsius, Hours, Measure, Unit};
use crate::rules::drying::Modelled;
use crate::rules::drying::waits::{Earliest, Told, Wait, earliest};
use crate::rules::sheet::Setting;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// What a time of day begins with as a term: `clock-08`.
const CLOCK: &str = "clock-";

/// From here on a wait is told in whole hours, below it in tenths.
const WHOLE_FROM: f64 = 10.0;

/// Hours as a tag tells them: whole ones for a long wait, tenths for a short one.
pub(super) fn hours(value: f64) -> Measure {
    Measure::new(value, Unit::Hour, u8::from(value < WHOLE_FROM))
}

/// A time that has passed, as a tag tells it.
pub(super) fn passed(value: f64) -> f64 {
    /// Tenths in a whole.
    const TENTHS: f64 = 10.0;
    if value < WHOLE_FROM { libm::round(value * TENTHS) / TENTHS } else { libm::round(value) }
}

/// The estimate; a room outside the sheet leaves a question after a number open.
pub(super) fn decided<T>(ruling: Ruling<Modelled<T>>) -> Judged<T> {
    let Ruling { answer, rules, working } = ruling;
    let answer = answer.estimate().ok_or_else(|| CannotJudge::without("air_c"))?;
    Ok(Ruling { answer, rules, working })
}

/// A wait and the air that it was judged in, where both can be had.
pub(super) fn stated(wait: Wait, told: &Told, world: &World<'_>) -> Option<(Earliest, Celsius)> {
    let found = earliest(wait, told, world.sheet).ok()?.answer.estimate()?;
    Some((found, told.air?))
}

/// Brings the drawn air inside the temperatures of the sheet.
pub(super) fn inside(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    if let Some(air) = facts.maybe_number("air_c") {
        let (from, to) = (world.sheet.get(Setting::WaitModelFrom), world.sheet.get(Setting::WaitModelTo));
        facts.set("air_c", air.max(from).min(to));
    }
}

/// Brings the air inside the sheet's temperatures and the clock inside its working hours, and tells those hours.
pub(super) fn set_day(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// At least an hour of the day is left.
    const LEFT: f64 = 1.0;
    inside(facts, world, dice);
    let (opens, closes) = (world.sheet.get(Setting::DayFrom), world.sheet.get(Setting::DayTo));
    if let Ok(clock) = time_of(facts, "clock") {
        tell(facts, "clock", clock.get().max(opens).min(closes - LEFT));
    }
    tell(facts, "opens", opens);
    tell(facts, "closes", closes);
}

fn tell(facts: &mut Facts, key: &str, hour: f64) {
    facts.set_term(key, &format!("{CLOCK}{:02.0}", libm::floor(hour)));
}

/// A time of day that is told as a term.
pub(super) fn time_of(facts: &Facts, key: &str) -> Result<Hours, CannotJudge> {
    let missing = || CannotJudge::without(key);
    let hour = facts.slug(key)?.strip_prefix(CLOCK).and_then(|hour| hour.parse().ok()).ok_or_else(missing)?;
    Hours::new(hour).map_err(|_| missing())
}
