//! Light: linear colour in and out of the screen's coding, dye that swallows it, a strip lamp mirrored in a film.

use crate::number::{byte, coordinate, mix, whole};

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
/// Brightest light that the coding table holds.
const CODE_END: f32 = 4.0;
/// Largest optical depth that the dye table holds.
const DEPTH_END: f32 = 8.0;
/// Where the error function is one for the eye.
const ERF_END: f32 = 3.0;

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

/// Tables of the curves that every pixel needs.
#[derive(Debug, Clone)]
pub(crate) struct Light {
    code: Vec<u8>,
    pass: Vec<f32>,
    erf: Vec<f32>,
}

impl Light {
    pub(crate) fn new() -> Self {
        let table = |end: f32| (0..=ENTRIES).map(move |n| coordinate(n) / coordinate(ENTRIES) * end);
        Self {
            // Spaced by the square root, since dark colours need the finer steps.
            code: table(1.0).map(|root| encode(root * root * CODE_END)).collect(),
            pass: table(DEPTH_END).map(|depth| libm::expf(-depth)).collect(),
            erf: table(ERF_END).map(libm::erff).collect(),
        }
    }

    /// The byte that shows a brightness.
    pub(crate) fn byte(&self, value: f32) -> u8 {
        let root = (value.clamp(0.0, CODE_END) / CODE_END).sqrt();
        self.code.get(whole(root * coordinate(ENTRIES) + 0.5)).copied().unwrap_or(u8::MAX)
    }

    /// The share of light that comes through an optical depth, Beer and Lambert's law.
    pub(crate) fn pass(&self, depth: f32) -> f32 {
        read(&self.pass, depth.max(0.0) / DEPTH_END)
    }

    /// How much of a strip of half-width `half` a point at distance `off` from its middle sees, when the mirror blurs by
    /// `blur` (all in one unit): a box convolved with a normal curve.
    pub(crate) fn strip(&self, off: f32, half: f32, blur: f32) -> f32 {
        let scale = core::f32::consts::FRAC_1_SQRT_2 / blur;
        // Far outside and far inside the table has ended, and most of a picture is one of both.
        let beyond = (off.abs() - half) * scale;
        if beyond >= ERF_END {
            return 0.0;
        }
        if beyond <= -ERF_END {
            return self.erf.last().copied().unwrap_or(1.0);
        }
        0.5 * (self.erf((off + half) * scale) - self.erf((off - half) * scale))
    }

    /// How much of a large lamp a point sees that lies `beyond` its edge, when the mirror blurs by `blur`.
    pub(crate) fn inside(&self, beyond: f32, blur: f32) -> f32 {
        0.5 * (1.0 - self.erf(beyond * core::f32::consts::FRAC_1_SQRT_2 / blur))
    }

    fn erf(&self, value: f32) -> f32 {
        read(&self.erf, value.abs() / ERF_END).copysign(value)
    }
}

/// A table read between its entries; beyond its end, its last entry.
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
