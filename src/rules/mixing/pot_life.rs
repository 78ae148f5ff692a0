//! Pot life: how long a mix may be used, counted from mixing.

use crate::quantity::{Celsius, Hours, Measure, Unit};
use crate::rules::drying::factors::uncapped;
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

/// Pot life in a room warmer than the one that the waits of the sheet are stated for: it falls by the sheet's factor for
/// each 10 degrees, a rule of thumb. A colder room is no reason to use a mix for longer.
#[must_use]
pub fn pot_life_in(stated: Hours, air: Celsius, sheet: &Sheet) -> Ruling<Hours> {
    let factor = uncapped(air, sheet).min(1.0);
    let life = Hours::saturating(stated.get() * factor);
    Ruling::by("mixing.warmth-shortens-pot-life", life)
        .step("pot-life-stated", "", Measure::new(stated.get(), Unit::Hour, 1))
        .step("pot-life-factor", "min(1, F^((T0 − T) / 10))", Measure::new(factor, Unit::Ratio, 3))
        .given(&[
            ("F", Measure::new(sheet.get(Setting::ColdFactor), Unit::Ratio, 2)),
            ("T0", Measure::new(sheet.get(Setting::WaitReference), Unit::Celsius, 1)),
            ("T", Measure::new(air.get(), Unit::Celsius, 1)),
        ])
        .step("pot-life", "pot life × factor", Measure::new(life.get(), Unit::Hour, 1))
        .given(&[
            ("pot life", Measure::new(stated.get(), Unit::Hour, 1)),
            ("factor", Measure::new(factor, Unit::Ratio, 3)),
        ])
}
