//! What goes into the air: VOC as applied, HAP for each kilogram of solids.

use super::{share_or_none, told, told_density, told_parts};
use crate::bench::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{Kilograms, Unit};
use crate::rules::mixing::{self, AddedThinner, Finishing, Litre, Makeup};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const VOC: Calculation = Calculation {
    name: "voc",
    needs: &[
        Needs::must("density_kg_l"),
        Needs::must("solids"),
        Needs::may("water"),
        Needs::may("exempt"),
        Needs::may("exempt_density_kg_l"),
        Needs::may("parts_base"),
        Needs::may("parts_thinner"),
        Needs::may("thinner_density_kg_l"),
        Needs::may("thinner_exempt"),
        Needs::may("thinner_water"),
    ],
    gives: &[
        Gives::Number { key: "voc_material", unit: Unit::GramALitre },
        Gives::Number { key: "voc_coating", unit: Unit::GramALitre },
        Gives::Number { key: "voc_solids", unit: Unit::GramALitre },
        Gives::Term { key: "limit_on", among: &["voc-of-coating", "voc-of-material"] },
    ],
    run: voc,
};

/// Kinds of finishing material whose solids and VHAP may be told: keys of both.
const MATERIALS: [(&str, &str); 5] = [
    ("stain_solids_kg", "stain_vhap"),
    ("washcoat_solids_kg", "washcoat_vhap"),
    ("sealer_solids_kg", "sealer_vhap"),
    ("colour_solids_kg", "colour_vhap"),
    ("topcoat_solids_kg", "topcoat_vhap"),
];

pub(super) const HAP: Calculation = Calculation {
    name: "hap",
    needs: &[
        Needs::may("stain_solids_kg"),
        Needs::may("stain_vhap"),
        Needs::may("washcoat_solids_kg"),
        Needs::may("washcoat_vhap"),
        Needs::may("sealer_solids_kg"),
        Needs::may("sealer_vhap"),
        Needs::may("colour_solids_kg"),
        Needs::may("colour_vhap"),
        Needs::may("topcoat_solids_kg"),
        Needs::may("topcoat_vhap"),
        Needs::may("thinner_kg"),
        Needs::may("thinner_vhap"),
    ],
    gives: &[
        Gives::Number { key: "value", unit: Unit::Ratio },
        Gives::Term { key: "verdict", among: &["hap-within", "hap-over"] },
        Gives::Number { key: "most", unit: Unit::Ratio },
    ],
    run: hap,
};

/// One litre of the material as supplied.
pub(crate) fn told_litre(facts: &Facts) -> Result<Litre, CannotJudge> {
    let makeup = Makeup {
        density: told_density(facts, "density_kg_l")?,
        solids: facts.share("solids")?,
        water: share_or_none(facts, "water"),
        exempt: share_or_none(facts, "exempt"),
    };
    makeup.litre()
}

/// One litre of the thinner.
pub(crate) fn told_thinner(facts: &Facts) -> Result<Litre, CannotJudge> {
    let density = told_density(facts, "thinner_density_kg_l")?;
    let (exempt, water) = (share_or_none(facts, "thinner_exempt"), share_or_none(facts, "thinner_water"));
    mixing::thinner_of(density, exempt, water)
        .litre()
        .map_err(|_| CannotJudge::between(&["thinner_exempt", "thinner_water"]))
}

fn voc(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let supplied = told_litre(facts)?;
    let parts = ["parts_base", "parts_thinner"].iter().any(|key| facts.maybe_number(key).is_some());
    let applied = if parts {
        supplied.thinned(told_thinner(facts)?, told_parts(facts, "parts_base", "parts_thinner")?)
    } else {
        supplied
    };
    let material = mixing::voc_of_material(applied);
    let coating = mixing::voc_of_coating(applied, told_density(facts, "exempt_density_kg_l").ok())?;
    let basis = mixing::figure_for_limit(applied);
    let mut outcome = Outcome::default()
        .number("voc_material", mixing::grams_a_litre(material.answer))
        .number("voc_coating", mixing::grams_a_litre(coating.answer))
        .term("limit_on", basis.answer.slug());
    if let Ok(solids) = mixing::voc_of_solids(coating.answer) {
        outcome = outcome.number("voc_solids", mixing::grams_a_litre(solids.answer));
    }
    Ok(basis.map(|_| outcome).resting_on(&coating).resting_on(&material).and("mixing.voc-exempt-is-not-safe"))
}

fn hap(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let mut materials = Vec::new();
    for (solids, vhap) in MATERIALS {
        let told_one = [solids, vhap].iter().any(|key| facts.maybe_number(key).is_some());
        if told_one {
            materials
                .push(Finishing { solids: told(facts, solids, Kilograms::new)?, vhap: facts.number(vhap)? });
        }
    }
    let thinned = ["thinner_kg", "thinner_vhap"].iter().any(|key| facts.maybe_number(key).is_some());
    let thinner = thinned.then(|| {
        let mass = told(facts, "thinner_kg", Kilograms::new)?;
        Ok(AddedThinner { mass, vhap: facts.share("thinner_vhap")? })
    });
    let thinners: Vec<AddedThinner> = thinner.transpose()?.into_iter().collect();
    let average = mixing::average(&materials, &thinners)?;
    let verdict = mixing::within_limit(average.answer, world.sheet);
    let most = world.sheet.get(crate::rules::sheet::Setting::HapMost);
    let outcome = Outcome::value(mixing::for_solids(average.answer))
        .term("verdict", verdict.answer.slug())
        .number("most", mixing::for_solids(most));
    Ok(verdict.map(|_| outcome).resting_on(&average))
}
