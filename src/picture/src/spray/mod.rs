//! A face while it is sprayed: what a moving spot lays cell by cell, and how the wet film looks meanwhile. It is done anew
//! for each frame that a hand sprays.

mod layers;
mod look;
mod spot;
mod sweep;

pub use layers::Layers;
pub use look::{Coating, Look, Moment, Seen};
pub use spot::Spot;
pub use sweep::Sweep;

/// A number in the single precision of film and tables.
#[allow(clippy::cast_possible_truncation, reason = "film and tables are single precision")]
#[must_use]
pub const fn single(value: f64) -> f32 {
    value as f32
}
