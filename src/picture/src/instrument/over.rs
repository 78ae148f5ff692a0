//! Colour that lies over the wood: dye in the film, shade from the edge, pigment.

use super::blank::Cell;
use super::look::{Paint, PartLook};
use crate::dye::{hidden, passed, times};
use crate::light::{Colour, Light, screen};
use crate::number::{coordinate, whole};
use crate::panel::shaded;
use crate::wood::blend;

/// The shade of panels ends this far from their edge, mm.
const PANEL_SHADE: f32 = 27.0;
/// A shade is known so many times a mm.
const A_MM: f32 = 5.0;

/// The colours of a film.
pub(super) struct Over {
    /// Share of light that comes back through what is the same everywhere.
    tint: Colour,
    /// The same with the shade, from the edge inward.
    shaded: Vec<Colour>,
    /// Pigment, and the share of what lies below that it hides.
    solid: Option<(Colour, f32)>,
}

impl Over {
    pub(super) fn new(light: &Light, look: &PartLook) -> Self {
        let (tint, solid) = match look.colour.map(|colour| (colour.paint, colour.build)) {
            Some((Paint::Clear(dye), build)) => (passed(light, dye.in_film(), build), None),
            Some((Paint::Solid(paint), build)) => ([1.0; 3], Some((screen(paint), hidden(light, build)))),
            None => ([1.0; 3], None),
        };
        let shaded = look.shade.map_or_else(Vec::new, |shade| {
            let at = |far: f32| shade.build * shaded(far * PANEL_SHADE / shade.reach.max(1.0));
            let known = 0..=whole(shade.reach.max(0.0) * A_MM);
            known.map(|n| times(tint, passed(light, shade.dye.in_film(), at(coordinate(n) / A_MM)))).collect()
        });
        Self { tint, shaded, solid }
    }

    /// Share of light that comes back through them at a pixel.
    pub(super) fn at(&self, cell: &Cell) -> Colour {
        let place = cell.rim.max(0.0) * A_MM;
        let (first, share) = (whole(place), place - coordinate(whole(place)));
        let known = |n: usize| self.shaded.get(n).copied().unwrap_or(self.tint);
        blend(known(first), known(first + 1), share)
    }

    /// What is seen of something below them, where so much light comes back.
    pub(super) fn lay(&self, below: Colour, over: Colour) -> Colour {
        match self.solid {
            Some((paint, hides)) => times(blend(below, paint, hides), over),
            None => times(below, over),
        }
    }
}
