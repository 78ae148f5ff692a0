//! By the clock: how many coats go on today, and when the next operation can begin.

use super::critical_path::WorkingDay;
use super::job_step::JobStep;
use super::waits::{Told, Wait, earliest};
use super::{COAT, Modelled};
use crate::quantity::{Celsius, Hours, Measure, Micrometres, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// How many more clear coats can be laid today.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CoatsToday {
    /// Coats.
    pub coats: u32,
    /// Whether the sheet's coats a day end it, not the clock.
    pub by_the_sheet: bool,
}

/// How many clear coats of one thickness can be laid from a time of day on until the day ends: each has to be finished
/// before work ends, each waits for the last, and the sheet allows only so many in one day.
///
/// # Errors
/// [`CannotJudge`] when air or film is not told.
pub fn coats_today(
    clock: Hours,
    coat: Option<Micrometres>,
    air: Option<Celsius>,
    sheet: &Sheet,
) -> Judged<Modelled<CoatsToday>> {
    let told = Told { air, film: coat, ..Told::default() };
    coat.ok_or_else(|| CannotJudge::without(COAT))?;
    let wait = earliest(Wait::ClearToClear, &told, sheet)?;
    let Modelled::Estimate(between) = wait.answer else { return Ok(wait.map(|_| Modelled::OutsideModel)) };
    let counted = count_coats(clock.get(), between.hours.get(), sheet);
    Ok(Ruling::by("drying.coats-a-day", Modelled::Estimate(counted))
        .and("drying.working-hours")
        .resting_on(&wait)
        .step("coats-today", "", Measure::count(f64::from(counted.coats))))
}

/// Counts coats from a time of day on with a given wait between them.
#[must_use]
pub fn count_coats(clock: f64, between: f64, sheet: &Sheet) -> CoatsToday {
    let (day, work) = (WorkingDay::of(sheet), JobStep::Clear.work(sheet));
    let (closes, most) = (sheet.get(Setting::DayTo), sheet.get(Setting::CoatsADay));
    let (mut coats, mut ready) = (0, clock);
    loop {
        let start = day.begin(ready, work);
        if start >= closes {
            return CoatsToday { coats, by_the_sheet: false };
        }
        if f64::from(coats) >= most {
            return CoatsToday { coats, by_the_sheet: true };
        }
        coats += 1;
        ready = day.end(start, work) + between;
    }
}

/// Hours from a time of day until the next operation can begin: the wait runs round the clock, the work is done in
/// working hours only and has to end the same day.
///
/// # Errors
/// [`CannotJudge`] when a fact that the wait needs is not told.
pub fn hours_until(
    clock: Hours,
    wait: Wait,
    next: JobStep,
    told: &Told,
    sheet: &Sheet,
) -> Judged<Modelled<Hours>> {
    let wait = earliest(wait, told, sheet)?;
    let Modelled::Estimate(rest) = wait.answer else { return Ok(wait.map(|_| Modelled::OutsideModel)) };
    let begin = WorkingDay::of(sheet).begin(clock.get() + rest.hours.get(), next.work(sheet));
    let until = Hours::saturating(begin - clock.get());
    Ok(Ruling::by("drying.working-hours", Modelled::Estimate(until)).resting_on(&wait).step(
        "until-next",
        "",
        Measure::new(until.get(), Unit::Hour, 1),
    ))
}
