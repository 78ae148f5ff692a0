//! Whole numbers out of fractions, in one place.

/// The whole part of a number known to be small, never below zero.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the whole part is what is wanted; the cast holds at the ends of the range"
)]
pub(crate) fn whole(value: f32) -> usize {
    value as usize
}

/// Where a coordinate of any sign falls in a table that repeats every `side` entries, a power of two: the entry and the way to the next.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "two's complement wraps a negative entry into the table"
)]
pub(crate) fn wrapped(value: f32, side: usize) -> (usize, f32) {
    let floor = value.floor();
    ((floor as i32 as usize) & (side - 1), value - floor)
}

/// A share of one as a byte.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held within a byte before the cast"
)]
pub(crate) fn byte(share: f32) -> u8 {
    (share.clamp(0.0, 1.0) * f32::from(u8::MAX) + 0.5) as u8
}

/// A count of pixels as a coordinate; pictures are far smaller than the largest exact one.
#[expect(clippy::cast_precision_loss, reason = "pictures have fewer than 2^24 pixels a side")]
pub(crate) fn coordinate(pixels: usize) -> f32 {
    pixels as f32
}

/// 0 below `from`, 1 above `to`, smooth between.
pub(crate) fn smooth(from: f32, to: f32, value: f32) -> f32 {
    let t = ((value - from) / (to - from)).clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}

/// From one value to another by a share.
pub(crate) fn mix(from: f32, to: f32, share: f32) -> f32 {
    from + (to - from) * share
}

/// The lattice cell that a coordinate of any sign falls in, and the way into it.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "two's complement names every cell, and cells are only hashed"
)]
pub(crate) fn cell(value: f32) -> (u32, f32) {
    let floor = value.floor();
    (floor as i32 as u32, value - floor)
}

/// The nearest whole number of pixels at or below a coordinate, and the way to the next; `None` left of the first.
pub(crate) fn pixel(value: f32) -> Option<(usize, f32)> {
    (value >= 0.0).then(|| {
        let floor = value.floor();
        (whole(floor), value - floor)
    })
}

/// The length of two parts at right angles. A root is rounded correctly on every machine, and where the processor takes it,
/// in no time.
pub(crate) fn hypotenuse(a: f32, b: f32) -> f32 {
    (a * a + b * b).sqrt()
}
