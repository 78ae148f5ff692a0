//! Dyes and the light that comes through them: what stains wood and colours a film, on panels and on whole instruments.

use crate::light::{Colour, Light};
use crate::named::named;
use crate::soak;

/// What a unit of stain adds to the absorption of wood against its scatter, red, green, blue (by eye).
const HONEY: Colour = [0.06, 0.62, 3.6];
const RED_STAIN: Colour = [0.10, 0.62, 1.0];
const BROWN_STAIN: Colour = [0.30, 0.80, 1.9];
const BLACK_STAIN: Colour = [1.5, 1.7, 2.0];
/// Absorbance for each unit of build, red, green, blue (decadic, one way through; by eye): what of the stain stays on the
/// fibres and lets their grain be seen, and colours of film.
const HONEY_ON_FIBRES: Colour = [0.08, 0.12, 0.14];
const RED_ON_FIBRES: Colour = [0.13, 0.36, 0.44];
const BROWN_ON_FIBRES: Colour = [0.20, 0.32, 0.40];
const BLACK_ON_FIBRES: Colour = [0.55, 0.64, 0.72];
const AMBER: Colour = [0.03, 0.13, 0.42];
const BROWN: Colour = [0.17, 0.33, 0.52];
const BLACK_BROWN: Colour = [0.62, 0.80, 0.95];
pub(crate) const RED_BROWN: Colour = [0.035, 0.26, 0.36];
/// Through the film and back, decadic to natural.
const TWICE: f32 = 2.0 * core::f32::consts::LN_10;
/// Optical depth of opaque colour as thick as it is meant.
const HIDES: f32 = 4.0;

named! {
    /// A dye, for stain and for clear colour.
    Dye {
        /// Golden.
        Amber = "amber",
        /// Red.
        Cherry = "cherry",
        /// Brown.
        Tobacco = "tobacco",
        /// Nearly black.
        Black = "black",
    }
}

impl Dye {
    /// Absorbance of a full build in a film, red, green, blue.
    pub(crate) const fn in_film(self) -> Colour {
        match self {
            Self::Amber => AMBER,
            Self::Cherry => RED_BROWN,
            Self::Tobacco => BROWN,
            Self::Black => BLACK_BROWN,
        }
    }

    /// What of a unit of stain stays on the fibres.
    const fn on_fibres(self) -> Colour {
        match self {
            Self::Amber => HONEY_ON_FIBRES,
            Self::Cherry => RED_ON_FIBRES,
            Self::Tobacco => BROWN_ON_FIBRES,
            Self::Black => BLACK_ON_FIBRES,
        }
    }

    /// What a unit of it adds to the absorption of wood.
    const fn in_wood(self) -> Colour {
        match self {
            Self::Amber => HONEY,
            Self::Cherry => RED_STAIN,
            Self::Tobacco => BROWN_STAIN,
            Self::Black => BLACK_STAIN,
        }
    }
}

/// Share of light that comes back through a build of a dye, both ways, by Beer and Lambert's law.
pub(crate) fn passed(light: &Light, dye: Colour, build: f32) -> Colour {
    if build > 0.0 { dye.map(|part| light.pass(TWICE * part * build)) } else { [1.0; 3] }
}

/// Wood with so much of a stain in it and on its fibres.
pub(crate) fn stained(light: &Light, wood: Colour, dye: Dye, build: f32) -> Colour {
    times(soak::dyed(wood, dye.in_wood(), build), passed(light, dye.on_fibres(), build))
}

/// Share of what lies below that opaque colour of a build hides, 1 as it is meant.
pub(crate) fn hidden(light: &Light, build: f32) -> f32 {
    1.0 - light.pass(HIDES * build.max(0.0))
}

/// One colour through another.
pub(crate) fn times(a: Colour, b: Colour) -> Colour {
    [a[0] * b[0], a[1] * b[1], a[2] * b[2]]
}
