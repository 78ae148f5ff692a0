//! Build: which layers levelling may draw on.

use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Layers that a finish is made of.
    Layer {
        /// Pore filler.
        Filler = "layer-filler",
        /// Thin coat that evens stain or locks filler.
        Washcoat = "layer-washcoat",
        /// Seal coat.
        Sealer = "layer-sealer",
        /// Coats that carry the colour.
        Colour = "layer-colour",
        /// Shading passes at the edge.
        Shade = "layer-shade",
        /// The thin clear over the colour before the binding is scraped.
        ProtectiveClear = "layer-protective-clear",
        /// A coat of the clear build.
        Clear = "layer-clear",
        /// Stain in the wood.
        Stain = "layer-stain",
        /// Clear that levelling already took off.
        LevelledOff = "layer-levelled-off",
    }
}

/// Whether a layer counts as build over the colour, which levelling may draw on. The protective clear counts where the
/// shop lays one.
#[must_use]
pub fn counts_as_build(layer: Layer, sheet: &Sheet) -> Ruling<bool> {
    match layer {
        Layer::Clear => Ruling::by("film.only-clear-counts", true),
        Layer::ProtectiveClear => {
            Ruling::by("film.protective-clear-counts", sheet.is_on(Setting::ProtectiveClear))
        }
        Layer::Stain | Layer::Filler | Layer::Washcoat | Layer::Sealer => {
            Ruling::by("film.under-colour-is-no-build", false)
        }
        Layer::Colour | Layer::Shade => Ruling::by("film.colour-is-no-build", false),
        Layer::LevelledOff => Ruling::by("film.left-is-build-less-taken", false),
    }
}
