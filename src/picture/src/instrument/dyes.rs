//! What the named dyes hold back, and binding, tape and filler as the screen shows them.

use super::states::Dye;
use crate::dye::{AMBER, BLACK_BROWN, HONEY, RED_BROWN};
use crate::light::{Colour, screen};
use crate::wood::Screen;

/// A brown film: absorbance of a full build, decadic, one way through (by eye).
const BROWN: Colour = [0.17, 0.33, 0.52];
/// What a unit of stain adds to the absorption of wood against its scatter (by eye).
const RED_STAIN: Colour = [0.14, 2.3, 3.2];
const BROWN_STAIN: Colour = [0.62, 1.7, 4.0];
const BLACK_STAIN: Colour = [3.0, 3.5, 4.2];

const BINDING: Screen = [240, 226, 196];
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
    pub(super) fn new() -> Self {
        Self { binding: screen(BINDING), dark: screen(PURFLING), pale: screen(INLAY), fret: screen(FRET) }
    }
}

impl Dye {
    /// Absorbance of a full build in a film, red, green, blue.
    pub(super) const fn in_film(self) -> Colour {
        match self {
            Self::Amber => AMBER,
            Self::Cherry => RED_BROWN,
            Self::Tobacco => BROWN,
            Self::Black => BLACK_BROWN,
        }
    }

    /// What a unit of it adds to the absorption of wood.
    pub(super) const fn in_wood(self) -> Colour {
        match self {
            Self::Amber => HONEY,
            Self::Cherry => RED_STAIN,
            Self::Tobacco => BROWN_STAIN,
            Self::Black => BLACK_STAIN,
        }
    }
}
