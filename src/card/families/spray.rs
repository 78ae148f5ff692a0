//! Faces that are sprayed: a task of the content on the shop sheet in use, with its gun, its size and the film that is asked
//! for drawn anew. The answer is the run.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Question, keep};
use crate::content::{SPRAY_TASK, SprayTask, World};
use crate::quantity::{LiquidFlow, Millimetres, PERCENT_A_WHOLE};
use crate::rules::sheet::Setting;
use crate::rules::verdict::CannotJudge;
use crate::spraying::outline::Outline;
use crate::spraying::{Setup, good};

pub(super) const ALL: &[&Question] = &[
    &asked("spray-stain", "weak-stain"),
    &asked("spray-sealer", "soft-base"),
    &asked("spray-colour", "colour-thin"),
    &asked("spray-edge", "hard-shade"),
    &asked("spray-clear", "film-too-thin"),
    &asked("spray-body", "film-too-thin"),
    &asked("spray-repair", "film-too-thin"),
];

const fn asked(id: &'static str, after: &'static str) -> Question {
    Question { id, settle: keep, ask: Ask::Spray { setup }, after: After::is(after) }
}

/// The face that the facts describe. A film that would run before it is thick enough is nothing that can be asked for, and
/// neither is one that lies evener than the shop's fan lays it.
fn setup(facts: &Facts, world: &World<'_>) -> Result<Setup, CannotJudge> {
    let slug = facts.slug(SPRAY_TASK)?;
    let task = world.content.sprays.iter().find(|task| task.slug == slug);
    let mut task = task.cloned().ok_or_else(|| CannotJudge::without(SPRAY_TASK))?;
    told(&mut task, facts)?;
    let setup = Setup::on(&task, world.sheet);
    let wanted = setup.window().map(|(from, to)| f64::midpoint(from, to));
    let layers = task.film.map_or(1.0, |film| f64::from(film.layers));
    match (setup.sag(), wanted) {
        (Some(sag), Some(wanted)) if wanted / layers >= sag => Err(CannotJudge::without("coat_asked")),
        _ if libm::hypot(good::unevenness(&setup), good::EDGES_ADD)
            > setup.sheet.get(Setting::StripesMost) / PERCENT_A_WHOLE =>
        {
            Err(CannotJudge::without("fan_mm"))
        }
        _ => Ok(setup),
    }
}

/// What the facts tell of the task: the gun, how the face stands and how high it is, how much of the sheet's coat is asked for.
fn told(task: &mut SprayTask, facts: &Facts) -> Result<(), CannotJudge> {
    if let Some(flow) = facts.maybe_number("flow_ml_min") {
        task.gun.flow_ml_min = LiquidFlow::saturating(flow);
    }
    if let Some(wide) = facts.maybe_number("fan_mm") {
        task.gun.fan_mm = Millimetres::saturating(wide);
    }
    if facts.maybe_slug("facing").is_some() {
        task.facing = facts.term("facing")?;
    }
    if let (Some(share), Some(film)) = (facts.maybe_number("coat_asked"), &mut task.film) {
        (film.from, film.to) = (film.from * share / PERCENT_A_WHOLE, film.to * share / PERCENT_A_WHOLE);
    }
    if let Some(high) = facts.maybe_number("face_high_mm") {
        let (least, most) = Outline::of(&task.work).bounds();
        let grown = high / (most.1 - least.1);
        task.work.points_mm.iter_mut().flatten().for_each(|value| *value *= grown);
    }
    Ok(())
}
