//! Pot life: how long a mix may be used, counted from mixing.

use crate::quantity::{Hours, Measure, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What a mix may still be used for.
    MixUse {
        /// Use it, strained.
        Use = "use-strained",
        /// Past its pot life: no more coats from it.
        Discard = "no-more-coats",
    }
}

terms! {
    /// Kind of material, told apart by whether it sets in the pot.
    PotKind {
        /// Dries by losing solvent only.
        OnePart = "one-part",
        /// Cures from mixing on.
        TwoPart = "two-part-mix",
    }
}

/// Whether a mix may still be used. The pot life is the shorter of the material's own and the shop sheet's.
///
/// # Errors
/// [`CannotJudge`] when a two-part mix has no known pot life or its age is not known.
pub fn mix_use(kind: PotKind, age: Option<Hours>, material: Option<Hours>, sheet: &Sheet) -> Judged<MixUse> {
    if kind == PotKind::OnePart {
        return Ok(Ruling::by("mixing.one-part-keeps", MixUse::Use).and("mixing.strain-last"));
    }
    let shop = sheet.hours(Setting::PotLife);
    let material = material.ok_or_else(|| CannotJudge::without("pot_life_h"))?;
    let life = if shop.get() > 0.0 && shop < material { shop } else { material };
    let age = age.ok_or_else(|| CannotJudge::without("mix_age_h"))?;
    let answer = if age > life { MixUse::Discard } else { MixUse::Use };
    Ok(Ruling::by("mixing.pot-life", answer).step("pot-life", "", Measure::new(life.get(), Unit::Hour, 1)))
}
