//! Coats: the build that they make, how many a build takes, how many go on today.

use super::um;
use crate::quantity::{DUST, Hours, Measure, Micrometres, Unit};
use crate::rules::drying::by_the_clock::count_coats;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// More coats than this are a mistake of reading, not a schedule.
const MOST_COATS: u32 = 1_000;

/// Dry build of so many equal coats.
#[must_use]
pub fn build(coats: u32, coat: Micrometres) -> Ruling<Micrometres> {
    let build = Micrometres::saturating(f64::from(coats) * coat.get());
    Ruling::by("film.build-is-coats-times-dry", build).step("build", "", um(build.get())).given(&[
        ("coats", Measure::count(f64::from(coats))),
        ("dry-film", Measure::new(coat.get(), Unit::Micrometre, 1)),
    ])
}

/// Coats that a dry build takes: rounded up, since a part of a coat is a coat.
///
/// # Errors
/// [`CannotJudge`] when a coat leaves no film.
pub fn coats_for(target: Micrometres, coat: Micrometres) -> Judged<u32> {
    let exact = target.get() / coat.get();
    let whole = (0..=MOST_COATS).find(|coats| f64::from(*coats) >= exact - DUST);
    let whole = whole.ok_or_else(|| CannotJudge::without("wet_um"))?;
    Ok(Ruling::by("film.coats-by-build", whole)
        .and("film.build-is-coats-times-dry")
        .step("coats-exact", "", Measure::new(exact, Unit::Count, 2))
        .given(&[("build", um(target.get())), ("dry-film", Measure::new(coat.get(), Unit::Micrometre, 1))])
        .step("coats-rounded-up", "", Measure::count(f64::from(whole))))
}

/// Clear coats that a job may still get today: what the order still wants, what the sheet allows a day, and what fits
/// between now and closing at the sheet's wait, the first going on now.
#[must_use]
pub fn coats_today(ordered: u32, laid: u32, laid_today: u32, now: Hours, sheet: &Sheet) -> Ruling<u32> {
    let wanted = ordered.saturating_sub(laid);
    let most = sheet.get(Setting::CoatsADay);
    let allowed =
        (0..=MOST_COATS).rfind(|coats| f64::from(laid_today.saturating_add(*coats)) <= most).unwrap_or(0);
    let fit = count_coats(now.get(), sheet.get(Setting::ClearWait), sheet).coats;
    let coats = wanted.min(allowed).min(fit);
    let rule = if coats >= wanted {
        "film.coats-ordered"
    } else if allowed <= fit {
        "film.coats-a-day"
    } else {
        "film.coats-fit-the-day"
    };
    let count = |coats: u32| Measure::count(f64::from(coats));
    Ruling::by(rule, coats)
        .step("coats-ordered-left", "", count(wanted))
        .step("coats-allowed-left", "", count(allowed))
        .step("coats-that-fit", "", count(fit))
}
