//! Light: linear colour in and out of the screen's coding, dye that swallows it.

use crate::number::{byte, coordinate, mix, whole};
use std::sync::LazyLock;

/// Linear red, green and blue; 1 is diffuse white.
pub(crate) type Colour = [f32; 3];

/// sRGB decoding and encoding, IEC 61966-2-1.
const SRGB_KNEE: f32 = 0.04045;
const SRGB_SLOPE: f32 = 12.92;
const SRGB_OFFSET: f32 = 0.055;
const SRGB_POWER: f32 = 2.4;

/// Up to here brightness is shown as it is, above it rolls off, so that wood keeps its colour and lamps do not clip.
const TONE_KNEE: f32 = 0.6;

const ENTRIES: usize = 2048;
/// The coding table has one entry for all brightness whose floating-point numbers begin alike: sign, exponent and eight bits
/// of the fraction, 0.4 %, a fifth of a step of the screen. All brightness is raised by 1/4096 before it is looked up, so that
/// the table begins at black; it ends at 4.
const CODE_BITS: u32 = 15;
const CODE_MIDDLE: u32 = 1 << (CODE_BITS - 1);
const RAISED: f32 = 1.0 / 4096.0;
const CODE_FIRST: u32 = RAISED.to_bits() >> CODE_BITS;
const CODES: u32 = (4.0_f32.to_bits() >> CODE_BITS) - CODE_FIRST;
/// Largest optical depth that the dye table holds.
const DEPTH_END: f32 = 8.0;

/// Linear colour from the three bytes of a screen colour.
pub(crate) fn screen(bytes: [u8; 3]) -> Colour {
    bytes.map(|value| {
        let share = f32::from(value) / f32::from(u8::MAX);
        if share <= SRGB_KNEE {
            share / SRGB_SLOPE
        } else {
            libm::powf((share + SRGB_OFFSET) / (1.0 + SRGB_OFFSET), SRGB_POWER)
        }
    })
}

/// Tables of light, the same for every picture.
pub(crate) static LIGHT: LazyLock<Light> = LazyLock::new(Light::new);

/// Tables of the curves that every pixel needs.
#[derive(Debug, Clone)]
pub(crate) struct Light {
    code: Vec<u8>,
    pass: Vec<f32>,
}

impl Light {
    pub(crate) fn new() -> Self {
        let table = |end: f32| (0..=ENTRIES).map(move |n| coordinate(n) / coordinate(ENTRIES) * end);
        Self {
            code: (0..CODES)
                .map(|code| encode(f32::from_bits(((code + CODE_FIRST) << CODE_BITS) | CODE_MIDDLE) - RAISED))
                .collect(),
            pass: table(DEPTH_END).map(|depth| libm::expf(-depth)).collect(),
        }
    }

    /// The byte that shows a brightness, which is not below 0.
    pub(crate) fn byte(&self, value: f32) -> u8 {
        let code = ((value + RAISED).to_bits() >> CODE_BITS).wrapping_sub(CODE_FIRST);
        usize::try_from(code).ok().and_then(|code| self.code.get(code)).copied().unwrap_or(u8::MAX)
    }

    /// The share of light that comes through an optical depth, Beer and Lambert's law.
    pub(crate) fn pass(&self, depth: f32) -> f32 {
        read(&self.pass, depth.max(0.0) / DEPTH_END)
    }
}

/// A table read between its entries; beyond its end, its last entry.
#[inline]
fn read(table: &[f32], share: f32) -> f32 {
    let place = share.min(1.0) * coordinate(ENTRIES);
    let entry = whole(place);
    let at = |n: usize| table.get(n.min(ENTRIES)).copied().unwrap_or(0.0);
    mix(at(entry), at(entry + 1), place - coordinate(entry))
}

fn encode(linear: f32) -> u8 {
    let shown = if linear <= TONE_KNEE {
        linear
    } else {
        let room = 1.0 - TONE_KNEE;
        TONE_KNEE + room * (1.0 - libm::expf(-(linear - TONE_KNEE) / room))
    };
    byte(if shown <= SRGB_KNEE / SRGB_SLOPE {
        shown * SRGB_SLOPE
    } else {
        (1.0 + SRGB_OFFSET) * libm::powf(shown, 1.0 / SRGB_POWER) - SRGB_OFFSET
    })
}
