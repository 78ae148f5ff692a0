//! Recoat windows: too soon, open, closed, open again.

use super::Modelled;
use super::factors::cold_factor;
use super::waits::{Told, Wait, earliest};
use crate::quantity::{Celsius, Hours, Measure, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{Judged, Ruling};
use crate::terms;

terms! {
    /// Where a coat stands in its recoat window.
    RecoatVerdict {
        /// The wait is not over.
        TooSoon = "too-soon",
        /// Coat now.
        Open = "open",
        /// Too late, and not yet late enough: scuff first or wait until it opens again.
        Closed = "closed",
        /// Open again.
        OpenAgain = "open-again",
        /// The room is outside the temperatures of the shop sheet: change the room.
        OutsideModel = "outside-model",
    }
}

/// Whether a clear coat of reference thickness may be coated over so many hours after it was laid.
///
/// A window may close in the middle and open again (a published example takes a recoat up to 2 h and again after 8 h);
/// the sheet gives both ends, 0 for never. Cold puts off both openings. It does not put off the closing: the stated
/// hour is taken, which is the safer side.
///
/// # Errors
/// [`CannotJudge`](crate::rules::verdict::CannotJudge) as [`earliest`] has it; everything that it needs is told here.
pub fn window(since: Hours, air: Celsius, sheet: &Sheet) -> Judged<RecoatVerdict> {
    let cold = cold_factor(air, sheet);
    let Modelled::Estimate(q) = cold.answer else {
        return Ok(cold.map(|_| RecoatVerdict::OutsideModel));
    };
    let told =
        Told { air: Some(air), film: Some(sheet.micrometres(Setting::CoatReference)), ..Told::default() };
    let wait = earliest(Wait::ClearToClear, &told, sheet)?;
    let opens = wait.answer.estimate().map_or(0.0, |wait| wait.hours.get());
    let closes = sheet.get(Setting::RecoatCloses);
    let opens_again = sheet.get(Setting::RecoatOpensAgain) * q.max(1.0);
    let may_close = closes > 0.0;
    let verdict = if may_close && opens_again > closes && since.get() >= opens_again {
        RecoatVerdict::OpenAgain
    } else if may_close && since.get() > closes {
        RecoatVerdict::Closed
    } else if since.get() < opens {
        RecoatVerdict::TooSoon
    } else {
        RecoatVerdict::Open
    };
    let hours = |value: f64| Measure::new(value, Unit::Hour, 1);
    let mut ruling = Ruling::by("drying.recoat-window", verdict).resting_on(&wait);
    if may_close {
        ruling = ruling.step("recoat-closes", "", hours(closes));
        if opens_again > closes {
            ruling = ruling.step("recoat-opens-again", "", hours(opens_again));
        }
    }
    Ok(ruling)
}
