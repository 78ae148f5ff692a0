//! Wood: pores, filler, trouble that a species brings, moisture, seasonal movement.

mod demand;
mod moisture;
mod movement;
mod pores;

pub use demand::{Demand, FirstCoat, demands};
pub use moisture::{
    Fit, MoistureAction, corrected_reading, fit_to_finish, humidity_for, moisture_action, moisture_content,
};
pub use movement::{Movement, SATURATION, movement};
pub use pores::{Cut, FillerNeed, PoreClass, PoreSize, Porosity, Wood, WoodTrouble, filler, pore_class};
