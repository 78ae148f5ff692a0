//! Mixing: what a ratio and a percentage mean, batches, solids after thinning, the washcoat band, retarder, pot life,
//! and the order of getting a mix into the gun.
//!
//! "Percent thinned" is percent of the unthinned material; retarder is percent of the whole mix. Volumes are taken to
//! add up.

mod batch;
mod mix_order;
mod pot_life;
mod retarder;
mod thinning;
mod washcoat;

pub use batch::{batch, by_parts};
pub use mix_order::{MixStep, mix_order, mix_steps};
pub use pot_life::{MixUse, PotKind, mix_use};
pub use retarder::{RetarderDose, retarder_dose, retarder_most};
pub use thinning::{Thinning, clear_thinning, thinned_solids, thinner_for};
pub use washcoat::{Washcoat, thin_to_solids, washcoat};

use crate::quantity::{Fraction, Measure, Millilitres, Unit};

/// Parts of a whole in a hundred.
const HUNDRED: f64 = 100.0;

/// A volume as shown.
#[must_use]
pub const fn volume(volume: Millilitres) -> Measure {
    Measure::new(volume.get(), Unit::Millilitre, 0)
}

/// A share as shown, in per cent.
#[must_use]
pub fn percent(share: Fraction) -> Measure {
    Measure::new(share.get() * HUNDRED, Unit::Percent, 1)
}

/// A fraction from per cent, held within 0 to 100.
#[must_use]
pub fn fraction(percent: f64) -> Fraction {
    Fraction::saturating(percent / HUNDRED)
}
