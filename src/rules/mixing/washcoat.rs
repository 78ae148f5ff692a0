//! Washcoat: a sealer thinned to so few solids that it holds stain back without closing the wood.

use super::{Thinning, percent, thinned_solids, volume};
use crate::quantity::{DUST, Fraction, Measure, Millilitres, PERCENT_A_WHOLE, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Whether a thinned sealer is a washcoat.
    Washcoat {
        /// Solids over the sheet's band: it seals the wood.
        TooHeavy = "add-thinner",
        /// Within the band.
        InBand = "use-as-is",
        /// Under the band: it holds nothing back.
        TooThin = "add-sealer",
    }
}

/// Whether a thinned sealer is a washcoat by the sheet's band of solids.
///
/// A ratio alone is never judged: the same 1:1 is 10 % solids from one sealer and 17 % from another.
///
/// # Errors
/// [`CannotJudge`] when the solids are not known.
pub fn washcoat(solids: Option<Fraction>, thinning: Thinning, sheet: &Sheet) -> Judged<Washcoat> {
    let after = thinned_solids(solids.ok_or_else(|| CannotJudge::without("volume_solids"))?, thinning);
    let (from, to) = (sheet.get(Setting::WashcoatFrom), sheet.get(Setting::WashcoatTo));
    let value = after.answer.get() * PERCENT_A_WHOLE;
    let answer = if value > to + DUST {
        Washcoat::TooHeavy
    } else if value < from - DUST {
        Washcoat::TooThin
    } else {
        Washcoat::InBand
    };
    Ok(Ruling::by("mixing.washcoat-band", answer)
        .step("washcoat-least", "", Measure::new(from, Unit::Percent, 1))
        .step("washcoat-most", "", Measure::new(to, Unit::Percent, 1))
        .resting_on(&after))
}

/// Thinner that brings so much sealer down to the solids wanted; none when it is there already.
///
/// # Errors
/// [`CannotJudge`] when solids of nothing are wanted.
pub fn thin_to_solids(base: Millilitres, solids: Fraction, wanted: Fraction) -> Judged<Millilitres> {
    if wanted.get() <= 0.0 {
        return Err(CannotJudge::without("aim_solids"));
    }
    let ratio = (solids.get() / wanted.get() - 1.0).max(0.0);
    let thinner = Millilitres::saturating(base.get() * ratio);
    Ok(Ruling::by("mixing.solids-fall", thinner)
        .step("solids-supplied", "", percent(solids))
        .step("thinner-per-part", "solids / wanted − 1", Measure::new(ratio, Unit::Ratio, 2))
        .given(&[("solids", percent(solids)), ("wanted", percent(wanted))])
        .step("thinner", "base × r", volume(thinner))
        .given(&[("base", volume(base)), ("r", Measure::new(ratio, Unit::Ratio, 2))]))
}
