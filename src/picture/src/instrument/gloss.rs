//! What a film mirrors of the lamp: a tube in a tray, aslant over the work. Lengths in mm on the work.

use super::blank::{Cell, FALLS_OVER};
use super::inlay::facing;
use super::look::PartLook;
use super::path::Point;
use super::states::Sheen;
use crate::mirrored::strip_at;
use crate::noise::soft;
use crate::number::smooth;

/// Where the tube is mirrored: a point of it as a share of the view, and the unit vector square to it.
const THROUGH: Point = (0.40, 0.60);
const SQUARE: Point = (0.86, 0.51);
/// Half of the tube and of its tray, and their light with diffuse white as 1.
const TUBE_HALF: f32 = 4.2;
const TUBE_LIGHT: f32 = 15.0;
const TRAY_HALF: f32 = 14.0;
const TRAY_LIGHT: f32 = 1.6;
const ROOM_LIGHT: f32 = 0.30;
/// Share that a film sends back, near to upright.
const SENT_BACK: f32 = 0.042;
/// Beyond so many blurs nothing of a lamp is seen.
const REACH: f32 = 3.2;
/// How far the tube swerves where a face falls to its rim, mm, for a bow of 1.
const SWERVES: f32 = 42.0;
/// A rounded arris throws the lamp: how strongly, and where, mm inside the edge.
const ARRIS: f32 = 0.42;
const ARRIS_AT: (f32, f32) = (1.4, 0.9);
/// Film of this thickness mirrors as a closed one, micrometres: a washcoat does not.
const CLOSED_SEAL: f32 = 22.0;
const CLOSED: f32 = 12.0;

/// How a film mirrors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Gloss {
    /// Share of the mirrored light that is not scattered everywhere.
    clear: f32,
    /// How far the edge of the lamp is blurred.
    blur: f32,
    /// How far unevenness moves it, and over what length.
    wave: f32,
    length: f32,
    /// Share of a grey veil of fine scratches.
    pub(super) veil: f32,
}

impl Gloss {
    /// That of a look; `None` of bare wood.
    pub(super) fn of(look: &PartLook) -> Option<Self> {
        if look.film_um() <= 0.0 {
            return None;
        }
        let gloss = |clear, blur, wave, length, veil| Self { clear, blur, wave, length, veil };
        Some(match look.sheen {
            Sheen::Buffed => gloss(1.0, 0.35, 0.5, 60.0, 0.0),
            Sheen::Levelled => gloss(0.36, 26.0, 0.0, 10.0, 0.085),
            Sheen::Scuffed => gloss(0.24, 30.0, 0.0, 10.0, 0.06),
            Sheen::Sprayed if look.clear_um > 0.0 => {
                let closed = smooth(0.0, CLOSED, look.clear_um);
                gloss(0.5 + 0.45 * closed, 6.5 - 4.5 * closed, 1.5, 24.0, 0.0)
            }
            Sheen::Sprayed if look.colour.is_some() => gloss(0.34, 10.0, 1.6, 18.0, 0.0),
            Sheen::Sprayed => gloss(0.27 * smooth(0.0, CLOSED_SEAL, look.seal_um), 22.0, 3.0, 18.0, 0.0),
        })
    }

    /// Share of light that it keeps from what lies below.
    pub(super) fn sent_back(&self) -> f32 {
        SENT_BACK * self.clear
    }

    /// The light that it mirrors at a pixel of a face so bowed.
    pub(super) fn mirrored(&self, seed: u32, size: Point, cell: &Cell, bow: f32) -> f32 {
        let (x, y) = cell.at;
        let falls = (1.0 - cell.rim.max(0.0) / FALLS_OVER).max(0.0);
        let across = cell.fall.0 * SQUARE.0 + cell.fall.1 * SQUARE.1;
        let off = (x - THROUGH.0 * size.0) * SQUARE.0
            + (y - THROUGH.1 * size.1) * SQUARE.1
            + SWERVES * bow * falls * falls * across;
        let facing = facing(cell.inward);
        let beside = (cell.inside - ARRIS_AT.0) / ARRIS_AT.1;
        let arris = if beside.abs() < REACH && facing > 0.0 {
            ARRIS * self.clear * facing * facing * libm::expf(-beside * beside) / (1.0 + 0.1 * self.blur)
        } else {
            0.0
        };
        let reach = TRAY_HALF + REACH * self.blur + 2.5 * self.wave;
        let lamp = if off.abs() < reach {
            let waved = off + self.wave * soft(seed, self.length, x, y);
            TRAY_LIGHT * strip_at(waved, TRAY_HALF, self.blur.max(1.0))
                + TUBE_LIGHT * strip_at(waved, TUBE_HALF, self.blur)
        } else {
            0.0
        };
        self.sent_back() * (ROOM_LIGHT + lamp) + arris
    }
}
