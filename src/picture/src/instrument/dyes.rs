//! Binding, tape, filler and what is inlaid as the screen shows them.

use super::states::Trim;
use crate::light::{Colour, screen};
use crate::wood::Screen;

/// Bindings: ivory-coloured plastic, and pale wood.
const PLASTIC: Screen = [240, 226, 196];
const PALE_WOOD: Screen = [206, 164, 112];
const PURFLING: Screen = [24, 17, 13];
/// Pale wood of a rosette, and the metal of frets.
const INLAY: Screen = [226, 202, 150];
const FRET: Screen = [196, 186, 160];
pub(super) const TAPE: Screen = [235, 221, 170];
pub(super) const PAPER: Screen = [203, 176, 134];
/// The dark inside of a body, seen through its hole.
pub(super) const HOLE: Screen = [26, 18, 13];
/// Wood as the saw and the air left it, and filler dried to a haze.
pub(super) const WEATHERED: Screen = [164, 150, 134];
pub(super) const HAZE: Screen = [206, 198, 184];

/// What is not wood on a part, in linear light.
pub(super) struct Inlays {
    pub(super) binding: Colour,
    pub(super) dark: Colour,
    pub(super) pale: Colour,
    pub(super) fret: Colour,
}

impl Inlays {
    pub(super) fn new(trim: Trim) -> Self {
        let binding = match trim {
            Trim::Plastic => PLASTIC,
            Trim::Wood => PALE_WOOD,
        };
        Self { binding: screen(binding), dark: screen(PURFLING), pale: screen(INLAY), fret: screen(FRET) }
    }
}
