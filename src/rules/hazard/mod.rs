//! Hazards of the room: fire, what is breathed, what is worn, what is poured, stored and thrown away, the buffing wheel.
//!
//! Training only: local code, the data sheet and licensed practice overrule every answer. Where something is not
//! known, the answer is the cautious one or that it cannot be judged, never that it may go on.

pub mod before_gun;
pub mod booth_air;
pub mod booth_change;
pub mod booth_trouble;
pub mod cartridge;
pub mod clearing;
pub mod data_sheet;
pub mod dilution;
pub mod dust;
pub mod exposure;
pub mod isocyanate;
pub mod mask_care;
pub mod mask_fit;
pub mod mask_kind;
pub mod pouring;
pub mod residues;
pub mod respirator;
pub mod solvent;
pub mod sparks;
pub mod spell;
pub mod store;
pub mod surroundings;
pub mod wheel;

pub use before_gun::{Cartridge, Gauge, GunMove, Mask, before_gun};
pub use booth_change::{BoothMove, BoothState, Sprayed, booth_change};
pub use pouring::{Bonding, PourMove, Vessel, before_pour};
pub use residues::{Place, Residue, place_for};
pub use solvent::Solvent;
pub use spell::{CupState, SpellStep, spell_order, spell_steps};
pub use wheel::{AtWheel, FilmFeel, WheelEdge, WheelFix, WheelHalf, WheelNut, Worn, wheel_fix};
