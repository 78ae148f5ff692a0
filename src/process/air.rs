//! The air of the room over the days of a job.

use crate::quantity::Hours;
use crate::rules::drying::Modelled;
use crate::rules::drying::factors::cold_factor;
use crate::rules::sequence::plan::Climate;
use crate::rules::sheet::Sheet;
use serde::{Deserialize, Serialize};

/// A reading, and from when on it holds.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Reading {
    /// Hours since the job began.
    pub from: Hours,
    /// Air, humidity and surface of the work.
    pub climate: Climate,
}

/// How an hour counts in which the sheet gives no estimate, the room being too cold or too warm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outside {
    /// Not at all: what is over then is over for certain.
    Nothing,
    /// As a stated hour, and no more: what is short then is short for certain.
    AsStated,
}

/// Readings in the order of time; each holds until the next. Without any, the room is kept as the sheet asks.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct AirLog {
    readings: Vec<Reading>,
}

impl AirLog {
    /// Sorts readings by time.
    #[must_use]
    pub fn new(readings: Vec<Reading>) -> Self {
        let readings = crate::rules::sorted::sorted(readings, |a, b| a.from.get().total_cmp(&b.from.get()));
        Self { readings }
    }

    /// The reading that holds at a moment; the first one holds before it too.
    #[must_use]
    pub fn at(&self, moment: f64) -> Option<Climate> {
        let held = self.readings.iter().rev().find(|reading| reading.from.get() <= moment);
        held.or_else(|| self.readings.first()).map(|reading| reading.climate)
    }

    /// When a wait that began at a moment is over: each hour counts by the cold of the room. `None` when it never is.
    #[must_use]
    pub fn over(&self, from: f64, wait: f64, sheet: &Sheet, outside: Outside) -> Option<f64> {
        let (mut moment, mut left) = (from, wait);
        for ends in self.changes(from).chain([f64::INFINITY]) {
            let rate = self.rate(moment, sheet, outside);
            let needed = if rate > 0.0 { left / rate } else { f64::INFINITY };
            if left <= 0.0 || moment + needed <= ends {
                let over = if left <= 0.0 { moment } else { moment + needed };
                return over.is_finite().then_some(over);
            }
            left -= (ends - moment) * rate;
            moment = ends;
        }
        None
    }

    /// When the reading changes next after a moment.
    #[must_use]
    pub fn next_change(&self, moment: f64) -> Option<f64> {
        self.changes(moment).next()
    }

    /// Whether another reading holds at some time after a moment.
    #[must_use]
    pub fn changes_after(&self, moment: f64) -> bool {
        self.changes(moment).next().is_some()
    }

    /// The same air up to a moment, and from then on that of its readings in which a wait takes longest.
    #[must_use]
    pub fn then_slowest(&self, moment: f64, sheet: &Sheet) -> Self {
        self.then(moment, |a, b| factor(*a, sheet) > factor(*b, sheet))
    }

    /// The same air up to a moment, and from then on that of its readings in which a wait takes least.
    #[must_use]
    pub fn then_fastest(&self, moment: f64, sheet: &Sheet) -> Self {
        self.then(moment, |a, b| factor(*a, sheet) < factor(*b, sheet))
    }

    /// The same air up to a moment, and from then on the one that is picked of all that could follow.
    fn then(&self, moment: f64, sooner: impl Fn(&Climate, &Climate) -> bool) -> Self {
        let Some(from) = Hours::new(moment).ok().filter(|_| self.changes_after(moment)) else {
            return self.clone();
        };
        let coming =
            self.readings.iter().filter(|reading| reading.from > from).map(|reading| reading.climate);
        let candidates = self.at(moment).into_iter().chain(coming);
        let picked = candidates.reduce(|best, one| if sooner(&one, &best) { one } else { best });
        let mut readings: Vec<Reading> =
            self.readings.iter().filter(|one| one.from <= from).copied().collect();
        readings.extend(picked.map(|climate| Reading { from, climate }));
        Self { readings }
    }

    /// Whether some reading lies where the sheet gives no estimate.
    #[must_use]
    pub fn leaves_model(&self, sheet: &Sheet) -> bool {
        let unknown = |reading: &Reading| factor(reading.climate, sheet).is_none();
        self.readings.iter().any(unknown)
    }

    /// Moments after `from` at which another reading begins.
    fn changes(&self, from: f64) -> impl Iterator<Item = f64> {
        self.readings.iter().map(|reading| reading.from.get()).filter(move |at| *at > from)
    }

    /// Stated hours that pass in one hour of the room.
    fn rate(&self, moment: f64, sheet: &Sheet, outside: Outside) -> f64 {
        let Some(climate) = self.at(moment) else { return 1.0 };
        match (factor(climate, sheet), outside) {
            (Some(factor), _) => 1.0 / factor,
            (None, Outside::AsStated) => 1.0,
            (None, Outside::Nothing) => 0.0,
        }
    }

    /// Stated hours that passed between two moments.
    #[must_use]
    pub fn passed(&self, from: f64, to: f64, sheet: &Sheet, outside: Outside) -> f64 {
        let (mut moment, mut passed) = (from, 0.0);
        for ends in self.changes(from).chain([f64::INFINITY]) {
            let end = ends.min(to);
            passed += (end - moment).max(0.0) * self.rate(moment, sheet, outside);
            moment = moment.max(end);
        }
        passed
    }
}

/// Cold factor of a room, where the sheet gives one.
fn factor(climate: Climate, sheet: &Sheet) -> Option<f64> {
    match cold_factor(climate.air, sheet).answer {
        Modelled::Estimate(factor) => Some(factor),
        Modelled::OutsideModel => None,
    }
}
