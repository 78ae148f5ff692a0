//! What luck does on a card that is asked as evidence.

use super::{Answer, Card, Kind, scene, solve};
use crate::content::World;

/// Largest share of the cards of any family on which not enough is told, measured over 240 seeds of each: whoever always says
/// so is right so often. The mean over all families is 0.12.
pub const UNTOLD_MOST: f64 = 0.25;

/// Chance that somebody who does not know answers a card right, 0 to 1: that of its kind of answer ([`solve`]), but never less
/// than [`UNTOLD_MOST`] where something may be untold. For a place the share of the panel that counts as on the fault is
/// taken where it is more: nobody taps blindly, and whoever merely sees that something is there hits a small fault far more
/// often than its share says. `None` for a card whose family is unknown.
///
/// A point draws its panel: ask for it once, when the answer is handed in.
#[must_use]
pub fn luck(card: &Card, world: &World<'_>) -> Option<f64> {
    let solution = solve(card, world)?;
    let info = world.content.family(&card.family)?;
    // A panel may be one that no test tells apart.
    let hides = card.kind == Kind::Diagnose || info.facts.iter().any(|draw| draw.may_hide);
    let untold = if hides { UNTOLD_MOST } else { 0.0 };
    let own = match (card.kind, &solution.right) {
        (Kind::Point, Answer::OnTheFault) => {
            let share = scene::panels(card, world.content).first().map_or(0.0, scene::share_on_fault);
            share.max(solution.guess)
        }
        // Nothing is listed to guess among: what is untold is all that luck can hit.
        (Kind::Number | Kind::Order | Kind::Point | Kind::Spray, Answer::NotEnough) => untold,
        _ => solution.guess,
    };
    Some(own.max(untold))
}
