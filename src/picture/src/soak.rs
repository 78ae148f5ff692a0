//! What soaks into wood: dye, and whatever wets it.

use crate::light::Colour;

/// Wet wood: light is turned back inside the film and passes the wood again (Saunderson's form; the share by eye).
const INNER: f32 = 0.36;
const WET_GAIN: f32 = 1.13;
/// No wood is darker than this.
const DARKEST: f32 = 1.0e-3;

/// What a film on it, or a liquid in it, makes of the light that dry wood sends back.
pub(crate) fn wet(dry: f32) -> f32 {
    WET_GAIN * (1.0 - INNER) * dry / (1.0 - INNER * dry)
}

/// Wood with dye among its fibres, by Kubelka and Munk for a thick layer of one scatter: it darkens pale wood much and dark
/// wood little, so that brown wood stays brown. A unit of build adds `dye` to the ratio of absorption to scatter.
pub(crate) fn dyed(wood: Colour, dye: Colour, build: f32) -> Colour {
    if build <= 0.0 {
        return wood;
    }
    let part = |wood: f32, dye: f32| {
        let wood = wood.clamp(DARKEST, 1.0);
        let ratio = (1.0 - wood) * (1.0 - wood) / (2.0 * wood) + dye * build;
        1.0 / (1.0 + ratio + (ratio * (ratio + 2.0)).sqrt())
    };
    [part(wood[0], dye[0]), part(wood[1], dye[1]), part(wood[2], dye[2])]
}
