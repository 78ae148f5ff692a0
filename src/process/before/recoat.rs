//! A coat over a coat: its wait, its day, its window, its key.

use super::{Made, Now};
use crate::process::defect::earlier;
use crate::process::part::{Day, PartState};
use crate::rules::drying::waits::coat_setting;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{COATS, LAID, Operation};
use crate::rules::sheet::Setting;

/// Two coats, one over the other: hours between them, the wait that the lower one asks, and how it was left.
struct Gap {
    /// Hours on the clock.
    hours: f64,
    /// Hours of the stated kind, which a cold room stretches.
    dried: f64,
    wait: f64,
    mist: bool,
    scuffed: bool,
}

pub(super) fn check(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let op = now.operation();
    let washcoat = part.top().filter(|top| top.operation == Operation::Washcoat && LAID.contains(&op));
    let mut early =
        washcoat.is_some_and(|washcoat| now.too_soon(washcoat.ended, now.wait(Setting::WashcoatWait)));
    if COATS.contains(&op) {
        let gaps = gaps(part, now);
        early = early || gaps.iter().any(|gap| !gap.mist && earlier(gap.dried, gap.wait));
        let crowded = now.job.melts && shares_a_day(part, now) && !is_good_day(day(part, now), now);
        if !now.job.melts {
            if gaps.iter().any(|gap| in_closed_window(gap, now)) {
                made.push(now.error(OrderError::RecoatWindowClosed));
            }
            if gaps.iter().any(|gap| !gap.scuffed && past_window(gap, now)) {
                made.push(now.error(OrderError::HardFilmUnscuffed));
            }
        }
        early = early || crowded;
    }
    if early {
        made.push(now.error(OrderError::RecoatTooSoon));
    }
}

/// The gap under the operation, and the one between its own coats.
fn gaps(part: &PartState, now: &Now<'_>) -> Vec<Gap> {
    let under = part.film().map(|below| Gap {
        hours: now.begun - below.ended,
        dried: now.passed(below.ended, now.begun),
        wait: now.wait(coat_setting(below.operation)),
        mist: below.is(Manner::Mist),
        scuffed: below.abraded,
    });
    let within = now.between.filter(|_| now.coats > 1).map(|hours| Gap {
        hours,
        dried: now.passed(now.begun, now.begun + hours),
        wait: now.wait(coat_setting(now.operation())),
        mist: now.is(Manner::Mist),
        scuffed: now.is(Manner::ScuffedBetween),
    });
    under.into_iter().chain(within).collect()
}

/// Whether the recoat window has closed and not opened again.
fn in_closed_window(gap: &Gap, now: &Now<'_>) -> bool {
    let (closes, opens) = (now.sheet.get(Setting::RecoatCloses), now.sheet.get(Setting::RecoatOpensAgain));
    let closes_at_all = closes > 0.0 && opens > closes;
    closes_at_all && earlier(closes, gap.hours) && earlier(gap.hours, opens)
}

/// Whether the coat below is so hard that it wants a scuff.
fn past_window(gap: &Gap, now: &Now<'_>) -> bool {
    let closes = now.sheet.get(Setting::RecoatCloses);
    closes > 0.0 && earlier(closes, gap.hours)
}

/// Whether the first coat of the operation lies closer than a night to the one below.
fn joins(part: &PartState, now: &Now<'_>) -> bool {
    part.film().is_some_and(|below| earlier(now.begun - below.ended, now.wait(Setting::ScuffWait)))
}

/// Whether two coats lie closer than a night.
fn shares_a_day(part: &PartState, now: &Now<'_>) -> bool {
    joins(part, now) || (now.coats > 1 && !spreads(now))
}

/// Thin coats, and no more of clear than the sheet allows for a day.
fn is_good_day(day: Day, now: &Now<'_>) -> bool {
    !day.heavy && f64::from(day.clears) <= now.sheet.get(Setting::CoatsADay)
}

/// The day as it is when the first day's coats of the operation are on.
fn day(part: &PartState, now: &Now<'_>) -> Day {
    let before = if joins(part, now) { part.day } else { Day::default() };
    let together = if spreads(now) { 1 } else { now.coats };
    let clears = if now.act.is_clear() { before.clears.saturating_add(together) } else { before.clears };
    Day { clears, heavy: before.heavy || now.is(Manner::Heavy) }
}

/// Whether every coat of the operation has a night before the next.
fn spreads(now: &Now<'_>) -> bool {
    now.coats > 1 && now.between.is_none_or(|hours| !earlier(hours, now.wait(Setting::ScuffWait)))
}

/// The day of the last coat of the operation.
pub(in crate::process) fn day_after(part: &PartState, now: &Now<'_>) -> Day {
    if spreads(now) {
        Day { clears: u32::from(now.act.is_clear()), heavy: now.is(Manner::Heavy) }
    } else {
        day(part, now)
    }
}

/// Whether the day of the last coat takes no other: it had a heavy one, or as many of clear as the sheet allows.
pub(in crate::process) fn day_is_full(part: &PartState, now: &Now<'_>) -> bool {
    let clears = part.day.clears.saturating_add(u32::from(now.act.is_clear()));
    now.job.melts && !is_good_day(Day { clears, ..part.day }, now)
}
