//! Errors with pore filler.

use super::check::{Rule, Shape};
use super::error::OrderError;
use super::manner::Manner;
use super::operation::{COATS, LAID, Operation};
use super::view::View;
use crate::quantity::MINUTES_AN_HOUR;
use crate::rules::drying::waits::filler_setting;
use crate::rules::sheet::Setting;

pub(super) const RULES: &[Rule] = &[
    (OrderError::FillerOverRawStain, coloured_over_stain),
    (OrderError::FillerWipedOffTime, wiped_off_time),
    (OrderError::FillerNotDry, filler_not_dry),
    (OrderError::PoresUnfilled, pores_unfilled),
];

fn coloured_over_stain(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for fill in view.all(&[Operation::Fill]) {
        if view.before(fill.at, &[Operation::Stain]).is_some() && fill.is(Manner::Coloured)? {
            found.push(fill.at);
        }
    }
    Ok(found)
}

/// Too early or too late by the clock; the finger-ball test decides where it was made.
fn wiped_off_time(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for wipe in view.all(&[Operation::WipeFiller]) {
        let Some(fill) = view.before(wipe.at, &[Operation::Fill]) else { continue };
        if wipe.is(Manner::BallTest)? {
            continue;
        }
        let time = view.elapsed(fill.at, wipe.at);
        let early = time.short_of(view.sheet.get(Setting::FillerWipeFrom) / MINUTES_AN_HOUR)?;
        if early || time.over(view.sheet.get(Setting::FillerWipeTo) / MINUTES_AN_HOUR)? {
            found.push(wipe.at);
        }
    }
    Ok(found)
}

/// Whether a filling had not its own wait when something was laid over it.
pub(super) fn undried(
    view: &View<'_>,
    fill: usize,
    next: usize,
) -> Result<bool, crate::rules::verdict::CannotJudge> {
    let from = view.between(fill, next, &[Operation::WipeFiller]).map_or(fill, |wipe| wipe.at);
    view.elapsed(from, next).short_of(view.wait(filler_setting(view.job.filler)))
}

/// Anything laid over filler before its wait is over, and any second filling.
fn filler_not_dry(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for fill in view.all(&[Operation::Fill]) {
        let Some(next) = view.after(fill.at, LAID) else { continue };
        if next.op() == Operation::Fill || undried(view, fill.at, next.at)? {
            found.push(next.at);
        }
    }
    Ok(found)
}

/// No filler under the first coat of a level gloss, whatever the pores: the variants tell which wood needs none.
fn pores_unfilled(view: &View<'_>) -> Shape {
    let coat = view.first(COATS).filter(|_| view.lacks(Operation::Fill));
    Ok(coat.map(|coat| coat.at).into_iter().collect())
}
