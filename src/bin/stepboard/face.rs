//! Cards that are sprayed as they travel in JSON: the face of one, and what came of a run on it.

use crate::spray;
use serde_json::{Value, json};
use stepboard::card::{Answer, Card, sprayed};
use stepboard::content::{Texts, World};
use stepboard::rules::term::Term;
use stepboard::spraying::run::Run;

/// The face of a card, what is to lie on it and the gun; `None` of a card that is not sprayed.
pub(crate) fn face(card: &Card, world: &World<'_>) -> Option<Value> {
    let setup = sprayed::setup(card, world)?;
    let task = &setup.task;
    let (near, far) = setup.distances();
    let film = task.film.zip(setup.window()).map(|(film, (from, to))| {
        json!({ "from_um": from, "to_um": to, "layers": film.layers, "crossing": film.crossing })
    });
    let shade =
        task.shade.map(|shade| json!({ "width_mm": shade.width_mm, "edge_um": shade.depth * setup.coat() }));
    Some(json!({
        "task": task.slug, "film": film, "shade": shade, "repair": task.repair, "near_mm": near, "far_mm": far, "gun": task.gun,
        "flash_s": task.flash_s, "facing": task.facing.slug(), "outline_mm": setup.outline.places(),
    }))
}

/// A run on a card that passes, as the model would do it, to be graded as an answer; `None` of a card that is not sprayed.
pub(crate) fn good_run(card: &Card, world: &World<'_>) -> Option<Value> {
    let setup = sprayed::setup(card, world)?;
    let run = Run::shortest(sprayed::good_run(card, world)?, &setup).ok()?;
    Some(run.told())
}

/// Why a run on a card does not pass, and the one thing to do better; `None` of every other answer.
pub(crate) fn came_of(card: &Card, world: &World<'_>, given: &Answer, texts: &Texts) -> Option<Value> {
    let outcome = sprayed::outcome(card, world, given.run()?)?;
    Some(json!({
        "findings": outcome.findings.iter().map(|one| spray::finding(one, texts)).collect::<Vec<_>>(),
        "better": outcome.advice.map(|advice| spray::advised(&advice, texts)),
    }))
}
