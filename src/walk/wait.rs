//! Waiting: for some hours, until the shop opens, until a test of the film says so.

use super::clock::{day, midnight};
use super::decision::{Decision, Wait};
use super::impossible::{Impossible, Why};
use super::start::Start;
use super::state::State;
use crate::process::act::Act;
use crate::quantity::Hours;
use crate::rules::drying::waits::DryTest;
use crate::rules::sequence::operation::Operation;

/// Longest wait in one go: sixty days. Our own limit.
pub const WAIT_MOST: Hours = Hours::saturating(1_440.0);
/// The day by which the clock of a walk stops: hours are told for a year.
pub(super) const LAST_DAY: u32 = 360;
/// Shares of the wait before levelling after which a film no longer smells and no longer takes a dent; powder comes with
/// the whole of it. Our own estimate, common practice, no source: only all three say that it is hard.
const SMELLS_UNTIL: f64 = 0.5;
const DENTS_UNTIL: f64 = 0.75;

/// When a wait is over, in hours after the first midnight.
pub(super) fn until(
    state: &State,
    start: &Start,
    what: &Decision,
    wait: Wait,
) -> Result<f64, Box<Impossible>> {
    let clock = state.clock(start);
    let until = match wait {
        Wait::Hours(hours) if hours.get() <= 0.0 || hours > WAIT_MOST => {
            return Err(Impossible::new(what, Why::WaitSpan).within(0.0, WAIT_MOST.get()));
        }
        Wait::Hours(hours) => clock + hours.get(),
        Wait::Morning => midnight(day(clock) + 1) + start.day.opens().get(),
        Wait::Until(test) => passes(state, start, what, test)?,
    };
    if day(until) > LAST_DAY { Err(Impossible::new(what, Why::YearOver)) } else { Ok(until) }
}

/// When a test of the last coats first passes, tried while the shop is open.
fn passes(state: &State, start: &Start, what: &Decision, test: DryTest) -> Result<f64, Box<Impossible>> {
    let run = &state.run;
    let ages = (0..start.parts()).filter_map(|part| run.lying(part)?.film().map(|film| film.age.get()));
    let Some(age) = ages.reduce(f64::min) else { return Err(Impossible::new(what, Why::NothingToTest)) };
    let over = run.waiting(&Act::of(Operation::Level)).map_or(run.now().get(), |waiting| waiting.over);
    let laid = run.now().get() - age;
    let share = match test {
        DryTest::Smell => SMELLS_UNTIL,
        DryTest::Thumbnail => DENTS_UNTIL,
        DryTest::Powder => 1.0,
    };
    let ready = laid + (over - laid) * share;
    if !ready.is_finite() {
        return Err(Impossible::new(what, Why::NeverReady));
    }
    let at = (ready + start.day.opens().get()).max(state.clock(start));
    Ok(start.day.begin(at, Hours::saturating(0.0)))
}
