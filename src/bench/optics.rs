//! Gloss and colour as seen.

use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{Absorbance, Measure, RefractiveIndex, Unit};
use crate::rules::optics::difference::{ciede2000, judge, seen, shown};
use crate::rules::optics::gloss::{GlossAngle, ceiling, fresnel};
use crate::rules::optics::lab::Lab;
use crate::rules::optics::layer::over_wood;
use crate::rules::optics::roughness::kept;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Calculation] = &[&GLOSS, &COLOUR_DIFFERENCE, &LAYER_COLOUR];

const GLOSS: Calculation = Calculation {
    name: "gloss",
    needs: &[Needs::must("index"), Needs::must("angle"), Needs::may("scratch_um")],
    gives: &[
        Gives::Number { key: "value", unit: Unit::Gloss },
        Gives::Number { key: "film_mirrors", unit: Unit::Ratio },
    ],
    run: gloss,
};

const COLOUR_DIFFERENCE: Calculation = Calculation {
    name: "colour-difference",
    needs: &[
        Needs::must("l1"),
        Needs::must("a1"),
        Needs::must("b1"),
        Needs::must("l2"),
        Needs::must("a2"),
        Needs::must("b2"),
    ],
    gives: &[
        Gives::Number { key: "value", unit: Unit::Ratio },
        Gives::Term { key: "verdict", among: &["match-within-band", "match-outside-band"] },
        Gives::Term { key: "seen", among: &["seen-same", "seen-slight", "seen-plain"] },
    ],
    run: colour_difference,
};

const LAYER_COLOUR: Calculation = Calculation {
    name: "layer-colour",
    needs: &[Needs::must("wood_reflectance"), Needs::must("coat_absorbance"), Needs::must("coats")],
    gives: &[
        Gives::Number { key: "reflectance", unit: Unit::Ratio },
        Gives::Number { key: "lightness", unit: Unit::Ratio },
    ],
    run: layer_colour,
};

/// Decimals of shares that scripts compare.
const FINE: u8 = 4;

fn gloss(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let index = RefractiveIndex::new(facts.number("index")?).map_err(|_| CannotJudge::without("index"))?;
    let angle = facts.term::<GlossAngle>("angle")?;
    let smooth = ceiling(index, angle);
    let mirrors = Measure::new(fresnel(index, angle.degrees()).mean(), Unit::Ratio, FINE);
    let outcome =
        |reading: f64| Outcome::value(Measure::new(reading, Unit::Gloss, 1)).number("film_mirrors", mirrors);
    match facts.micrometres("scratch_um") {
        Err(_) => Ok(smooth.map(outcome)),
        Ok(height) => {
            let kept = kept(height, angle);
            let reading = smooth.answer * kept.answer.get();
            Ok(kept.map(|_| outcome(reading)).resting_on(&smooth))
        }
    }
}

/// A colour, as told under three keys.
pub(crate) fn told_lab(facts: &Facts, keys: [&str; 3]) -> Result<Lab, CannotJudge> {
    let [l, a, b] = keys;
    Lab::new(facts.number(l)?, facts.number(a)?, facts.number(b)?).map_err(|_| CannotJudge::without(l))
}

fn colour_difference(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let sample = told_lab(facts, ["l1", "a1", "b1"])?;
    let work = told_lab(facts, ["l2", "a2", "b2"])?;
    let difference = ciede2000(sample, work);
    let looks = seen(difference, world.sheet);
    let verdict = judge(sample, work, world.sheet);
    let (passes, words) = (verdict.answer.slug(), looks.answer.slug());
    Ok(verdict
        .map(|_| Outcome::value(shown(difference)).term("verdict", passes).term("seen", words))
        .resting_on(&looks))
}

fn layer_colour(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let coat = Absorbance::new(facts.number("coat_absorbance")?);
    let coat = coat.map_err(|_| CannotJudge::without("coat_absorbance"))?;
    let shade = over_wood(facts.share("wood_reflectance")?, coat, facts.number("coats")?);
    Ok(shade.map(|shade| {
        Outcome::default()
            .number("reflectance", Measure::new(shade.reflectance.get(), Unit::Ratio, FINE))
            .number("lightness", Measure::new(shade.lightness, Unit::Ratio, 1))
    }))
}
