//! A cut through the film of a part, as it was laid: layers from the wood up, to be drawn.

use crate::process::lying::Lying;
use crate::rules::sequence::operation::Operation;
use crate::terms;

terms! {
    /// What a layer of a film is. Text: `walk.cut.<slug>`.
    LayerKind {
        /// Washcoat and seal coats.
        Seal = "seal",
        /// Colour in the film, on all of the face or from its edge.
        Colour = "colour",
        /// Clear coats.
        Clear = "clear",
    }
}

impl LayerKind {
    const fn of(operation: Operation) -> Option<Self> {
        match operation {
            Operation::Washcoat | Operation::Seal => Some(Self::Seal),
            Operation::Colour | Operation::Shade => Some(Self::Colour),
            Operation::Protect | Operation::Clear => Some(Self::Clear),
            _ => None,
        }
    }
}

/// A layer of a film.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layer {
    /// What it is.
    pub kind: LayerKind,
    /// Its dry thickness, micrometres.
    pub um: f64,
    /// Its coats.
    pub coats: u32,
}

/// The layers of a film from the wood up, in the order in which they were laid. What levelling took is gone from the
/// uppermost clear.
#[must_use]
pub fn layers(lying: &Lying) -> Vec<Layer> {
    let mut layers: Vec<Layer> = Vec::new();
    for laid in &lying.laid {
        let Some(kind) = LayerKind::of(laid.operation) else { continue };
        let (um, coats) = (laid.dry.get(), laid.coats);
        match layers.last_mut().filter(|last| last.kind == kind) {
            Some(last) => (last.um, last.coats) = (last.um + um, last.coats + coats),
            None => layers.push(Layer { kind, um, coats }),
        }
    }
    let clears = || layers.iter().filter(|layer| layer.kind == LayerKind::Clear);
    let mut taken = clears().map(|layer| layer.um).sum::<f64>() - lying.clear.get();
    for clear in layers.iter_mut().rev().filter(|layer| layer.kind == LayerKind::Clear) {
        let off = taken.clamp(0.0, clear.um);
        (clear.um, taken) = (clear.um - off, taken - off);
    }
    layers.retain(|layer| layer.um > 0.0);
    layers
}
