//! The window, with bars between its panes.

use super::strip::strip;
use super::{FAR_BLURS, Pair, any_within, veiled};
use crate::map::Grid;
use wide::f32x8;

/// Its middle from the middle of a panel.
const MIDDLE: (f32, f32) = (-140.0, -690.0);
/// Half of its width and of its height.
const HALF: (f32, f32) = (95.0, 150.0);
const LIGHT: f32 = 5.2;
/// The sky is so much darker at its lower end.
const LOWER_SKY: f32 = 0.25;
/// Half of a bar's width, and where the two lie that cross it, shares of its half height.
const BAR: f32 = 4.8;
const BARS: [f32; 2] = [-0.333, 0.333];

/// Its light at places of the ceiling, by films that blur so much and of which a share is milky.
pub(crate) fn window(grid: Grid, (x, y): Pair, blur: Pair, veil: f32x8) -> f32x8 {
    let off = (x - (MIDDLE.0 + 0.5 * grid.width()), y - (MIDDLE.1 + 0.5 * grid.height()));
    veiled(blur, veil, |blur| seen(off, blur))
}

fn seen((u, v): Pair, (along, across): Pair) -> f32x8 {
    if !any_within(u, HALF.0 + FAR_BLURS * along) || !any_within(v, HALF.1 + FAR_BLURS * across) {
        return f32x8::ZERO;
    }
    let (wide, tall) = (strip(u, HALF.0, along), strip(v, HALF.1, across));
    let upright = strip(u, BAR, along) * tall;
    let [upper, lower] = BARS.map(|share| strip(v - share * HALF.1, BAR, across) * wide);
    let down = ((v + HALF.1) * (0.5 / HALF.1)).fast_clamp(f32x8::ZERO, f32x8::ONE);
    let sky = 1.0 - LOWER_SKY * down * down * (3.0 - 2.0 * down);
    LIGHT * sky * (wide * tall - upright - upper - lower).fast_max(f32x8::ZERO)
}
