//! Material: how much clear a job takes, solids by volume, what a heavier film does on a standing face.

use crate::bench::Facts;
use crate::bench::mixing::told_density;
use crate::card::question::{After, Ask, Question, Tempt, keep};
use crate::content::World;
use crate::quantity::{Fraction, Measure, SquareMetres, Unit};
use crate::rules::sheet::Setting;
use crate::rules::verdict::Judged;
use crate::rules::{film, mixing};

pub(super) const ALL: &[&Question] = &[&CLEAR_TO_ORDER, &SOLIDS_BY_VOLUME, &SAG_FLOW];

/// How much clear, as supplied, does this area take? Misconceptions: all of it lands; all of it is solid; the losses are
/// taken off where they are added.
const CLEAR_TO_ORDER: Question = Question {
    id: "clear-to-order",
    settle: keep,
    ask: Ask::Number { answer: clear_to_order, tempt: clear_to_order_slips, unit: Unit::Litre },
    after: After::is("film-too-thin").above("material-lost"),
};

/// What are the volume solids of this material? Misconceptions: weight solids are volume solids; densities turned round.
const SOLIDS_BY_VOLUME: Question = Question {
    id: "solids-by-volume",
    settle: keep,
    ask: Ask::Number { answer: solids_by_volume, tempt: solids_by_volume_slips, unit: Unit::Percent },
    after: After::is("film-too-thin").below("material-lost"),
};

/// How many times as much flows down? Misconceptions: flow goes with the film, or with its square.
const SAG_FLOW: Question = Question {
    id: "sag-flow",
    settle: keep,
    ask: Ask::Number { answer: sag_flow, tempt: sag_flow_slips, unit: Unit::Ratio },
    after: After::is("run").above("time-lost"),
};

/// Litres as an order is written: to the hundredth.
fn litres(millilitres: f64) -> Measure {
    Measure { decimals: 2, ..Measure::new(millilitres, Unit::Millilitre, 0).in_unit(Unit::Litre) }
}

fn clear_to_order(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    ordered(facts, world, film::clear_solids(world.sheet), facts.share("transfer")?)
}

fn ordered(facts: &Facts, world: &World<'_>, solids: Fraction, transfer: Fraction) -> Judged<Measure> {
    let area = SquareMetres::saturating(facts.number("area_m2")?);
    let build = world.sheet.micrometres(Setting::BuildTarget);
    Ok(film::volume_for(area, build, solids, transfer)?.map(|needed| litres(needed.get())))
}

fn clear_to_order_slips(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let whole = Fraction::saturating(1.0);
    let solids = film::clear_solids(world.sheet);
    let (Ok(transfer), Ok(all_lands)) = (facts.share("transfer"), ordered(facts, world, solids, whole))
    else {
        return Vec::new();
    };
    let mut tempts = vec![
        Tempt::number(all_lands.answer, "overspray-forgotten"),
        Tempt::number(litres(all_lands.answer.base() * transfer.get()), "losses-taken-off"),
    ];
    if let Ok(all_solid) = ordered(facts, world, whole, transfer) {
        tempts.push(Tempt::number(all_solid.answer, "solids-forgotten"));
    }
    tempts
}

fn solids_by_volume(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let (solids, solvent) =
        (told_density(facts, "solids_density_kg_l")?, told_density(facts, "solvent_density_kg_l")?);
    Ok(film::volume_solids(facts.share("solids")?, solids, solvent).map(mixing::percent))
}

fn solids_by_volume_slips(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let (Ok(weight), Ok(solids), Ok(solvent)) = (
        facts.share("solids"),
        told_density(facts, "solids_density_kg_l"),
        told_density(facts, "solvent_density_kg_l"),
    ) else {
        return Vec::new();
    };
    let turned = film::volume_solids(weight, solvent, solids).answer;
    let divided = Fraction::saturating(weight.get() / solids.get());
    vec![
        Tempt::number(mixing::percent(weight), "weight-taken-for-volume"),
        Tempt::number(mixing::percent(turned), "densities-turned-round"),
        Tempt::number(mixing::percent(divided), "solvent-volume-forgotten"),
    ]
}

fn times(factor: f64) -> Measure {
    Measure::new(factor, Unit::Ratio, 1)
}

fn sag_flow(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let coat = world.sheet.micrometres(Setting::ClearWet);
    Ok(film::sag_flow(facts.micrometres("wet_um")?, coat).map(times))
}

fn sag_flow_slips(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(wet) = facts.micrometres("wet_um") else { return Vec::new() };
    let ratio = wet.get() / world.sheet.get(Setting::ClearWet);
    vec![
        Tempt::number(times(ratio), "flow-taken-linearly"),
        Tempt::number(times(ratio * ratio), "square-for-cube"),
        Tempt::number(times(1.0 / (ratio * ratio * ratio)), "ratio-turned-round"),
    ]
}
