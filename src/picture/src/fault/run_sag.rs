//! Runs and sags: tears that hang down the face, thin where they begin and thick at the head; where there is more, a curtain
//! with a scalloped lower lip from which they hang. Down is the bottom of the picture. A fat edge lies along an arris
//! instead, of one thickness, and hangs nowhere.

use super::thick;
use crate::map::{Map, Rows, near};
use crate::noise::{Chance, cloud};
use crate::number::{coordinate, smooth};
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Tears on a panel, their half width, and their length.
const COUNT: [usize; 3] = [1, 3, 6];
const HALF_WIDTH: [(f32, f32); 3] = [(2.2, 2.9), (1.7, 2.9), (1.6, 3.0)];
const LENGTH: [f32; 3] = [26.0, 30.0, 36.0];
const LENGTH_SHARE: [(f32, f32); 3] = [(0.75, 1.25), (0.5, 1.4), (0.45, 1.4)];
/// Extra film in the head of a tear, micrometres, and how it differs from tear to tear.
const THICK: [f32; 3] = [52.0, 66.0, 90.0];
const THICK_SHARE: (f32, f32) = (0.75, 1.1);
/// Half length of the curtain; none where only a tear ran.
const CURTAIN: [f32; 3] = [0.0, 30.0, 46.0];
/// Its film against a head's, how high it reaches above its lip, and the steep foot of the lip.
const CURTAIN_SHARE: f32 = 0.5;
const CURTAIN_HIGH: f32 = 17.0;
const LIP: f32 = 1.4;
/// A curtain thins to nothing between these shares of its half length; tears hang from this share of it.
const ENDS: (f32, f32) = (0.6, 1.05);
const INNER: f32 = 0.85;
/// How far from the middle of the panel it hangs, share of the room there is; where in its part of the curtain a tear stands.
const ROAMS: f32 = 0.8;
const STAND: (f32, f32) = (0.05, 0.95);
/// How far the lip sinks where a tear leaves it, and how far along it that is felt.
const SCALLOP: (f32, f32) = (4.5, 4.2);
/// Waves of the lip between: height and length.
const WAVE: (f32, f32) = (1.1, 9.0);
/// Sway of a tear on its way down: how far, and over what length.
const SWAY: (f32, f32) = (0.7, 13.0);
/// A tail's film against its head's, at its beginning and at its end, and its width against the head's.
const TAIL: (f32, f32) = (0.30, 0.62);
const TAIL_WIDTH: f32 = 0.72;
/// The foot of a tear reaches this far beyond its half width.
const FOOT: f32 = 1.5;
/// Share of a tear's length over which it begins.
const BEGINS: f32 = 0.3;
/// A head's length below and above its middle, in half widths.
const HEAD: (f32, f32) = (1.5, 3.6);
/// Where a lone tear and a curtain begin, shares of the height; nothing hangs nearer to the bottom than this.
const TEAR_TOP: (f32, f32) = (0.12, 0.5);
const CURTAIN_TOP: (f32, f32) = (0.26, 0.42);
const LEFT_BELOW: f32 = 5.0;

/// A tear: where it begins, how long and wide it is, how thick its head.
struct Tear {
    x: f32,
    top: f32,
    length: f32,
    half: f32,
    thick: f32,
    sway: u32,
}

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_101));
    let half = severity.of(CURTAIN);
    let (from, to) = if half > 0.0 { CURTAIN_TOP } else { TEAR_TOP };
    let top = chance.between(from, to) * grid.height();
    let room = (0.5 * grid.width() - half).max(0.0);
    let middle = 0.5 * grid.width() + room * chance.between(-ROAMS, ROAMS);
    let count = severity.of(COUNT);
    let mut extra = Map::of(grid, 0.0);
    let tears: Vec<Tear> = (0..count)
        .map(|number| {
            // One in each part of the curtain, nowhere in step.
            let place =
                (coordinate(number) + chance.between(STAND.0, STAND.1)) / coordinate(count) * 2.0 - 1.0;
            let ((shortest, longest), (narrow, wide)) = (severity.of(LENGTH_SHARE), severity.of(HALF_WIDTH));
            let length = severity.of(LENGTH) * chance.between(shortest, longest);
            Tear {
                x: middle + INNER * half * place,
                top,
                length: length.min(grid.height() - LEFT_BELOW - top),
                half: chance.between(narrow, wide),
                thick: severity.of(THICK) * chance.between(THICK_SHARE.0, THICK_SHARE.1),
                sway: layer(recipe.seed, 1_102) ^ u32::try_from(number).unwrap_or(0),
            }
        })
        .collect();
    if half > 0.0 {
        let share = CURTAIN_SHARE * severity.of(THICK);
        hang(&mut extra, &tears, layer(recipe.seed, 1_103), (middle, top, half), share).await;
    }
    for tear in &tears {
        tear.run(&mut extra).await;
    }
    thick::lay(layers, &extra).await;
}

/// A curtain: film that slid down and stopped at a lip.
async fn hang(extra: &mut Map, tears: &[Tear], seed: u32, (middle, top, half): (f32, f32, f32), thick: f32) {
    let columns = extra.grid.columns;
    let lips: Vec<(f32, f32)> = (0..columns)
        .map(|column| {
            let (x, _) = extra.grid.middle(column, 0);
            let wave = WAVE.0 * cloud(seed, x / WAVE.1, 0.5);
            let scallop = |tear: &Tear| {
                let off = (x - tear.x) / SCALLOP.1;
                SCALLOP.0 * libm::expf(-off * off)
            };
            let off = ((x - middle) / half).abs();
            (top + wave + tears.iter().map(scallop).sum::<f32>(), 1.0 - smooth(ENDS.0, ENDS.1, off))
        })
        .collect();
    let mut lips = lips.iter().cycle();
    extra
        .fill(|_, y, before| {
            let Some((lip, share)) = lips.next() else { return before };
            let rise = smooth(lip - CURTAIN_HIGH, *lip, y);
            before + thick * share * rise * rise * (1.0 - smooth(lip - 0.5 * LIP, lip + 0.5 * LIP, y))
        })
        .await;
}

impl Tear {
    async fn run(&self, extra: &mut Map) {
        let head = self.top + self.length - HEAD.0 * self.half;
        let reach = 0.5 * self.length + FOOT * self.half;
        let aside = FOOT * self.half + 2.0 * SWAY.0;
        let columns = extra.grid.columns;
        let mut rows = Rows::default();
        for (column, row, dx, dy) in near(extra.grid, self.x, self.top + 0.5 * self.length, reach) {
            if rows.begins(row) {
                pause().await;
            }
            if dx.abs() > aside {
                continue;
            }
            let y = dy + 0.5 * self.length + self.top;
            let dx = dx - SWAY.0 * cloud(self.sway, y / SWAY.1, 0.5);
            let here = self.tail(dx, y).max(self.head(dx, y - head));
            if let Some(value) = extra.values.get_mut(row * columns + column) {
                *value = value.max(here);
            }
        }
    }

    /// What ran down, growing on the way.
    fn tail(&self, dx: f32, y: f32) -> f32 {
        let share = (y - self.top) / self.length;
        let end = 1.0 - HEAD.0 * self.half / self.length;
        if share < 0.0 || share > end {
            return 0.0;
        }
        let thick = self.thick * (TAIL.0 + (TAIL.1 - TAIL.0) * share) * smooth(0.0, BEGINS, share);
        thick * dome(dx / (FOOT * TAIL_WIDTH * self.half))
    }

    /// The bulb at its end.
    fn head(&self, dx: f32, dy: f32) -> f32 {
        let long = if dy > 0.0 { HEAD.0 } else { HEAD.1 };
        self.thick * dome(libm::hypotf(dx / (FOOT * self.half), dy / (long * self.half)))
    }
}

/// A rounded top with a soft foot: 1 in the middle, 0 from 1 outward.
fn dome(off: f32) -> f32 {
    let part = (1.0 - off * off).max(0.0);
    part * part
}
