//! Eight pixels beside each other, ready to be lit at once.

use super::Pixel;
use crate::map::Grid;
use crate::mirrored::{Pair, window};
use wide::f32x8;

pub(super) const LANES: usize = 8;
pub(super) type Lanes = [f32; LANES];

/// The tint of the daylight in the window.
const DAYLIGHT: [f32; 3] = [0.86, 0.95, 1.06];
/// The room without lamps, and how much darker it is at its far end: from where to where, mm on the ceiling.
const ROOM: f32 = 0.35;
const ROOM_FADES: f32 = 0.2;
const ROOM_NEAR: f32 = -300.0;
const ROOM_FAR: f32 = 500.0;

/// What each field is stands with [`Pixel`].
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Block {
    pub(super) body: [Lanes; 3],
    pub(super) still: [Lanes; 3],
    ceiling: [Lanes; 2],
    blur: [Lanes; 2],
    mirror: Lanes,
    veil: Lanes,
    tilt: Lanes,
    slope: [Lanes; 2],
}

impl Block {
    /// Takes the pixel of a lane.
    pub(super) fn take(&mut self, lane: usize, pixel: &Pixel) {
        let lay = |lanes: &mut Lanes, value: f32| {
            if let Some(slot) = lanes.get_mut(lane) {
                *slot = value;
            }
        };
        for (lanes, value) in self.body.iter_mut().zip(pixel.body) {
            lay(lanes, value);
        }
        for (lanes, value) in self.still.iter_mut().zip(pixel.still) {
            lay(lanes, value);
        }
        for (pair, (along, across)) in
            [(&mut self.ceiling, pixel.ceiling), (&mut self.blur, pixel.blur), (&mut self.slope, pixel.slope)]
        {
            let [first, second] = pair;
            lay(first, along);
            lay(second, across);
        }
        lay(&mut self.mirror, pixel.mirror);
        lay(&mut self.veil, pixel.veil);
        lay(&mut self.tilt, pixel.tilt);
    }

    /// Adds what mirrors the window and the room: it is there whatever the lamp.
    pub(super) fn mirror_room(&mut self, grid: Grid) {
        let ceiling = self.ceiling();
        let far =
            ((ceiling.0 - ROOM_NEAR) * (1.0 / (ROOM_FAR - ROOM_NEAR))).fast_clamp(f32x8::ZERO, f32x8::ONE);
        let room = ROOM * (1.0 - ROOM_FADES * far * far * (3.0 - 2.0 * far));
        let light = self.mirror() * (window(grid, ceiling, self.blur(), self.veil()) + room);
        for (still, tint) in self.still.iter_mut().zip(DAYLIGHT) {
            *still = (f32x8::from(*still) + light * tint).to_array();
        }
    }

    pub(super) fn ceiling(&self) -> Pair {
        pair(&self.ceiling)
    }

    pub(super) fn blur(&self) -> Pair {
        pair(&self.blur)
    }

    pub(super) fn slope(&self) -> Pair {
        pair(&self.slope)
    }

    pub(super) fn mirror(&self) -> f32x8 {
        self.mirror.into()
    }

    pub(super) fn veil(&self) -> f32x8 {
        self.veil.into()
    }

    pub(super) fn tilt(&self) -> f32x8 {
        self.tilt.into()
    }
}

fn pair([along, across]: &[Lanes; 2]) -> Pair {
    ((*along).into(), (*across).into())
}
