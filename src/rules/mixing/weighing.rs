//! Weighing a mix: volumes turn into grams by density, part by part.

use crate::quantity::{Density, Grams, Measure, Millilitres, Unit};
use crate::rules::verdict::Ruling;

/// A mass as shown.
#[must_use]
pub const fn grams(mass: Grams) -> Measure {
    Measure::new(mass.get(), Unit::Gram, 1)
}

/// Grams of so much of a material: volume × density.
#[must_use]
pub fn weight(volume: Millilitres, density: Density) -> Ruling<Grams> {
    let mass = Grams::saturating(volume.get() * density.get());
    Ruling::by("mixing.weight-by-density", mass)
        .step("density", "", Measure::new(density.get(), Unit::KilogramALitre, 2))
        .step("weight", "volume × density", grams(mass))
        .given(&[
            ("volume", super::volume(volume)),
            ("density", Measure::new(density.get(), Unit::KilogramALitre, 2)),
        ])
}

/// Volume of so many grams of a material.
#[must_use]
pub fn volume_of(mass: Grams, density: Density) -> Millilitres {
    Millilitres::saturating(mass.get() / density.get())
}
