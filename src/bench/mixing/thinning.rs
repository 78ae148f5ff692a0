//! Thinning by parts or per cent, washcoat solids, a mix in several parts, a mix by weight.

use super::{told_density, told_volume};
use crate::bench::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{Grams, Measure, Millilitres, Unit};
use crate::rules::mixing::{self, Thinning};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

pub(super) const THIN: Calculation = Calculation {
    name: "thin",
    needs: &[
        Needs::must("base_ml"),
        Needs::may("parts_base"),
        Needs::may("parts_thinner"),
        Needs::may("percent"),
    ],
    gives: &[
        Gives::Number { key: "thinner", unit: Unit::Millilitre },
        Gives::Number { key: "batch", unit: Unit::Millilitre },
        Gives::Number { key: "parts_base", unit: Unit::Ratio },
        Gives::Number { key: "parts_thinner", unit: Unit::Ratio },
        Gives::Number { key: "percent_thinned", unit: Unit::Percent },
        Gives::Number { key: "share", unit: Unit::Percent },
    ],
    run: thin,
};

pub(super) const WASHCOAT_SOLIDS: Calculation = Calculation {
    name: "washcoat-solids",
    needs: &[Needs::must("volume_solids"), Needs::must("parts_sealer"), Needs::must("parts_thinner")],
    gives: &[
        Gives::Number { key: "value", unit: Unit::Ratio },
        Gives::Number { key: "solids_mixed", unit: Unit::Percent },
        Gives::Term { key: "verdict", among: &["use-as-is", "add-thinner", "add-sealer"] },
    ],
    run: washcoat_solids,
};

pub(super) const MIX_PARTS: Calculation = Calculation {
    name: "mix-parts",
    needs: &[
        Needs::must("base_ml"),
        Needs::must("parts_base"),
        Needs::must("parts_hardener"),
        Needs::may("parts_thinner"),
    ],
    gives: &[
        Gives::Number { key: "hardener", unit: Unit::Millilitre },
        Gives::Number { key: "thinner", unit: Unit::Millilitre },
        Gives::Number { key: "batch", unit: Unit::Millilitre },
    ],
    run: mix_parts,
};

pub(super) const WEIGH: Calculation = Calculation {
    name: "weigh",
    needs: &[
        Needs::must("base_ml"),
        Needs::may("parts_base"),
        Needs::may("parts_thinner"),
        Needs::may("percent"),
        Needs::must("density_kg_l"),
        Needs::must("thinner_density_kg_l"),
    ],
    gives: &[
        Gives::Number { key: "base_weight", unit: Unit::Gram },
        Gives::Number { key: "thinner_weight", unit: Unit::Gram },
        Gives::Number { key: "scale", unit: Unit::Gram },
    ],
    run: weigh,
};

/// Thinning from two facts that give parts.
pub(crate) fn told_parts(facts: &Facts, base: &str, thinner: &str) -> Result<Thinning, CannotJudge> {
    Thinning::of_parts(facts.number(base)?, facts.number(thinner)?).map_err(|_| CannotJudge::without(thinner))
}

/// Thinning from a fact that gives per cent of the unthinned material.
pub(crate) fn told_percent(facts: &Facts, key: &str) -> Result<Thinning, CannotJudge> {
    Thinning::of_percent(facts.number(key)?).map_err(|_| CannotJudge::without(key))
}

/// Thinning by parts or by per cent, whichever is told; `None` when neither is. Told both ways it must be the same, but
/// for the rounding of the per cent.
///
/// # Errors
/// [`CannotJudge`] when half of the parts is missing, or when parts and per cent contradict each other.
pub(crate) fn told_thinning(facts: &Facts) -> Result<Option<Thinning>, CannotJudge> {
    /// A per cent is told to a whole one.
    const ROUNDING: f64 = 0.005;
    let told = |key| facts.maybe_number(key).is_some();
    let by_parts = (told("parts_base") || told("parts_thinner"))
        .then(|| told_parts(facts, "parts_base", "parts_thinner"))
        .transpose()?;
    let by_percent = told("percent").then(|| told_percent(facts, "percent")).transpose()?;
    match (by_parts, by_percent) {
        (Some(parts), Some(percent)) if (parts.ratio() - percent.ratio()).abs() > ROUNDING => {
            Err(CannotJudge::between(&["parts_base", "parts_thinner", "percent"]))
        }
        (parts, percent) => Ok(parts.or(percent)),
    }
}

/// Parts as told, else with one part of the smaller of the two.
fn parts(facts: &Facts, thinning: Thinning) -> (f64, f64) {
    let ratio = thinning.ratio();
    match (facts.maybe_number("parts_base"), facts.maybe_number("parts_thinner")) {
        (Some(base), Some(thinner)) => (base, thinner),
        _ if ratio > 0.0 && ratio < 1.0 => (1.0 / ratio, 1.0),
        _ => (1.0, ratio),
    }
}

/// Thinning that has to be told one way or the other.
fn needed_thinning(facts: &Facts) -> Result<Thinning, CannotJudge> {
    let keys = ["parts_base", "parts_thinner", "percent"];
    told_thinning(facts)?.ok_or_else(|| CannotJudge::lacking(keys.map(str::to_owned).to_vec()))
}

fn thin(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let base = told_volume(facts, "base_ml")?;
    let thinning = needed_thinning(facts)?;
    let (parts_base, parts_thinner) = parts(facts, thinning);
    Ok(mixing::thinner_for(base, thinning).map(|thinner| {
        Outcome::default()
            .number("thinner", mixing::volume(thinner))
            .number("batch", mixing::volume(Millilitres::saturating(base.get() + thinner.get())))
            .number("parts_base", Measure::new(parts_base, Unit::Ratio, 2))
            .number("parts_thinner", Measure::new(parts_thinner, Unit::Ratio, 2))
            .number("percent_thinned", Measure::new(thinning.percent(), Unit::Percent, 1))
            .number("share", mixing::percent(thinning.share()))
    }))
}

fn washcoat_solids(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let solids = mixing::fraction(facts.number("volume_solids")?);
    let thinning = told_parts(facts, "parts_sealer", "parts_thinner")?;
    let after = mixing::thinned_solids(solids, thinning);
    let verdict: Ruling<mixing::Washcoat> = mixing::washcoat(Some(solids), thinning, world.sheet)?;
    let value = Measure::new(after.answer.get(), Unit::Ratio, 3);
    let shown = mixing::percent(after.answer);
    Ok(verdict.map(|band| Outcome::value(value).number("solids_mixed", shown).term("verdict", band.slug())))
}

fn mix_parts(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let base = told_volume(facts, "base_ml")?;
    let thinner = facts.maybe_number("parts_thinner").unwrap_or(0.0);
    let parts = [facts.number("parts_base")?, facts.number("parts_hardener")?, thinner];
    let ruling = mixing::mix_by_parts(base, &parts).map_err(|_| CannotJudge::without("parts_base"))?;
    Ok(ruling.map(|volumes| {
        let part =
            |at: usize| mixing::volume(volumes.get(at).copied().unwrap_or(Millilitres::saturating(0.0)));
        let batch = volumes.iter().map(|volume| volume.get()).sum();
        Outcome::default()
            .number("hardener", part(1))
            .number("thinner", part(2))
            .number("batch", mixing::volume(Millilitres::saturating(batch)))
    }))
}

fn weigh(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let base = told_volume(facts, "base_ml")?;
    let thinner = mixing::thinner_for(base, needed_thinning(facts)?);
    let base = mixing::weight(base, told_density(facts, "density_kg_l")?);
    let added = mixing::weight(thinner.answer, told_density(facts, "thinner_density_kg_l")?);
    let scale = Grams::saturating(base.answer.get() + added.answer.get());
    let outcome = Outcome::default()
        .number("base_weight", mixing::grams(base.answer))
        .number("thinner_weight", mixing::grams(added.answer))
        .number("scale", mixing::grams(scale));
    Ok(added.map(|_| outcome).resting_on(&base).resting_on(&thinner))
}
