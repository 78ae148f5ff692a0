//! Mixing: what a ratio and a percentage mean, solids after thinning, the washcoat band, retarder, pot life, and the
//! order of getting a mix into the gun.
//!
//! "Percent thinned" is percent of the unthinned material; retarder is percent of the whole mix. Volumes are taken to
//! add up.

use super::sheet::{Setting, Sheet};
use super::term::Term;
use super::verdict::{CannotJudge, Judged, Ruling};
use crate::quantity::{DUST, Fraction, Hours, Measure, Millilitres, OutOfRange, Unit, within};
use crate::terms;
use serde::Serialize;

/// Parts of a whole in a hundred.
const HUNDRED: f64 = 100.0;

/// How far a material is thinned: volume of thinner per volume of unthinned material, 0 to [`Thinning::MAX`].
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize)]
pub struct Thinning(f64);

impl Thinning {
    /// Greatest ratio allowed: one part of material in a hundred of thinner.
    pub const MAX: f64 = 100.0;
    /// As supplied.
    pub const NONE: Self = Self(0.0);

    /// From volume of thinner per volume of material.
    ///
    /// # Errors
    /// [`OutOfRange`] outside 0 to [`Thinning::MAX`].
    pub fn of_ratio(ratio: f64) -> Result<Self, OutOfRange> {
        within("thinner for one part", "parts", 0.0, Self::MAX, ratio).map(Self)
    }

    /// From parts by volume, material to thinner: 4 and 1 for "4:1".
    ///
    /// # Errors
    /// [`OutOfRange`] when there is no material or the ratio is outside 0 to [`Thinning::MAX`].
    pub fn of_parts(material: f64, thinner: f64) -> Result<Self, OutOfRange> {
        Self::of_ratio(thinner / material)
    }

    /// From "percent thinned": percent of the unthinned volume.
    ///
    /// # Errors
    /// [`OutOfRange`] when the ratio is outside 0 to [`Thinning::MAX`].
    pub fn of_percent(percent: f64) -> Result<Self, OutOfRange> {
        Self::of_ratio(percent / HUNDRED)
    }

    /// From the thinner's share of the whole mix: r = p / (1 − p).
    ///
    /// # Errors
    /// [`OutOfRange`] when the ratio is outside 0 to [`Thinning::MAX`].
    pub fn of_share(share: Fraction) -> Result<Self, OutOfRange> {
        Self::of_ratio(share.get() / (1.0 - share.get()))
    }

    /// Thinner for one part of material.
    #[must_use]
    pub const fn ratio(self) -> f64 {
        self.0
    }

    /// Percent of the unthinned volume.
    #[must_use]
    pub fn percent(self) -> f64 {
        self.0 * HUNDRED
    }

    /// Share of thinner in the whole mix, 0 to 1.
    #[must_use]
    pub fn share(self) -> Fraction {
        Fraction::saturating(self.0 / (1.0 + self.0))
    }
}

/// A volume as shown.
#[must_use]
pub const fn volume(volume: Millilitres) -> Measure {
    Measure::new(volume.get(), Unit::Millilitre, 0)
}

/// A share as shown, in per cent.
#[must_use]
pub fn percent(share: Fraction) -> Measure {
    Measure::new(share.get() * HUNDRED, Unit::Percent, 1)
}

/// A fraction from per cent, held within 0 to 100.
#[must_use]
pub fn fraction(percent: f64) -> Fraction {
    Fraction::saturating(percent / HUNDRED)
}

/// Thinner that so much unthinned material takes.
#[must_use]
pub fn thinner_for(base: Millilitres, thinning: Thinning) -> Ruling<Millilitres> {
    let thinner = Millilitres::saturating(base.get() * thinning.ratio());
    Ruling::by("mixing.percent-of-unthinned", thinner)
        .step("percent-thinned", "", Measure::new(thinning.percent(), Unit::Percent, 0))
        .step("thinner", "base × r", volume(thinner))
}

/// Material and thinner of a batch that is to come to so much in all.
#[must_use]
pub fn batch(whole: Millilitres, thinning: Thinning) -> Ruling<(Millilitres, Millilitres)> {
    let base = Millilitres::saturating(whole.get() / (1.0 + thinning.ratio()));
    let thinner = Millilitres::saturating(whole.get() - base.get());
    Ruling::by("mixing.batch", (base, thinner))
        .and("mixing.percent-of-unthinned")
        .step("percent-thinned", "", Measure::new(thinning.percent(), Unit::Percent, 0))
        .step("material", "batch / (1 + r)", volume(base))
        .step("thinner", "batch − material", volume(thinner))
}

/// Volumes of a mix given in parts, with so much of the first part: 4:1:1 and the base.
///
/// # Errors
/// [`OutOfRange`] when the first part is not above 0 or a volume leaves its range.
pub fn by_parts(base: Millilitres, parts: &[f64]) -> Result<Vec<Millilitres>, OutOfRange> {
    let first = parts.first().copied().unwrap_or(0.0);
    parts.iter().map(|part| Millilitres::new(base.get() * part / first)).collect()
}

/// Thinning by the shop sheet for its clear.
#[must_use]
pub fn clear_thinning(sheet: &Sheet) -> Thinning {
    Thinning(sheet.get(Setting::ClearThinner).clamp(0.0, HUNDRED * Thinning::MAX) / HUNDRED)
}

/// Volume solids after thinning: solids / (1 + r).
#[must_use]
pub fn thinned_solids(solids: Fraction, thinning: Thinning) -> Ruling<Fraction> {
    let after = Fraction::saturating(solids.get() / (1.0 + thinning.ratio()));
    Ruling::by("mixing.solids-fall", after)
        .step("solids-supplied", "", percent(solids))
        .step("thinner-per-part", "", Measure::new(thinning.ratio(), Unit::Ratio, 2))
        .step("solids-thinned", "solids / (1 + r)", percent(after))
}

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
    /// What a mix may still be used for.
    MixUse {
        /// Use it, strained.
        Use = "use-strained",
        /// Past its pot life: no more coats from it.
        Discard = "no-more-coats",
    }
    /// Kind of material, told apart by whether it sets in the pot.
    PotKind {
        /// Dries by losing solvent only.
        OnePart = "one-part",
        /// Cures from mixing on.
        TwoPart = "two-part-mix",
    }
    /// Whether a dose of retarder is allowed.
    RetarderDose {
        /// Within the shop's limit.
        Within = "dose-within",
        /// Over the shop's limit.
        Over = "dose-over",
    }
    /// Steps from can to gun.
    MixStep {
        /// Read what the data sheet allows.
        ReadSheet = "read-sheet",
        /// Bond and ground both containers.
        Bond = "bond",
        /// Stir up what has settled.
        StirBase = "stir-base",
        /// Add the measured hardener: a two-part mix only.
        AddHardener = "add-hardener-measured",
        /// Add the measured thinner.
        AddThinner = "add-thinner-measured",
        /// Stir the mix.
        StirMix = "stir-mix",
        /// Time it through the cup.
        CupTest = "cup-test",
        /// Strain it.
        Strain = "strain",
        /// Let bubbles rise.
        Rest = "rest",
        /// Spray a test card.
        TestCard = "test-card",
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
    let value = after.answer.get() * HUNDRED;
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
        .step("thinner", "base × r", volume(thinner)))
}

/// The most retarder that may be in a mix of so much, the retarder counted in.
#[must_use]
pub fn retarder_most(whole: Millilitres, sheet: &Sheet) -> Ruling<Millilitres> {
    let share = fraction(sheet.get(Setting::RetarderMost));
    let most = Millilitres::saturating(whole.get() * share.get());
    Ruling::by("mixing.retarder-of-mix", most).step("retarder-share", "", percent(share)).step(
        "retarder",
        "mix × share",
        volume(most),
    )
}

/// Whether so much retarder in a mix of so much, the retarder counted in, keeps within the sheet.
#[must_use]
pub fn retarder_dose(retarder: Millilitres, whole: Millilitres, sheet: &Sheet) -> Ruling<RetarderDose> {
    let most = retarder_most(whole, sheet);
    let answer = if retarder > most.answer { RetarderDose::Over } else { RetarderDose::Within };
    Ruling::by("mixing.retarder-of-mix", answer).resting_on(&most)
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

/// Pairs of steps whose first must come before the second: containers are bonded before anything is poured, the
/// sheet read before anything goes in, hardener goes into the stirred base and before the thinner, straining follows thinning and stirring, and bubbles rise before the gun.
const BEFORE: [(MixStep, MixStep); 25] = [
    (MixStep::ReadSheet, MixStep::AddHardener),
    (MixStep::Bond, MixStep::AddHardener),
    (MixStep::StirBase, MixStep::AddHardener),
    (MixStep::AddHardener, MixStep::AddThinner),
    (MixStep::AddHardener, MixStep::StirMix),
    (MixStep::AddHardener, MixStep::CupTest),
    (MixStep::AddHardener, MixStep::Strain),
    (MixStep::AddHardener, MixStep::Rest),
    (MixStep::AddHardener, MixStep::TestCard),
    (MixStep::ReadSheet, MixStep::AddThinner),
    (MixStep::Bond, MixStep::AddThinner),
    (MixStep::StirBase, MixStep::AddThinner),
    (MixStep::StirBase, MixStep::Strain),
    (MixStep::AddThinner, MixStep::StirMix),
    (MixStep::AddThinner, MixStep::CupTest),
    (MixStep::AddThinner, MixStep::Strain),
    (MixStep::AddThinner, MixStep::Rest),
    (MixStep::AddThinner, MixStep::TestCard),
    (MixStep::StirMix, MixStep::CupTest),
    (MixStep::StirMix, MixStep::Strain),
    (MixStep::StirMix, MixStep::Rest),
    (MixStep::CupTest, MixStep::Strain),
    (MixStep::Strain, MixStep::Rest),
    (MixStep::Strain, MixStep::TestCard),
    (MixStep::Rest, MixStep::TestCard),
];

/// The steps from can to gun for that kind of mix: hardener goes into a two-part one only.
#[must_use]
pub fn mix_steps(kind: PotKind) -> Vec<MixStep> {
    let hardens = kind == PotKind::TwoPart;
    MixStep::ALL.iter().copied().filter(|step| hardens || *step != MixStep::AddHardener).collect()
}

/// Whether steps stand in an order that gives a clean mix.
#[must_use]
pub fn mix_order(steps: &[MixStep]) -> Ruling<bool> {
    let place = |step| steps.iter().position(|one| *one == step);
    let kept = |(first, then): &(MixStep, MixStep)| match (place(*first), place(*then)) {
        (Some(first), Some(then)) => first < then,
        _ => true,
    };
    let ruling = Ruling::by("mixing.strain-last", BEFORE.iter().all(kept)).and("hazard.bond-before-pour");
    if steps.contains(&MixStep::AddHardener) { ruling.and("mixing.hardener-before-thinner") } else { ruling }
}
