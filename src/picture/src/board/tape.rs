//! Masking tape: where a band's finish stops.

use crate::light::{Colour, screen};
use crate::noise::{Noise, hash};
use crate::number::{coordinate, whole};

/// Width of the tape, mm on the board.
const WIDTH: f32 = 5.4;
/// Width of its dark edges.
const EDGE: f32 = 0.4;
/// How far the tape's shadow falls.
const SHADOW: f32 = 1.1;
const SHADOW_DEPTH: f32 = 0.45;
/// Lean of a strip, mm across for each mm down, at most.
const LEAN: f32 = 0.025;
/// Depth of the torn ends.
const TEAR: f32 = 0.9;
const TEAR_LENGTH: f32 = 0.7;
/// Distance between the wrinkles of the paper.
const CREPE: f32 = 0.55;
const CREPE_DEPTH: f32 = 0.10;

const PAPER: [u8; 3] = [235, 221, 170];
const OUTLINE: [u8; 3] = [60, 52, 30];

/// A strip across one band.
pub(super) struct Tape {
    middle: f32,
    lean: f32,
    seed: f32,
    tall: f32,
    paper: Colour,
    outline: Colour,
}

impl Tape {
    /// A strip whose middle stands at `middle` on a band `tall` high, mm; `number` gives each band its own.
    pub(super) fn new(number: usize, middle: f32, tall: f32) -> Self {
        const TURNS: u32 = 256;
        let turn = hash(u32::try_from(number).unwrap_or(0), 77) % TURNS;
        let share = coordinate(usize::try_from(turn).unwrap_or(0)) / coordinate(255);
        Self {
            middle,
            lean: LEAN * (2.0 * share - 1.0),
            seed: 31.0 * share + coordinate(number),
            tall,
            paper: screen(PAPER),
            outline: screen(OUTLINE),
        }
    }

    /// The columns that the tape and its shadow can touch.
    pub(super) fn reach(&self) -> (f32, f32) {
        let half = 0.5 * WIDTH + LEAN * self.tall;
        (self.middle - half, self.middle + half + SHADOW)
    }

    /// What lies on the wood at a place of the band, mm: the tape's own colour, or a shadow that the wood is
    /// multiplied with.
    pub(super) fn at(&self, x: f32, y: f32, noise: &Noise) -> Cover {
        let off = x - self.middle - self.lean * (y - 0.5 * self.tall);
        let inside = 0.5 * WIDTH - off.abs();
        let tear = TEAR * (0.5 + 0.5 * noise.at(self.seed, x / TEAR_LENGTH)).abs();
        let in_length = (y - tear).min(self.tall - tear - y);
        if inside < 0.0 || in_length < 0.0 {
            let beyond = -inside;
            if off > 0.0 && beyond < SHADOW && in_length > 0.0 {
                return Cover::Shadow(1.0 - SHADOW_DEPTH * (1.0 - beyond / SHADOW));
            }
            return Cover::Nothing;
        }
        if inside < EDGE {
            return Cover::Tape(self.outline);
        }
        let wrinkle =
            noise.at(x / CREPE + self.seed, y / 9.0) + 0.5 * noise.at(x / 2.3, y / 14.0 + self.seed);
        Cover::Tape(self.paper.map(|part| part * (1.0 + CREPE_DEPTH * wrinkle)))
    }
}

/// What covers a place.
pub(super) enum Cover {
    Nothing,
    Shadow(f32),
    Tape(Colour),
}

/// Whether a dashed line down a band is inked at `y`, mm.
pub(super) fn dash(y: f32) -> bool {
    const DASH: f32 = 1.5;
    whole(y / DASH).is_multiple_of(2)
}
