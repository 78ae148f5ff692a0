//! Mixing: what a ratio and a percentage mean, batches by volume and by weight, cups and viscosity, solids after thinning,
//! the washcoat band, retarder, hardener and pot life, VOC and HAP as applied, and the order from can to gun.
//!
//! "Percent thinned" is percent of the unthinned material; retarder is percent of the whole mix. Volumes are taken to
//! add up.

mod batch;
mod cup;
mod cup_move;
mod hap;
mod mix_order;
mod pot_life;
mod retarder;
mod strainer;
mod thinning;
mod two_part;
mod viscosity;
mod voc;
mod washcoat;
mod weighing;

pub use batch::{batch, by_parts, mix_by_parts};
pub use cup::Cup;
pub use cup_move::{CupMove, after_the_cup, beyond_range};
pub use hap::{AddedThinner, Finishing, HapVerdict, average, for_solids, within_limit};
pub use mix_order::{MixStep, mix_order, mix_steps};
pub use pot_life::{MixUse, PotKind, mix_use, pot_life_in};
pub use retarder::{RetarderDose, retarder_dose, retarder_most};
pub use strainer::{Strained, StrainerMove, strainer};
pub use thinning::{Thinning, clear_thinning, thinned_solids, thinner_for};
pub use two_part::{HardenerDose, hardener_dose, hardener_for};
pub use viscosity::{
    Reading, at_temperature, cup_for, reading, steepness, stop_watch, thickness_of, time_for,
};
pub use voc::{
    GRAMS_A_LITRE_PER_POUND_A_GALLON, Litre, Makeup, VocChange, VocFigure, change_by_thinning,
    figure_for_limit, grams_a_litre, thinner_of, voc_of_coating, voc_of_material, voc_of_solids,
};
pub use washcoat::{Washcoat, thin_to_solids, washcoat};
pub use weighing::{grams, volume_of, weight};

use crate::quantity::{Fraction, Measure, Millilitres, PERCENT_A_WHOLE, Unit};

/// A volume as shown.
#[must_use]
pub const fn volume(volume: Millilitres) -> Measure {
    Measure::new(volume.get(), Unit::Millilitre, 0)
}

/// A share as shown, in per cent.
#[must_use]
pub fn percent(share: Fraction) -> Measure {
    Measure::new(share.get() * PERCENT_A_WHOLE, Unit::Percent, 1)
}

/// A fraction from per cent, held within 0 to 100.
#[must_use]
pub fn fraction(percent: f64) -> Fraction {
    Fraction::saturating(percent / PERCENT_A_WHOLE)
}
