//! From wet to dry film and back: a film dries to the solids of its mix.

use super::um;
use crate::quantity::{Fraction, Measure, Micrometres, Unit};
use crate::rules::mixing::{self, Thinning};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// Volume solids of the clear as supplied, from the shop sheet.
#[must_use]
pub fn clear_solids(sheet: &Sheet) -> Fraction {
    mixing::fraction(sheet.get(Setting::ClearSolids))
}

/// Dry film that a wet film leaves: wet film times the volume solids of the mix (gauge maker's formula sheet;
/// ASTM D4414 warns not to turn it round to prove solids).
#[must_use]
pub fn dry(wet: Micrometres, solids: Fraction, thinning: Thinning) -> Ruling<Micrometres> {
    let mix = mixing::thinned_solids(solids, thinning).answer;
    let dry = Micrometres::saturating(wet.get() * mix.get());
    Ruling::by("film.dry-is-wet-times-solids", dry)
        .and("mixing.solids-fall")
        .step("solids-of-mix", "", mixing::percent(mix))
        .given(&[
            ("solids-supplied", mixing::percent(solids)),
            ("thinner-per-part", Measure::new(thinning.ratio(), Unit::Ratio, 2)),
        ])
        .step("dry-film", "", Measure::new(dry.get(), Unit::Micrometre, 1))
        .given(&[("wet-film", um(wet.get())), ("solids-of-mix", mixing::percent(mix))])
}

/// Wet film that leaves a wanted dry film.
///
/// # Errors
/// [`CannotJudge`] when the material holds no solids or the film is beyond any coat.
pub fn wet_for(wanted: Micrometres, solids: Fraction, thinning: Thinning) -> Judged<Micrometres> {
    let mix = mixing::thinned_solids(solids, thinning).answer;
    let wet =
        Micrometres::new(wanted.get() / mix.get()).map_err(|_| CannotJudge::without("volume_solids"))?;
    Ok(Ruling::by("film.dry-is-wet-times-solids", wet)
        .and("mixing.solids-fall")
        .step("solids-of-mix", "", mixing::percent(mix))
        .given(&[
            ("solids-supplied", mixing::percent(solids)),
            ("thinner-per-part", Measure::new(thinning.ratio(), Unit::Ratio, 2)),
        ])
        .step("wet-film", "", um(wet.get()))
        .given(&[
            ("dry-film", Measure::new(wanted.get(), Unit::Micrometre, 1)),
            ("solids-of-mix", mixing::percent(mix)),
        ]))
}

/// Dry film of one clear coat by the shop sheet.
#[must_use]
pub fn sheet_coat(sheet: &Sheet) -> Ruling<Micrometres> {
    dry(sheet.micrometres(Setting::ClearWet), clear_solids(sheet), mixing::clear_thinning(sheet))
}
