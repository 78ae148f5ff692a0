//! Errors at levelling, buffing, fitting and packing.

use super::check::{Rule, Shape};
use super::error::OrderError;
use super::manner::Manner;
use super::operation::{CLEARS, COATS, Operation};
use super::plan::{self, Told};
use super::view::View;
use crate::quantity::Micrometres;
use crate::rules::drying::factors::thickness_factor;
use crate::rules::drying::waits::buff_setting;
use crate::rules::film::sheet_coat;
use crate::rules::sheet::Setting;
use crate::rules::verdict::CannotJudge;

pub(super) const RULES: &[Rule] = &[
    (OrderError::LevelledTooSoon, cut_too_early),
    (OrderError::LevelledTooThin, film_too_thin),
    (OrderError::CoarseBeforeCompound, paper_too_coarse),
    (OrderError::OneWheel, shared_wheel),
    (OrderError::FittedAfterFinish, fitted_after),
    (OrderError::PackedTooSoon, packed_early),
    (OrderError::LevelledThroughCoats, through_coats),
    (OrderError::OpenHolesWet, open_holes),
];

/// Levelled or buffed before the class's wait, flattened with coats to come, or a run mended before its wait.
fn cut_too_early(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for cut in view.all(&[Operation::Level, Operation::Buff, Operation::Rework]) {
        let Some(coat) = view.before(cut.at, COATS) else { continue };
        let early = if cut.op() == Operation::Rework {
            view.elapsed(coat.at, cut.at).short_of(view.wait(Setting::RunWait))?
        } else {
            !is_hard(view, coat.at, cut.at)?
        };
        let unfinished = cut.op() == Operation::Level && view.after(cut.at, CLEARS).is_some();
        if early || unfinished {
            found.push(cut.at);
        }
    }
    Ok(found)
}

/// Whether the last coat had the class's wait before a step. Of coats that nobody counted the wait may be any.
pub(super) fn is_hard(view: &View<'_>, coat: usize, at: usize) -> Result<bool, CannotJudge> {
    let passed = view.elapsed(coat, at);
    if passed.short_of(buff_wait(view, at))? {
        return Ok(false);
    }
    if passed.short_of(f64::INFINITY)? {
        counted(view, at)?;
    }
    Ok(true)
}

/// Whether the clear coats before a step are told.
fn counted(view: &View<'_>, at: usize) -> Result<(), CannotJudge> {
    let untold = view.all(CLEARS).any(|clear| clear.at < at && clear.step.coats == Told::Untold);
    if untold { Err(CannotJudge::without(plan::COATS)) } else { Ok(()) }
}

/// The class's wait before levelling, buffing or packing; its floor grows with the square of the clear where the coats
/// are counted (Crank 1975, p. 48).
fn buff_wait(view: &View<'_>, at: usize) -> f64 {
    let held = view.sheet.held(buff_setting(view.job.class));
    let reference = view.sheet.micrometres(Setting::BuildReference);
    let film = clear_film(view, at).map(Micrometres::saturating);
    let thick = film.map_or(1.0, |film| thickness_factor(film, reference).answer);
    held.value.max(held.floor * thick)
}

/// Clear film over the colour before a step, less what earlier levelling took; `None` where the coats are not counted.
fn clear_film(view: &View<'_>, at: usize) -> Option<f64> {
    let coat = sheet_coat(view.sheet).answer.get();
    let mut film = 0.0;
    for step in
        view.all(&[Operation::Protect, Operation::Clear, Operation::Level]).filter(|step| step.at < at)
    {
        film += match (step.op(), step.step.coats) {
            (Operation::Level, _) => -view.sheet.get(Setting::LevelTakeOff).min(film),
            (Operation::Protect, Told::Kept) => coat,
            (_, Told::Is(coats)) => f64::from(coats) * coat,
            _ => return None,
        };
    }
    Some(film)
}

/// Whether there is the clear that levelling takes off and the sheet keeps in reserve. Coats kept as ordered are enough.
pub(super) fn is_thick_enough(view: &View<'_>, level: usize) -> Result<bool, CannotJudge> {
    counted(view, level)?;
    let need = view.sheet.get(Setting::LevelTakeOff) + view.sheet.get(Setting::FilmReserve);
    Ok(clear_film(view, level).is_none_or(|film| film >= need))
}

fn film_too_thin(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    let unlisted = view.taken(Operation::Clear);
    for level in view.all(&[Operation::Level]).filter(|_| !unlisted) {
        if !is_thick_enough(view, level.at)? {
            found.push(level.at);
        }
    }
    Ok(found)
}

/// Compound after a paper coarser than any published schedule ends with (the floor of the sheet's value), or after a
/// ladder with a gap.
fn paper_too_coarse(view: &View<'_>) -> Shape {
    let asked = view.sheet.held(Setting::CompoundGrit);
    let last = asked.value.min(asked.floor);
    let mut found = Vec::new();
    for buff in view.all(&[Operation::Buff]) {
        let Some(level) = view.before(buff.at, &[Operation::Level]) else { continue };
        let coarse = match level.step.grit {
            Told::Is(grit) => f64::from(grit) < last,
            Told::Kept => false,
            Told::Untold => return Err(CannotJudge::without("level_grit")),
        };
        if coarse || level.is(Manner::GritSkipped)? {
            found.push(buff.at);
        }
    }
    Ok(found)
}

fn shared_wheel(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for buff in view.all(&[Operation::Buff]) {
        if buff.is(Manner::SharedWheel)? {
            found.push(buff.at);
        }
    }
    Ok(found)
}

fn fitted_after(view: &View<'_>) -> Shape {
    let fits = view.all(&[Operation::FitParts]);
    Ok(fits.filter(|fit| view.before(fit.at, COATS).is_some()).map(|fit| fit.at).collect())
}

/// Packed before the film has had the wait that levelling asks for.
fn packed_early(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for pack in view.all(&[Operation::Pack]) {
        if let Some(coat) = view.before(pack.at, COATS)
            && !is_hard(view, coat.at, pack.at)?
        {
            found.push(pack.at);
        }
    }
    Ok(found)
}

fn through_coats(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for level in view.all(&[Operation::Level]) {
        if !view.job.melts && level.is(Manner::ThroughCoat)? {
            found.push(level.at);
        }
    }
    Ok(found)
}

fn open_holes(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for level in view.all(&[Operation::Level]) {
        if level.is(Manner::WithWater)? && view.lacks_before(level.at, Operation::PlugHoles) {
            found.push(level.at);
        }
    }
    Ok(found)
}
