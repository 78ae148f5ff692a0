//! Spray: film of a pass and of a set of passes, how even passes lie.

use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{GunSpeed, LiquidFlow, Measure, Overlap, Unit};
use crate::rules::spray::fan::{Fan, Section, seen_overlap};
use crate::rules::spray::overlap::{even_overlap, evenness, lay};
use crate::rules::spray::pass_film::{Laid, Spray, of_pass, of_set};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

pub(super) const ALL: &[&Calculation] = &[&PASS_FILM, &OVERLAP];

const PASS_FILM: Calculation = Calculation {
    name: "pass-film",
    needs: &[
        Needs::must("flow_ml_min"),
        Needs::must("volume_solids"),
        Needs::must("transfer"),
        Needs::must("speed_m_s"),
        Needs::may("width_mm"),
        Needs::may("pitch_mm"),
    ],
    gives: &[
        Gives::Number { key: "value", unit: Unit::Micrometre },
        Gives::Number { key: "dry_film", unit: Unit::Micrometre },
        Gives::Number { key: "wet_film", unit: Unit::Micrometre },
        Gives::Number { key: "pass_film", unit: Unit::Micrometre },
    ],
    run: pass_film,
};

const OVERLAP: Calculation = Calculation {
    name: "overlap",
    needs: &[Needs::must("profile"), Needs::may("overlap"), Needs::may("seen_overlap")],
    gives: &[
        Gives::Number { key: "cv", unit: Unit::Ratio },
        Gives::Number { key: "min_over_mean", unit: Unit::Ratio },
        Gives::Number { key: "max_over_min", unit: Unit::Ratio },
        Gives::Number { key: "full_overlap", unit: Unit::Ratio },
        Gives::Number { key: "even_overlap", unit: Unit::Ratio },
        Gives::Term { key: "verdict", among: &["lay-even", "lay-stripes"] },
    ],
    run: overlap,
};

/// What leaves the gun, as told.
pub(crate) fn told_spray(facts: &Facts, solids: &str) -> Result<Spray, CannotJudge> {
    let flow = LiquidFlow::new(facts.number("flow_ml_min")?);
    Ok(Spray {
        flow: flow.map_err(|_| CannotJudge::without("flow_ml_min"))?,
        solids: facts.share(solids)?,
        landing: facts.share("transfer")?,
    })
}

/// Speed of the gun, as told.
pub(crate) fn told_speed(facts: &Facts) -> Result<GunSpeed, CannotJudge> {
    GunSpeed::new(facts.number("speed_m_s")?).map_err(|_| CannotJudge::without("speed_m_s"))
}

/// An overlap, as told under a key.
pub(crate) fn told_overlap(facts: &Facts, key: &str) -> Result<Overlap, CannotJudge> {
    Overlap::new(facts.share(key)?.get()).map_err(|_| CannotJudge::without(key))
}

fn shown(film: f64) -> Measure {
    Measure::new(film, Unit::Micrometre, 1)
}

/// The width of the fan gives one pass, the pitch the mean of a set; with both, the set is the answer.
fn pass_film(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let (spray, speed) = (told_spray(facts, "volume_solids")?, told_speed(facts)?);
    let width = facts.millimetres("width_mm").ok();
    let pitch = facts.millimetres("pitch_mm").ok();
    let one = width.map(|width| of_pass(spray, speed, width)).transpose()?;
    let set = pitch.map(|pitch| of_set(spray, speed, pitch)).transpose()?;
    let outcome = |laid: Laid| {
        let dry = shown(laid.dry.get());
        Outcome::value(dry).number("dry_film", dry).number("wet_film", shown(laid.wet.get()))
    };
    let with_pass =
        |outcome: Outcome, one: &Ruling<Laid>| outcome.number("pass_film", shown(one.answer.dry.get()));
    match (one, set) {
        (None, None) => Err(CannotJudge::lacking(vec!["width_mm".to_owned(), "pitch_mm".to_owned()])),
        (Some(one), None) => Ok(one.clone().map(|laid| with_pass(outcome(laid), &one))),
        (None, Some(set)) => Ok(set.map(outcome)),
        (Some(one), Some(set)) => Ok(set.map(|laid| with_pass(outcome(laid), &one)).resting_on(&one)),
    }
}

fn overlap(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    /// Decimals of shares that scripts compare.
    const FINE: u8 = 4;
    let section = Section::from(facts.term::<Fan>("profile")?);
    if facts.maybe_number("overlap").is_some() && facts.maybe_number("seen_overlap").is_some() {
        return Err(CannotJudge::between(&["overlap", "seen_overlap"]));
    }
    let full = match told_overlap(facts, "seen_overlap") {
        Ok(seen) => seen_overlap(section, seen),
        Err(_) => Ruling::by("spray.full-width", told_overlap(facts, "overlap")?),
    };
    let even = evenness(section, full.answer).answer;
    let best = even_overlap(section).answer;
    let ratio = |number: f64| Measure::new(number, Unit::Ratio, FINE);
    let mut outcome = Outcome::default()
        .number("cv", ratio(even.cv))
        .number("min_over_mean", ratio(even.min_over_mean))
        .number("full_overlap", ratio(full.answer.get()))
        .number("even_overlap", ratio(best.get()));
    if even.max_over_min().is_finite() {
        outcome = outcome.number("max_over_min", ratio(even.max_over_min()));
    }
    let verdict = lay(section, full.answer, world.sheet);
    let lies = verdict.answer.slug();
    Ok(verdict.map(|_| outcome.term("verdict", lies)).resting_on(&full))
}
