//! Whole numbers out of fractions, in one place.

/// The whole part of a number known to be small, never below zero.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the whole part is what is wanted; the cast holds at the ends of the range"
)]
pub(super) fn whole(value: f32) -> usize {
    value as usize
}

/// Where a coordinate of any sign falls in a table that repeats every `side` entries, a power of two: the entry and the way to the next.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "two's complement wraps a negative entry into the table"
)]
pub(super) fn wrapped(value: f32, side: usize) -> (usize, f32) {
    let floor = value.floor();
    ((floor as i32 as usize) & (side - 1), value - floor)
}

/// A share of one as a byte.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held within a byte before the cast"
)]
pub(super) fn byte(share: f32) -> u8 {
    (share.clamp(0.0, 1.0) * f32::from(u8::MAX) + 0.5) as u8
}

/// A count of pixels as a coordinate; pictures are far smaller than the largest exact one.
#[expect(clippy::cast_precision_loss, reason = "pictures have fewer than 2^24 pixels a side")]
pub(super) fn coordinate(pixels: usize) -> f32 {
    pixels as f32
}

/// 0 below `from`, 1 above `to`, smooth between.
pub(super) fn smooth(from: f32, to: f32, value: f32) -> f32 {
    let t = ((value - from) / (to - from)).clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}

/// From one value to another by a share.
pub(super) fn mix(from: f32, to: f32, share: f32) -> f32 {
    from + (to - from) * share
}
