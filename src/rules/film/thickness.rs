//! Thicknesses of the shop sheet, from thin to thick.

use super::sheet_coat;
use crate::quantity::Micrometres;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

/// Thicknesses that a finisher keeps apart; each is read from, or computed with, the shop sheet.
#[must_use]
pub fn thickness(slug: &str, sheet: &Sheet) -> Option<Micrometres> {
    Some(match Thickness::from_slug(slug)? {
        Thickness::DryCoat => sheet_coat(sheet).answer,
        Thickness::TakeOff => sheet.micrometres(Setting::LevelTakeOff),
        Thickness::Reserve => sheet.micrometres(Setting::FilmReserve),
        Thickness::ColourWet => sheet.micrometres(Setting::ColourWet),
        Thickness::ClearWet => sheet.micrometres(Setting::ClearWet),
        Thickness::Warn => sheet.micrometres(Setting::WetWarn),
        Thickness::Sag => sheet.micrometres(Setting::WetSag),
    })
}

terms! {
    /// Thicknesses of the shop sheet that belong in one order.
    Thickness {
        /// Dry film of one clear coat.
        DryCoat = "thick-dry-coat",
        /// What levelling and buffing take.
        TakeOff = "thick-take-off",
        /// What must stay over the colour.
        Reserve = "thick-reserve",
        /// A wet pass of colour.
        ColourWet = "thick-colour-wet",
        /// A wet coat of clear.
        ClearWet = "thick-clear-wet",
        /// A wet film near running.
        Warn = "thick-warn",
        /// A wet film that sags.
        Sag = "thick-sag",
    }
}

/// Whether thicknesses are listed from the thinnest to the thickest; equal ones may stand either way.
///
/// # Errors
/// [`CannotJudge`] when one of them is no thickness of the sheet.
pub fn rises(order: &[String], sheet: &Sheet) -> Judged<bool> {
    let mut last = Micrometres::saturating(Micrometres::MIN);
    let mut rising = true;
    let mut ruling = Ruling::by("film.wet-films-by-sheet", true).and("film.dry-is-wet-times-solids");
    for slug in order {
        let next = thickness(slug, sheet).ok_or_else(|| CannotJudge::without("thickness"))?;
        rising &= next >= last;
        last = next;
    }
    ruling.answer = rising;
    Ok(ruling)
}
