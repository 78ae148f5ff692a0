//! A card that is sprayed: what a run on its face came to, what is misread in one that does not pass, how a good one is
//! reckoned. Nothing of it is stored; the model sprays each run anew.

use super::question::{Ask, Astray};
use super::{Answer, Card, families};
use crate::content::{Coat, World};
use crate::quantity::{GunSpeed, Micrometres, Millimetres, Overlap, Seconds};
use crate::rules::spray::pass_film::pitch;
use crate::rules::spray::trigger::{lead_for, passes_across};
use crate::rules::term::Stage;
use crate::rules::verdict::Judged;
use crate::spraying::good::{self, TAUGHT_OVERLAP};
use crate::spraying::{Better, Fault, Outcome, Passes, Run, Setup};

/// The face of a card on the shop sheet in use, with its gun and what is to lie on it; `None` of a card that is not sprayed.
#[must_use]
pub fn setup(card: &Card, world: &World<'_>) -> Option<Setup> {
    match families::find(&card.family)?.ask {
        Ask::Spray { setup } => setup(&card.facts, world).ok(),
        _ => None,
    }
}

/// What a run on a card came to; `None` of a card that is not sprayed, and of a run that no gun can make.
#[must_use]
pub fn outcome(card: &Card, world: &World<'_>, run: &Run) -> Option<Outcome> {
    let setup = setup(card, world)?;
    run.path(&setup).ok().map(|path| Outcome::sprayed(path, &setup))
}

/// A run on a card as the model would do it; `None` of a card that is not sprayed.
#[must_use]
pub fn good_run(card: &Card, world: &World<'_>) -> Option<Vec<Passes>> {
    good::run(&setup(card, world)?)
}

/// Programmed passes in a few figures: how many there are, and of the first one how far off it is, mm, and how fast, cm/s, in
/// whole numbers; `None` without any.
#[must_use]
pub fn in_figures(sets: &[Passes]) -> Option<(usize, f64, f64)> {
    /// Centimetres in a metre.
    const CM_A_METRE: f64 = 100.0;
    let first = sets.first()?;
    Some((sets.len(), libm::round(first.distance), libm::round(first.speed * CM_A_METRE)))
}

/// What is misread in a run that does not pass, and what follows; `None` for one that passes.
pub(super) fn astray(came: Option<&Outcome>) -> Option<Astray> {
    let Some(outcome) = came else { return Some(("", "")) };
    let worst = outcome.findings.first()?;
    let slip = outcome.advice.map_or("", |advice| slip(advice.better));
    let task = &outcome.setup().task;
    Some((slip, after(worst.fault, task.coat, task.stage)))
}

/// How a good run is reckoned: a run that passes is right.
pub(super) fn reckoned(setup: &Setup) -> Judged<Answer> {
    let held = setup.held(setup.middle_distance(), 0.0);
    let fan = Millimetres::saturating(2.0 * held.half_fan);
    let overlap = Overlap::saturating(TAUGHT_OVERLAP);
    let apart = pitch(fan, overlap);
    let Some(film) = setup.task.film else {
        // A shade is laid in rounds that fade into each other: there is no one speed to tell.
        return Ok(apart.map(|_| Answer::GoodRun).and("spraying.fade-to-target"));
    };
    let (least, most) = setup.outline.bounds();
    let high = most.1 - least.1;
    let across = passes_across(Millimetres::saturating(high), fan, overlap)?;
    // The passes share the height evenly: they lie a little closer than half a fan.
    let even = Millimetres::saturating(high / (across.answer - 1.0).max(1.0));
    let wet = Micrometres::saturating(f64::midpoint(film.from, film.to) * setup.coat());
    let speed = good::speed_at(setup, even, wet)?;
    let lead = lead_for(
        Millimetres::saturating(held.half_thin),
        GunSpeed::saturating(speed.answer.get()),
        Seconds::saturating(setup.task.gun.opens_s.get()),
    );
    let reckoned = speed.map(|_| Answer::GoodRun).resting_on(&apart).resting_on(&across);
    Ok(reckoned.resting_on(&lead).and("spraying.film-in-window"))
}

/// The misconception behind what is to become better.
const fn slip(better: Better) -> &'static str {
    match better {
        Better::KeepMoving => "gun-may-stand",
        Better::GoBack => "near-lays-best",
        Better::ComeNearer => "far-lays-finest",
        Better::OpenFan => "narrow-fan-lays-the-same",
        Better::CloseFan => "wide-fan-is-quicker",
        Better::HoldSquare => "tilt-costs-nothing",
        Better::KeepDistance => "wrist-will-do",
        Better::LeadMore => "trigger-on-the-work",
        Better::LeadLess => "trigger-long-before",
        Better::OverlapMore => "passes-side-by-side",
        Better::OverlapLess => "passes-on-each-other",
        Better::Faster => "slow-is-careful",
        Better::Slower => "fast-is-fine",
        Better::Evenly => "pace-does-not-count",
        Better::Wait => "layer-on-wet-layer",
        Better::Cross => "layers-all-one-way",
        Better::CoverAll => "part-of-the-face-left",
        Better::AimOut => "centre-gets-its-share",
        Better::OnceMore => "shade-comes-in-one-round",
        Better::OnceLess => "more-is-safer",
        Better::BothAlike => "sides-by-eye",
    }
}

/// What follows from the gravest fault of a coat at a stage.
const fn after(fault: Fault, coat: Coat, stage: Stage) -> &'static str {
    match (fault, coat) {
        (Fault::Missed | Fault::Thin | Fault::Pale, Coat::Colour) if matches!(stage, Stage::Stain) => {
            "weak-stain"
        }
        (_, Coat::Colour) if matches!(stage, Stage::Stain) => "stain-blotch",
        (Fault::Runs | Fault::Heavy, Coat::Clear) => "run",
        (Fault::Runs | Fault::Heavy, Coat::Colour) => "run-in-colour",
        (Fault::Runs | Fault::Heavy, Coat::Sealer) => "soft-base",
        (Fault::Missed | Fault::Thin, Coat::Clear) => "film-too-thin",
        (Fault::Missed | Fault::Thin, Coat::Colour) => "colour-thin",
        (Fault::Missed | Fault::Thin, Coat::Sealer) => "sealer-missed",
        (Fault::DrySpray, Coat::Clear) => "rough-clear",
        (Fault::DrySpray, Coat::Colour | Coat::Sealer) => "sandy-pass",
        (Fault::Strayed, _) => "mist-around-repair",
        (Fault::Stripes | Fault::NotCrossed, _) => "stripes",
        (Fault::Pale, _) => "colour-thin",
        (Fault::CentreCovered | Fault::Dark | Fault::Lopsided | Fault::Banded, _) => "hard-shade",
    }
}
