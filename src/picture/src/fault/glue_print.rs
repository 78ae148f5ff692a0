//! The print of a finger that had glue on it: ridges half a millimetre apart that flow round a core as a loop or a whorl and
//! end or fork here and there.

use crate::map::{Map, Rows, near};
use crate::noise::{Chance, cloud};
use crate::number::{coordinate, mix, smooth};
use crate::pause::pause;

/// Half-width and half-length of the pad.
const PAD: (f32, f32) = (5.2, 7.4);
/// From ridge to ridge: fingers of grown people have about 20 ridges on a cm (common practice, no source).
const RIDGES: f32 = 0.50;
/// Share of that which a pressed ridge covers.
const PRESSED: f32 = 0.55;
/// Half of the slope between ridge and furrow, the same share.
const SLOPE: f32 = 0.07;
/// Ends and forks on a print: each turns the phase once round itself.
const FORKS: usize = 12;
/// Loops among prints; the rest are whorls. A loop leans by so much.
const LOOPS: f32 = 0.65;
const LEAN: f32 = 0.35;
/// How far the core lies above the middle, a share of the half-length, and over how many mm a loop turns round it.
const CORE: f32 = 0.15;
const ROUND: f32 = 0.8;
/// How far a print may be turned, radians.
const TURNED: f32 = 0.9;
/// Whorls are longer than wide.
const OVAL: f32 = 1.25;
/// Skin is stretched: warp in ridges, over so many mm.
const WARP: f32 = 1.2;
const WARP_LENGTH: f32 = 4.5;
/// Parts that did not touch: size, and share.
const MISSED: f32 = 2.6;
/// Where the rim of the pad begins to lift, a share of it, and how ragged it is.
const RIM: f32 = 0.86;
const RAGGED: f32 = 0.08;
const TOUCHED: (f32, f32) = (-1.5, -0.9);
/// Points looked at in a pixel, a side.
const POINTS: usize = 3;

/// One print.
struct Print {
    seed: u32,
    cosine: f32,
    sine: f32,
    loops: bool,
    hand: f32,
    forks: [(f32, f32, f32); FORKS],
}

/// Presses a print onto a map, most 1, somewhere about a place.
pub(super) async fn press(map: &mut Map, chance: &mut Chance, seed: u32, (x, y): (f32, f32)) {
    let turn = TURNED * chance.between(-1.0, 1.0);
    let print = Print {
        seed,
        cosine: libm::cosf(turn),
        sine: libm::sinf(turn),
        loops: chance.even() < LOOPS,
        hand: if chance.even() < 0.5 { 1.0 } else { -1.0 },
        forks: core::array::from_fn(|n| {
            let way = if n % 2 == 0 { 1.0 } else { -1.0 };
            (PAD.0 * chance.between(-1.0, 1.0), PAD.1 * chance.between(-1.0, 1.0), way)
        }),
    };
    let grid = map.grid;
    let mut rows = Rows::default();
    for (column, row, dx, dy) in near(grid, x, y, PAD.0.max(PAD.1)) {
        if rows.begins(row) {
            pause().await;
        }
        let (u, v) = print.turned(dx, dy);
        let rim = libm::hypotf(u / PAD.0, v / PAD.1) + RAGGED * cloud(seed ^ 1, u / MISSED, v / MISSED);
        let touched = (1.0 - smooth(RIM, 1.0, rim))
            * smooth(TOUCHED.0, TOUCHED.1, cloud(seed ^ 2, u / MISSED, v / MISSED));
        if touched <= 0.0 {
            continue;
        }
        let flow = print.flow(u, v);
        let mut cover = 0.0;
        for n in 0..POINTS * POINTS {
            let part = |n: usize| grid.scale * ((coordinate(n) + 0.5) / coordinate(POINTS) - 0.5);
            let (du, dv) = print.turned(part(n % POINTS), part(n / POINTS));
            cover += ridge(print.core(u + du, v + dv) + flow);
        }
        let share = touched * cover / coordinate(POINTS * POINTS);
        let place = row * grid.columns + column;
        if let Some(value) = map.values.get_mut(place) {
            *value = value.max(share);
        }
    }
}

/// 1 on a ridge and 0 in a furrow, with a short slope between, for a phase in ridges.
fn ridge(phase: f32) -> f32 {
    let off = (phase - libm::floorf(phase) - 0.5).abs();
    1.0 - smooth(0.5 * PRESSED - SLOPE, 0.5 * PRESSED + SLOPE, off)
}

impl Print {
    fn turned(&self, dx: f32, dy: f32) -> (f32, f32) {
        (dx * self.cosine + dy * self.sine, dy * self.cosine - dx * self.sine)
    }

    /// Ridges from the core to a place.
    fn core(&self, u: f32, v: f32) -> f32 {
        let (core_u, core_v) = (u, v + CORE * PAD.1);
        let far = if self.loops {
            // Ridges come in from one side below, pass round the core and leave on the side they came from.
            let below = smooth(-ROUND, ROUND, core_v);
            let side = core_u - self.hand * LEAN * core_v.max(0.0);
            mix(libm::hypotf(core_u, core_v), side.abs(), below)
        } else {
            libm::hypotf(core_u * OVAL, core_v)
        };
        far / RIDGES
    }

    /// What bends them besides: ends and forks, a whorl's spiral, stretched skin.
    fn flow(&self, u: f32, v: f32) -> f32 {
        let turns = |angle: f32| angle / core::f32::consts::TAU;
        let forks: f32 = self.forks.iter().map(|(x, y, way)| way * turns(libm::atan2f(v - y, u - x))).sum();
        let spiral = if self.loops { 0.0 } else { self.hand * turns(libm::atan2f(v + CORE * PAD.1, u)) };
        forks + spiral + WARP * cloud(self.seed, u / WARP_LENGTH, v / WARP_LENGTH)
    }
}

#[cfg(test)]
mod tests {
    use super::{PAD, press};
    use crate::map::{Grid, Map};
    use crate::noise::Chance;
    use crate::pause::at_once;

    /// Fingers of grown people have about two ridges on a millimetre. Measured by Crofton's rule: edges are as long as lines
    /// drawn through them cross them, and stripes of a period have two edges in it.
    #[test]
    fn ridges_lie_half_a_millimetre_apart() {
        const SCALE: f32 = 0.05;
        const SIDE: f32 = 16.0;
        /// Share of ridge from which a place counts as touched, looked at over 0.4 mm.
        const TOUCHED: f32 = 0.25;
        for seed in [1, 2, 3, 4] {
            let grid = Grid::covering(SIDE, SIDE, SCALE);
            let mut map = Map::of(grid, 0.0);
            at_once(press(&mut map, &mut Chance::new(seed), seed, (0.5 * SIDE, 0.5 * SIDE)));
            // What was touched, without the furrows.
            let touched = at_once(map.blurred(0.4));
            let (mut area, mut crossings) = (0.0, 0.0);
            for row in 1..grid.rows {
                for column in 1..grid.columns {
                    if touched.at(column, row) < TOUCHED {
                        continue;
                    }
                    let on = |column, row| map.at(column, row) > 0.5;
                    area += SCALE * SCALE;
                    let crossed = |other: bool| if on(column, row) == other { 0.0 } else { SCALE };
                    crossings += crossed(on(column - 1, row)) + crossed(on(column, row - 1));
                }
            }
            let edges = crossings * core::f32::consts::FRAC_PI_4;
            let period = 2.0 * area / edges;
            assert!((0.40..0.60).contains(&period), "{period} mm");
            let face = PAD.0 * PAD.1 * core::f32::consts::PI;
            assert!((0.5..1.0).contains(&(area / face)), "touched {}", area / face);
        }
    }
}
