//! Pictures that are computed, pixel by pixel, from a fixed seed: no photograph, no texture file, no browser.
//!
//! Lengths are in millimetres on the work, light is linear, and a picture of another size shows the same board.
//! Colours, densities and amplitudes were tuned by eye (common practice, no source): they serve the picture and are
//! measured on nothing.

mod board;
mod light;
mod noise;
mod number;
mod surface;
mod tape;
mod wood;

pub use board::{Band, draw};
pub use surface::Surface;
