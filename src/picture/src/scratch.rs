//! Scratches too fine to be seen by themselves: each throws a lamp's light only square to itself, so it shows where it lies
//! square to the way from its mirrored place to the lamp. Rings round the lamp's image appear by that rule, and go with it.

use crate::map::{Grid, Map};
use crate::panel::Arc;

/// How closely it has to lie square: half of a lamp's width on the ceiling, mm, and the stray of a groove, radians.
const LAMP: f32 = 9.0;
const STRAY: f32 = 0.042;
/// Beyond so many widths nothing is seen.
const FAR: f32 = 3.0;
/// Distance on the ceiling at which half of the light is left: grooves are shallow.
const FADES: f32 = 95.0;
/// Light of a scratch that fills a pixel, beside a bulb and beside tubes.
const BULB: f32 = 3.2;
const TUBE: f32 = 0.34;
/// Half of a tube's length; a scratch that lies square to it sees at most so much more of it.
const TUBE_HALF: f32 = 620.0;
const MOST: f32 = 5.0;

/// A lamp on the ceiling.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Shine {
    /// A bulb there.
    Bulb((f32, f32)),
    /// The middle of a tube, and the way that it runs.
    Tube((f32, f32), (f32, f32)),
}

/// A piece of a scratch that waits for a lamp.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Scratch {
    arc: Arc,
    /// The place of the ceiling that is mirrored there.
    mirrored: (f32, f32),
}

impl Scratch {
    pub(crate) const fn new(arc: Arc, mirrored: (f32, f32)) -> Self {
        Self { arc, mirrored }
    }

    /// Share of the lamp's light that it throws.
    fn throws(&self, shine: Shine) -> f32 {
        let (x, y) = self.arc.along;
        let to = |aim: (f32, f32)| (aim.0 - self.mirrored.0, aim.1 - self.mirrored.1);
        match shine {
            Shine::Bulb(aim) => {
                let (dx, dy) = to(aim);
                let (along, across) = ((dx * x + dy * y).abs(), (dy * x - dx * y).abs());
                let width = LAMP + STRAY * (along + across);
                if along > FAR * width {
                    return 0.0;
                }
                let off = along / width;
                BULB * libm::expf(-0.5 * off * off) * fade(across)
            }
            Shine::Tube(aim, way) => {
                let (dx, dy) = to(aim);
                let meets = way.0 * x + way.1 * y;
                let steep = meets.abs().max(1.0 / MOST).copysign(meets);
                let on = -(dx * x + dy * y) / steep;
                if on.abs() > TUBE_HALF {
                    return 0.0;
                }
                let (dx, dy) = (dx + on * way.0, dy + on * way.1);
                TUBE / steep.abs() * fade(dx * y - dy * x)
            }
        }
    }
}

/// What all of them add to each pixel; nothing where there are none.
pub(crate) fn lit(scratches: &[Scratch], grid: Grid, shine: Shine) -> Vec<f32> {
    if scratches.is_empty() {
        return Vec::new();
    }
    let mut map = Map::of(grid, 0.0);
    for scratch in scratches {
        let light = scratch.throws(shine);
        if light > 0.0 {
            map.splat(scratch.arc.x, scratch.arc.y, scratch.arc.weight * light);
        }
    }
    map.values
}

fn fade(across: f32) -> f32 {
    let off = across / FADES;
    1.0 / (1.0 + off * off)
}
