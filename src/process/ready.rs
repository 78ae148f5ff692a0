//! When the work is ready for an operation: every wait that bears on it is over.

use super::before::Now;
use super::before::recoat::day_is_full;
use super::layer::Layer;
use super::part::PartState;
use crate::quantity::MINUTES_AN_HOUR;
use crate::rules::drying::waits::{StainKind, buff_setting, coat_setting, filler_setting, stain_setting};
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{CLEARS, COATS, LAID, Operation};
use crate::rules::sheet::Setting;

/// A wait: from when on it counts, how long it is, and the value of the sheet that states it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Waiting {
    /// Hours since the job began at which it is over; infinite when the room is too cold or too warm for it to end.
    pub over: f64,
    /// The value of the sheet that states it.
    pub setting: Setting,
}

/// The longest wait that bears on an operation on a part; `None` where it can be done at once.
pub(super) fn waiting(part: &PartState, now: &Now<'_>) -> Option<Waiting> {
    let waits = [under(part, now), film(part, now)];
    waits.into_iter().flatten().max_by(|a, b| a.over.total_cmp(&b.over))
}

fn until(now: &Now<'_>, since: f64, setting: Setting, hours: f64) -> Waiting {
    Waiting { over: now.air.over(since, hours, now.sheet, now.outside).unwrap_or(f64::INFINITY), setting }
}

fn stated(now: &Now<'_>, since: f64, setting: Setting) -> Waiting {
    until(now, since, setting, now.wait(setting))
}

/// What lies uppermost: stain, filler or washcoat under whatever is laid next, filler under its wiping and sanding.
fn under(part: &PartState, now: &Now<'_>) -> Option<Waiting> {
    let top = part.top()?;
    let op = now.operation();
    let filler = filler_setting(now.job.filler);
    match top.operation {
        Operation::Fill if op == Operation::WipeFiller => {
            let hours = now.sheet.get(Setting::FillerWipeFrom) / MINUTES_AN_HOUR;
            Some(Waiting { over: top.ended + hours, setting: Setting::FillerWipeFrom })
        }
        Operation::Fill if op == Operation::SandFiller || LAID.contains(&op) => {
            Some(stated(now, top.since(), filler))
        }
        Operation::Stain if LAID.contains(&op) => {
            let kind = if top.is(Manner::OilStain) { StainKind::Oil } else { StainKind::Dye };
            Some(stated(now, top.ended, stain_setting(kind)))
        }
        Operation::Washcoat if LAID.contains(&op) => Some(stated(now, top.ended, Setting::WashcoatWait)),
        _ => None,
    }
}

/// The film under a coat, a cut, a scraper or a cloth.
fn film(part: &PartState, now: &Now<'_>) -> Option<Waiting> {
    let film = part.film()?;
    match now.operation() {
        op if COATS.contains(&op) => Some(recoat(film, part, now)),
        Operation::Scuff if CLEARS.contains(&film.operation) => {
            Some(stated(now, film.ended, Setting::ScuffWait))
        }
        Operation::Scuff | Operation::Scrape | Operation::Inspect | Operation::Unmask => {
            Some(stated(now, film.ended, coat_setting(film.operation)))
        }
        Operation::Level | Operation::Buff | Operation::Pack | Operation::Polish | Operation::FitParts => {
            Some(until(now, film.ended, buff_setting(now.job.class), now.buff_wait(part)))
        }
        Operation::Rework => Some(stated(now, film.ended, Setting::RunWait)),
        _ => None,
    }
}

/// The wait of the coat below, or a night when the day has its coats.
fn recoat(film: &Layer, part: &PartState, now: &Now<'_>) -> Waiting {
    let wait = stated(now, film.ended, coat_setting(film.operation));
    if day_is_full(part, now) { stated(now, film.ended, Setting::ScuffWait) } else { wait }
}
