//! Errors with sealer and with one coat over another.

use super::check::{Rule, Shape};
use super::error::OrderError;
use super::manner::Manner;
use super::operation::{LAID, Operation};
use super::plan::{self, Told};
use super::variant_holds::thin_day;
use super::view::View;
use crate::rules::drying::waits::coat_setting;
use crate::rules::sheet::Setting;
use crate::rules::verdict::CannotJudge;

pub(super) const RULES: &[Rule] = &[
    (OrderError::SealerTooThick, thick_sealer),
    (OrderError::RecoatTooSoon, recoated_early),
    (OrderError::RecoatWindowClosed, window_closed),
    (OrderError::HardFilmUnscuffed, no_scuff),
];

/// Stearated sealer goes on thin, and no oftener than the sheet allows.
fn thick_sealer(view: &View<'_>) -> Shape {
    let (mut found, mut coats, mut counted) = (Vec::new(), 0, true);
    let most = view.sheet.get(Setting::SealerCoats);
    for seal in view.all(&[Operation::Seal]) {
        if !seal.is(Manner::Stearated)? {
            continue;
        }
        coats += match seal.step.coats {
            Told::Is(coats) => coats,
            Told::Kept | Told::Untold => 1,
        };
        counted = counted && seal.step.coats != Told::Untold;
        if f64::from(coats) > most || seal.is(Manner::Heavy)? {
            found.push(seal.at);
        } else if !counted {
            return Err(CannotJudge::without(plan::COATS));
        }
    }
    Ok(found)
}

/// A coat before the one below had its wait, or one of a day's coats; a mist coat is there to be coated at once.
fn recoated_early(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for gap in view.gaps()? {
        let early =
            gap.time.short_of(view.wait(coat_setting(gap.below.op())))? && !gap.below.is(Manner::Mist)?;
        if early || (view.job.melts && !thin_day(view, gap.above.at)?) {
            found.push(gap.above.at);
        }
    }
    for washcoat in view.all(&[Operation::Washcoat]) {
        let Some(next) = view.after(washcoat.at, LAID) else { continue };
        if view.elapsed(washcoat.at, next.at).short_of(view.wait(Setting::WashcoatWait))? {
            found.push(next.at);
        }
    }
    Ok(found)
}

fn window_closed(view: &View<'_>) -> Shape {
    let closes = view.sheet.get(Setting::RecoatCloses);
    let opens = view.sheet.get(Setting::RecoatOpensAgain);
    let mut found = Vec::new();
    if view.job.melts || closes <= 0.0 || opens <= closes {
        return Ok(found);
    }
    for gap in view.gaps()? {
        if gap.time.over(closes)? && gap.time.short_of(opens)? {
            found.push(gap.above.at);
        }
    }
    Ok(found)
}

/// A coat that cannot melt into the one below, with no scuff between: the open window is the variant.
fn no_scuff(view: &View<'_>) -> Shape {
    if view.job.melts {
        return Ok(Vec::new());
    }
    let unscuffed = view.gaps()?.into_iter().filter(|gap| !gap.scuffed);
    Ok(unscuffed.map(|gap| gap.above.at).collect())
}
