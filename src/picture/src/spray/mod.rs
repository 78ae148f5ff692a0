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
