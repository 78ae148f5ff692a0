//! Solids by volume from solids by weight: solids are mostly heavier than the solvent, so their share of the volume is
//! smaller.

use crate::quantity::{Density, Fraction};
use crate::rules::mixing::percent;
use crate::rules::verdict::Ruling;

/// Volume solids from weight solids and the densities of solids and solvent: `(w/ds) / (w/ds + (1 - w)/dv)`, a balance of
/// volumes that takes them to add up.
#[must_use]
pub fn volume_solids(weight: Fraction, solids: Density, solvent: Density) -> Ruling<Fraction> {
    let (dry, wet) = (weight.get() / solids.get(), (1.0 - weight.get()) / solvent.get());
    let volume = Fraction::saturating(dry / (dry + wet));
    Ruling::by("film.volume-from-weight-solids", volume).step("solids-by-weight", "", percent(weight)).step(
        "solids-by-volume",
        "",
        percent(volume),
    )
}
