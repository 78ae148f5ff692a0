//! What of a lamp is seen at places of the ceiling, mirrored and blurred. Lengths in mm on the ceiling; eight places at
//! once, so that nothing branches at a place and a processor reckons several in one step.

mod bulb;
mod strip;
mod tubes;
mod window;

pub(crate) use bulb::bulb;
pub(crate) use strip::strip_at;
pub(crate) use tubes::tubes;
pub(crate) use window::window;

use wide::f32x8;

/// Lengths along the grain and across it.
pub(crate) type Pair = (f32x8, f32x8);

/// A lamp is never sharper than this.
pub(crate) const SHARPEST: f32 = 4.0;
/// How wide a milky film scatters.
const VEIL: f32 = 190.0;
/// Less of it is not seen.
const LEAST_VEIL: f32 = 0.002;
/// So many blurs beyond the edge of a lamp nothing of it is seen.
const FAR_BLURS: f32 = 3.2;

/// What is seen of a lamp by films that blur so much and of which a share is milky, where `seen` tells it for a blur.
fn veiled(blur: Pair, veil: f32x8, seen: impl Fn(Pair) -> f32x8) -> f32x8 {
    let sharp = seen(blur);
    if !milky(veil) {
        return sharp;
    }
    let wide = f32x8::splat(VEIL);
    sharp + (seen((blur.0 + wide, blur.1 + wide)) - sharp) * veil
}

/// Whether any of these films is milky enough to be seen.
fn milky(veil: f32x8) -> bool {
    veil.simd_gt(f32x8::splat(LEAST_VEIL)).any()
}

/// Whether any of these places lies nearer than that.
fn any_within(off: f32x8, reach: f32x8) -> bool {
    reach.simd_gt(off.abs()).any()
}
