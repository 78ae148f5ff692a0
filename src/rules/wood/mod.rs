//! Wood: pores, filler, trouble that a species brings, moisture, seasonal movement.

mod demand;
mod moisture;
mod movement;
mod pores;

pub use demand::{Demand, FirstCoat, demands};
pub use moisture::{Fit, corrected_reading, fit_to_finish, humidity_for, moisture_content};
pub use movement::{Movement, SATURATION, movement};
pub use pores::{Cut, FillerNeed, PoreSize, Porosity, Wood, WoodTrouble, filler};
