//! Cold checks: hairlines in hard film. A few cross the grain; where there are more, younger ones run from old to old,
//! square to them, until closed cells cover the face. They are sharp, and smooth to the touch. A crack of the wood runs
//! with the grain or a joint instead; a crow's foot is a star of three short prongs; a wrinkle is a soft fold.

use super::crack::{Crack, Family, Way, lay};
use crate::noise::Chance;
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Square to the grain, radians, and how far a first crack leans.
const ACROSS: f32 = core::f32::consts::FRAC_PI_2;
const LEAN: f32 = 0.07;
/// First cracks on a panel, and how near to each other they begin.
const FIRST: [usize; 3] = [5, 9, 11];
const APART: [f32; 3] = [9.0, 6.0, 6.5];
/// Tries for each.
const TRIES: usize = 6;
/// Where a short one begins, shares of the height.
const TOP: (f32, f32) = (-0.2, 0.7);
/// Their length.
const LENGTH: [(f32, f32); 3] = [(24.0, 60.0), (30.0, 80.0), (130.0, 140.0)];
/// Younger generations: tries to begin one, and how near to another it may begin.
const YOUNGER: [&[(usize, f32)]; 3] = [&[], &[(7, 7.0)], &[(160, 3.4), (220, 2.4), (200, 1.9)]];
/// How far ahead of a younger one the ground must be free, in these lengths.
const AHEAD: f32 = 1.6;
/// How far a younger one goes if it meets none.
const YOUNG_LENGTH: [f32; 3] = [0.0, 32.0, 160.0];
/// Width of the first, of each younger generation against the one before, and its spread.
const WIDTH: [f32; 3] = [0.085, 0.105, 0.135];
const YOUNGER_WIDTH: f32 = 0.74;
const WIDTH_SHARE: (f32, f32) = (0.75, 1.2);
/// Turn at a step, and kinks: how many a mm, how sharp.
const JITTER: f32 = 0.05;
const KINK: (f32, f32) = (0.06, 0.34);
/// Shorter ones do not open.
const LEAST: f32 = 1.5;

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_111));
    let mut family = Family::on(grid);
    let mut width = severity.of(WIDTH);
    let (shortest, longest) = severity.of(LENGTH);
    for _ in 0..TRIES * severity.of(FIRST) {
        pause().await;
        if family.cracks.len() >= severity.of(FIRST) {
            break;
        }
        let length = chance.between(shortest, longest);
        let x = chance.even() * grid.width();
        let y = if length > grid.height() { 0.0 } else { chance.between(TOP.0, TOP.1) * grid.height() };
        let heading = ACROSS + LEAN * chance.normal();
        if !family.passes((x, (y + 0.5 * length).min(0.5 * grid.height())), severity.of(APART)) {
            let way = Way { heading, jitter: JITTER, kink: KINK, length };
            let width = width * chance.between(WIDTH_SHARE.0, WIDTH_SHARE.1);
            family.walk(&mut chance, (x, y.max(0.0)), &way, width, LEAST);
        }
    }
    for &(tries, apart) in severity.of(YOUNGER) {
        width *= YOUNGER_WIDTH;
        let parents = family.cracks.len();
        for _ in 0..tries {
            pause().await;
            let number = crate::number::whole(chance.even() * crate::number::coordinate(parents));
            let Some((from, heading)) = family.cracks.get(number).and_then(|old| leave(old, &mut chance))
            else {
                continue;
            };
            // What lies ahead must be free, or it would run beside another.
            let ahead =
                (from.0 + AHEAD * apart * libm::cosf(heading), from.1 + AHEAD * apart * libm::sinf(heading));
            if !family.passes(ahead, apart) {
                let way = Way { heading, jitter: JITTER, kink: KINK, length: severity.of(YOUNG_LENGTH) };
                let width = width * chance.between(WIDTH_SHARE.0, WIDTH_SHARE.1);
                family.walk(&mut chance, from, &way, width, LEAST);
            }
        }
    }
    lay(layers, recipe, &family).await;
}

/// A place on an older crack, and the way from it, square to it.
fn leave(old: &Crack, chance: &mut Chance) -> Option<((f32, f32), f32)> {
    /// Points on either side from which the direction is taken.
    const SPAN: usize = 4;
    let number = crate::number::whole(chance.even() * crate::number::coordinate(old.points.len()));
    let from = old.points.get(number)?;
    let before = old.points.get(number.saturating_sub(SPAN))?;
    let after = old.points.get((number + SPAN).min(old.points.len() - 1))?;
    let side = if chance.even() < 0.5 { ACROSS } else { -ACROSS };
    let along = libm::atan2f(after.1 - before.1, after.0 - before.0);
    Some((*from, along + side + LEAN * chance.normal()))
}
