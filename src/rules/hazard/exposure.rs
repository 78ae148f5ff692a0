//! What is breathed: averages, mixtures, ceilings. Passing every limit here never shows that no respirator is needed:
//! a competent person measures in the breathing zone and decides in writing.

use super::solvent::Solvent;
use crate::quantity::{
    DUST, ExplosiveLimit, Fraction, Hours, Measure, MilligramsPerCubicMetre, MolarMass, PartsPerMillion, Unit,
};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Ceilings and short-term limits, kept apart from averages.
    Ceilings {
        /// None of these solvents has one.
        None = "no-ceiling",
        /// There are some, and no short-term reading to hold against them.
        NotShown = "ceiling-not-shown",
        /// The short-term readings keep them.
        Kept = "ceiling-kept",
        /// One is passed.
        Passed = "ceiling-passed",
    }
    /// What a meter for explosive vapour tells of breathing.
    Breathed {
        /// Over what is immediately dangerous to life or health.
        DangerousAtOnce = "dangerous-at-once",
        /// Over the limit of 8 hours.
        OverLimit = "over-shift-limit",
        /// Under the limit of 8 hours by this one reading, which shows nothing.
        NotShown = "one-reading-shows-nothing",
    }
    /// What readings of a shift say.
    Exposure {
        /// Over a limit of the law: a single average, the sum of the mixture or a ceiling.
        OverLimit = "over-limit",
        /// Over a recommended limit alone.
        OverRecommended = "over-recommended",
        /// Averages and sums are kept; ceilings are not shown.
        WithinAverages = "within-averages",
        /// Averages, sums and ceilings are kept.
        WithinLimits = "within-limits",
    }
}

/// Litres of a mole of gas at 25 °C and 760 mmHg, as occupational tables take it.
const LITRES_A_MOLE: f64 = 24.45;
/// Hours that an average limit of the law is stated for (29 CFR 1910.1000(d)(1)).
pub const SHIFT_H: f64 = 8.0;

/// The vapour of one solvent over a shift.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading<'a> {
    /// The solvent.
    pub solvent: &'a Solvent,
    /// Average of 8 hours.
    pub average: PartsPerMillion,
    /// Highest short-term reading, where one was taken.
    pub peak: Option<PartsPerMillion>,
}

/// What a shift's readings come to.
#[derive(Debug, Clone, PartialEq)]
pub struct Summed {
    /// Sum of shares of the permissible limits.
    pub sum_pel: f64,
    /// Sum of shares of the recommended limits.
    pub sum_rel: f64,
    /// Ceilings, apart.
    pub ceilings: Ceilings,
    /// The verdict; `None` while a limit that could decide is missing.
    pub verdict: Option<Exposure>,
    /// Slugs of solvents that have no permissible limit in parts per million.
    pub without_pel: Vec<String>,
    /// Slugs of solvents that have no recommended average in parts per million.
    pub without_rel: Vec<String>,
    /// Slugs of solvents with a recommended limit or ceiling that stands only in mg/m³.
    pub in_mg: Vec<String>,
    /// Slugs of solvents whose own average is over their permissible limit.
    pub over_pel: Vec<String>,
    /// Slugs of solvents over a ceiling or short-term limit.
    pub over_ceiling: Vec<String>,
}

/// Parts per million to milligrams a cubic metre at 25 °C: `ppm x M / 24.45`.
#[must_use]
pub fn by_mass(vapour: PartsPerMillion, molar_mass: MolarMass) -> MilligramsPerCubicMetre {
    MilligramsPerCubicMetre::saturating(vapour.get() * molar_mass.get() / LITRES_A_MOLE)
}

/// Milligrams a cubic metre to parts per million at 25 °C: `mg/m3 x 24.45 / M`.
#[must_use]
pub fn by_volume(mass: MilligramsPerCubicMetre, molar_mass: MolarMass) -> PartsPerMillion {
    PartsPerMillion::saturating(mass.get() * LITRES_A_MOLE / molar_mass.get())
}

/// Average of 8 hours from spells of different vapour: `(C1 T1 + C2 T2 + ...) / 8` (29 CFR 1910.1000(d)(1)). Hours not
/// told count as clean air.
///
/// # Errors
/// [`CannotJudge`] when the spells are longer than 8 hours: then the shift has to be measured as it is.
pub fn shift_average(spells: &[(PartsPerMillion, Hours)]) -> Judged<PartsPerMillion> {
    let hours: f64 = spells.iter().map(|(_, hours)| hours.get()).sum();
    if hours > SHIFT_H + DUST {
        return Err(CannotJudge::without("hours"));
    }
    let dose: f64 = spells.iter().map(|(vapour, hours)| vapour.get() * hours.get()).sum();
    let answer = PartsPerMillion::saturating(dose / SHIFT_H);
    let spell = |(content, hours): &(PartsPerMillion, Hours)| {
        [("vapour", vapour(*content)), ("hours", Measure::new(hours.get(), Unit::Hour, 1))]
    };
    let put_in: Vec<_> = spells.iter().flat_map(spell).collect();
    Ok(Ruling::by("hazard.shift-average", answer)
        .and("hazard.ceiling-apart")
        .step("shift-average", "sum of vapour x hours / 8", vapour(answer))
        .given(&put_in))
}

/// A vapour content as shown.
#[must_use]
pub fn vapour(content: PartsPerMillion) -> Measure {
    Measure::new(content.get(), Unit::PartsPerMillion, 1)
}

/// How many times its limit a vapour is.
#[must_use]
pub fn share_of(content: PartsPerMillion, limit: PartsPerMillion) -> f64 {
    content.get() / limit.get()
}

/// Sum of a mixture: `C1/L1 + C2/L2 + ...` (29 CFR 1910.1000(d)(2)); over 1 is over the limit.
#[must_use]
pub fn mixture(parts: &[(PartsPerMillion, PartsPerMillion)]) -> Ruling<f64> {
    // From zero: the sum of nothing at all would be -0.
    let sum = parts.iter().fold(0.0, |sum, (content, limit)| sum + share_of(*content, *limit));
    Ruling::by("hazard.solvents-add-up", sum)
        .step("sum-of-limits", "C1/L1 + C2/L2 + ...", Measure::new(sum, Unit::Ratio, 3))
        .given(&contents_and_limits(parts))
}

/// What a sum of a mixture is worked from.
fn contents_and_limits(parts: &[(PartsPerMillion, PartsPerMillion)]) -> Vec<(&'static str, Measure)> {
    parts.iter().flat_map(|(content, limit)| [("C", vapour(*content)), ("L", vapour(*limit))]).collect()
}

/// Whether a mixture is over the limit.
#[must_use]
pub fn mixture_over(parts: &[(PartsPerMillion, PartsPerMillion)]) -> Ruling<bool> {
    mixture(parts).map(|sum| over(sum, 1.0))
}

/// Whether an average of 8 hours is over its own limit.
#[must_use]
pub fn average_over(average: PartsPerMillion, limit: PartsPerMillion) -> Ruling<bool> {
    Ruling::by("hazard.own-limit", over(average.get(), limit.get()))
}

/// Whether a short-term reading is over its ceiling.
#[must_use]
pub fn ceiling_over(peak: PartsPerMillion, limit: PartsPerMillion) -> Ruling<bool> {
    Ruling::by("hazard.ceiling-apart", over(peak.get(), limit.get()))
}

/// What a meter for explosive vapour tells of breathing: its share of the lower explosive limit, as parts per million,
/// against the limit of 8 hours and against what is dangerous at once. One reading shows danger; it never shows safety.
#[must_use]
pub fn fire_meter(
    lel: ExplosiveLimit,
    reading: Fraction,
    limit: PartsPerMillion,
    idlh: PartsPerMillion,
) -> Ruling<Breathed> {
    let content = super::dilution::vapour_at(lel, reading);
    let answer = if over(content.get(), idlh.get()) {
        Breathed::DangerousAtOnce
    } else if over(content.get(), limit.get()) {
        Breathed::OverLimit
    } else {
        Breathed::NotShown
    };
    Ruling::by("hazard.fire-air-is-no-breathing-air", answer)
        .and("hazard.draw-is-no-respirator")
        .step(
            "vapour-by-meter",
            "LEL x share x 10,000",
            Measure::new(content.get(), Unit::PartsPerMillion, 0),
        )
        .given(&[
            ("LEL", Measure::new(lel.get(), Unit::Percent, 1)),
            ("share", crate::rules::mixing::percent(reading)),
        ])
}

fn over(value: f64, limit: f64) -> bool {
    value > limit + DUST
}

/// The highest that is known to have been breathed at once: an average over a ceiling passes it as well.
fn highest(reading: &Reading<'_>) -> PartsPerMillion {
    match reading.peak {
        Some(peak) if peak.get() > reading.average.get() => peak,
        _ => reading.average,
    }
}

fn passes(reading: &Reading<'_>, ceiling: Option<PartsPerMillion>) -> bool {
    ceiling.is_some_and(|limit| over(highest(reading).get(), limit.get()))
}

/// Whether ceilings and short-term limits of one solvent are kept, apart from any average. No reading in parts per million
/// shows that a ceiling in mg/m³ was kept.
#[must_use]
pub fn ceiling(reading: &Reading<'_>) -> Ruling<Ceilings> {
    let lowest = reading.solvent.lowest_ceiling();
    let answer = match (lowest, reading.peak) {
        (Some(_), _) if passes(reading, lowest) => Ceilings::Passed,
        _ if reading.solvent.limits.rel_ceiling_mg.is_some() => Ceilings::NotShown,
        (None, _) => Ceilings::None,
        (Some(_), None) => Ceilings::NotShown,
        (Some(_), Some(_)) => Ceilings::Kept,
    };
    Ruling::by("hazard.ceiling-apart", answer)
}

/// What the readings of a shift say: each average, the sum of the mixture on permissible and on recommended limits, and
/// ceilings apart. A solvent without a permissible limit, or with a recommended one that stands only in mg/m³, is not safe
/// for that: unless another limit is passed, it cannot be judged.
///
/// # Errors
/// [`CannotJudge`] when there is no reading.
pub fn exposure_sum(readings: &[Reading<'_>]) -> Judged<Summed> {
    if readings.is_empty() {
        return Err(CannotJudge::without("solvent"));
    }
    let named = |holds: &dyn Fn(&Reading<'_>) -> bool| -> Vec<String> {
        readings.iter().filter(|one| holds(one)).map(|one| one.solvent.slug.clone()).collect()
    };
    let parts = |limit: fn(&Solvent) -> Option<PartsPerMillion>| -> Vec<_> {
        readings.iter().filter_map(|one| limit(one.solvent).map(|limit| (one.average, limit))).collect()
    };
    let (pel, rel) = (parts(|one| one.limits.pel), parts(|one| one.limits.rel));
    let (sum_pel, sum_rel) = (mixture(&pel).answer, mixture(&rel).answer);
    let ceilings = readings.iter().map(|one| ceiling(one).answer).max_by_key(|found| weight(*found));
    let ceilings = ceilings.unwrap_or(Ceilings::None);
    let over_pel =
        named(&|one| one.solvent.limits.pel.is_some_and(|limit| over(one.average.get(), limit.get())));
    let legal_ceiling = readings.iter().any(|one| passes(one, one.solvent.limits.pel_ceiling));
    let without_pel = named(&|one| one.solvent.limits.pel.is_none());
    let in_mg = named(&|one| one.solvent.limits.in_mg());
    let verdict = if over(sum_pel, 1.0) || legal_ceiling {
        Some(Exposure::OverLimit)
    } else if over(sum_rel, 1.0) || ceilings == Ceilings::Passed {
        Some(Exposure::OverRecommended)
    } else if !without_pel.is_empty() || !in_mg.is_empty() {
        None
    } else if ceilings == Ceilings::NotShown {
        Some(Exposure::WithinAverages)
    } else {
        Some(Exposure::WithinLimits)
    };
    let answer = Summed {
        sum_pel,
        sum_rel,
        ceilings,
        verdict,
        without_pel,
        without_rel: named(&|one| one.solvent.limits.rel.is_none()),
        in_mg,
        over_pel,
        over_ceiling: named(&|one| passes(one, one.solvent.lowest_ceiling())),
    };
    Ok(Ruling::by("hazard.solvents-add-up", answer)
        .and("hazard.ceiling-apart")
        .and("hazard.draw-is-no-respirator")
        .step("sum-of-limits", "C1/L1 + C2/L2 + ...", Measure::new(sum_pel, Unit::Ratio, 3))
        .given(&contents_and_limits(&pel))
        .step("sum-of-recommended", "C1/L1 + C2/L2 + ...", Measure::new(sum_rel, Unit::Ratio, 3))
        .given(&contents_and_limits(&rel)))
}

/// Which of two answers about ceilings weighs more.
const fn weight(found: Ceilings) -> u8 {
    match found {
        Ceilings::None => 0,
        Ceilings::Kept => 1,
        Ceilings::NotShown => 2,
        Ceilings::Passed => 3,
    }
}
