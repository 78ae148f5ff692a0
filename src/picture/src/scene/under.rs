//! A panel under a lamp: what follows the lamp's every move.

use super::Lit;
use super::block::{Block, LANES, Lanes};
use crate::bench::ceiling;
use crate::frost::{Frosted, RAKING};
use crate::lamp::{Lamp, LampKind};
use crate::mirrored::{Pair, bulb, tubes};
use crate::scratch::{self, Shine};
use wide::f32x8;

/// Fibre that stands upright is lit as from so far to one side; a lamp that is moved so far adds as much to it, mm.
const UPRIGHT: f32 = 0.8;
const LEANS: f32 = 1.1;
const LEANS_AT: f32 = 60.0;
/// Of the light that falls on what lies below, what comes from the whole room and what from right above, for tubes and for a
/// bulb; its half width there, mm on the ceiling.
const TUBES_FALL: (f32, f32) = (0.92, 0.10);
const BULB_FALLS: (f32, f32) = (0.80, 0.22);
const GLOW: f32 = 300.0;
/// Elevation of a raking lamp over the bench, its tangent, its light, and how dark and how bright a slope gets: film is
/// smoother than bare wood, and the lamp is laid lower to see what is on it.
const RAKE: f32 = 0.14;
const RAKE_FILM: f32 = 0.05;
const RAKE_LIGHT: f32 = 0.9;
const RAKE_RANGE: (f32, f32) = (0.05, 3.0);

/// A lamp as every pixel sees it: where it is mirrored, how far it leans to one side, and what scratches send of it.
struct Shone<'a> {
    aim: (f32, f32),
    lean: f32,
    scratched: &'a [f32],
}

impl Lit {
    /// The panel under a lamp.
    pub(crate) fn under(&self, lamp: Lamp, pixels: &mut Vec<u8>) {
        pixels.resize(4 * self.grid.len(), u8::MAX);
        let aim = ceiling(self.grid, lamp.x, lamp.y, (0.0, 0.0));
        let turn = lamp.turn.to_radians();
        let (sine, cosine) = (libm::sinf(turn), libm::cosf(turn));
        let lean = LEANS * (lamp.x - 0.5 * self.grid.width()) / LEANS_AT;
        let scratched = match lamp.kind {
            LampKind::Tubes => scratch::lit(&self.scratches, self.grid, Shine::Tube(aim, (cosine, sine))),
            LampKind::Point => scratch::lit(&self.scratches, self.grid, Shine::Bulb(aim)),
            LampKind::Raking => Vec::new(),
        };
        let shone = Shone { aim, lean, scratched: &scratched };
        match lamp.kind {
            LampKind::Tubes => self.lay(
                pixels,
                &shone,
                |pore, u| pore.seen(u),
                |block, (u, v)| {
                    let off = (u * cosine + v * sine, v * cosine - u * sine);
                    // What one tube is blurred by is the blur square to it.
                    let (along, across) = block.blur();
                    let (along, across) = (along * sine, across * cosine);
                    let blur = (along * along + across * across).sqrt();
                    (
                        mirrored(block, || tubes(self.light, off, blur, block.veil())),
                        falls(TUBES_FALL, (u, v)),
                    )
                },
            ),
            LampKind::Point => self.lay(
                pixels,
                &shone,
                |pore, u| pore.seen(u),
                |block, off| {
                    let bulb = || bulb(off, block.blur(), block.veil());
                    (mirrored(block, bulb), falls(BULB_FALLS, off))
                },
            ),
            LampKind::Raking => {
                let rake = if self.film { RAKE_FILM } else { RAKE };
                let (toward, across) = (cosine / rake, sine / rake);
                let [darkest, brightest] = [RAKE_RANGE.0, RAKE_RANGE.1].map(f32x8::splat);
                self.lay(
                    pixels,
                    &shone,
                    |pore, _| pore.seen(RAKING * cosine),
                    |block, _| {
                        let (x, y) = block.slope();
                        let lit = (1.0 + x * toward + y * across).fast_clamp(darkest, brightest);
                        (f32x8::ZERO, RAKE_LIGHT * lit)
                    },
                );
            }
        }
    }

    /// Lays the light of a lamp on every pixel. `lit` gives what of the lamp is mirrored in a block and how much of it falls
    /// on what lies below, `aired` how far air in a pore is seen; both get the way from the lamp, mm. Each lamp has its own
    /// loop, so that none asks at every pixel which one it is.
    fn lay(
        &self,
        pixels: &mut [u8],
        shone: &Shone<'_>,
        aired: impl Fn(&Frosted, f32) -> f32,
        lit: impl Fn(&Block, Pair) -> (f32x8, f32x8),
    ) {
        let mut frosted = self.frosted.iter().peekable();
        let mut scratched = shone.scratched.chunks(LANES);
        let blocks = self.blocks.iter().zip(pixels.chunks_mut(4 * LANES));
        for (end, (block, bytes)) in (1..).map(|block| block * LANES).zip(blocks) {
            let (x, y) = block.ceiling();
            let (u, v) = (x - shone.aim.0, y - shone.aim.1);
            let (mut mirrored, falls) = lit(block, (u, v));
            if let Some(scratched) = scratched.next() {
                mirrored += lanes(scratched);
            }
            let turned = block.tilt() * (shone.lean + UPRIGHT);
            // Fibre that leans away from the lamp grows darker, never black.
            let (toward, away) = (turned.fast_max(f32x8::ZERO), (-turned).fast_max(f32x8::ZERO));
            let falls = falls * (1.0 + toward) / (1.0 + away);
            let mut body = block.body;
            while let Some(pore) = frosted.next_if(|pore| pore.frost.place < end) {
                let lane = pore.frost.place % LANES;
                let seen = aired(pore, u.as_array().get(lane).copied().unwrap_or(0.0));
                for (part, more) in body.iter_mut().filter_map(|part| part.get_mut(lane)).zip(pore.more) {
                    *part += seen * more;
                }
            }
            let [red, green, blue] = [0, 1, 2].map(|part: usize| {
                let of = |parts: &[Lanes; 3]| f32x8::from(parts.get(part).copied().unwrap_or_default());
                (of(&body) * falls + of(&block.still) + mirrored).fast_max(f32x8::ZERO).to_array()
            });
            for (slots, ((red, green), blue)) in
                bytes.chunks_exact_mut(4).zip(red.into_iter().zip(green).zip(blue))
            {
                let light = &self.light;
                slots.copy_from_slice(&[light.byte(red), light.byte(green), light.byte(blue), u8::MAX]);
            }
        }
    }
}

/// What a block mirrors of a lamp; what mirrors nothing does not ask for it.
fn mirrored(block: &Block, lamp: impl FnOnce() -> f32x8) -> f32x8 {
    let mirror = block.mirror();
    if mirror.simd_gt(f32x8::ZERO).any() { mirror * lamp() } else { f32x8::ZERO }
}

/// Light under a lamp falls off softly from below it.
fn falls((room, below): (f32, f32), (u, v): Pair) -> f32x8 {
    room + below / (1.0 + (u * u + v * v) * (1.0 / (GLOW * GLOW)))
}

/// Values beside each other; none is nothing.
fn lanes(values: &[f32]) -> f32x8 {
    let mut lanes = Lanes::default();
    for (lane, value) in lanes.iter_mut().zip(values) {
        *lane = *value;
    }
    lanes.into()
}
