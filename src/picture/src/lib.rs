//! Pictures that are computed, pixel by pixel, from a fixed seed: no photograph, no texture file, no browser.
//!
//! Lengths are in millimetres on the work, heights in micrometres, light is linear, and a picture of another size shows the
//! same board. Colours, densities and amplitudes were tuned by eye (common practice, no source) where no other source is
//! named: they serve the picture and are measured on nothing.

mod bench;
mod board;
mod dye;
mod fault;
mod frost;
pub mod instrument;
mod lamp;
mod light;
mod map;
mod mirrored;
mod named;
mod noise;
mod number;
mod outline;
mod panel;
mod pause;
mod scene;
mod scratch;
mod soak;
mod spray;
mod wood;

pub use board::{Band, Surface, draw};
pub use dye::Dye;
pub use fault::Fault;
pub use lamp::{Lamp, LampKind};
pub use map::Grid;
pub use outline::Outline;
pub use panel::{Dyes, Finish, Panel, Probe, Recipe, Severity, Work};
pub use pause::Turns;
pub use spray::{Coating, Layers, Look, Moment, Seen, Spot, Sweep, single};
pub use wood::{Bands, Face, Growth, Gum, Pores, Rays, Screen, Species};
