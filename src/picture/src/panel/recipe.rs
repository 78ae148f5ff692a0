//! What a panel is, before it is drawn.

use crate::dye::Dye;
use crate::fault::Fault;
use crate::named::named;
use crate::wood::{Face, Screen, Species};
use serde::{Deserialize, Serialize};

named! {
    /// How far the finish has come.
    #[derive(Serialize, Deserialize)]
    #[serde(rename_all = "kebab-case")]
    Finish {
        /// Sanded wood.
        Bare = "bare",
        /// A first film, dull and thin.
        Sealed = "sealed",
        /// Coloured film, not yet under clear.
        Coloured = "coloured",
        /// Clear coats as they left the gun.
        Cleared = "cleared",
        /// Levelled, and rubbed along the grain to an even satin.
        Rubbed = "rubbed",
        /// Levelled and buffed.
        Buffed = "buffed",
    }
}

impl Finish {
    /// Whether there is a film.
    pub(crate) const fn has_film(self) -> bool {
        !matches!(self, Self::Bare)
    }
}

named! {
    /// How much there is of a fault.
    Severity {
        /// Seen when one looks for it.
        Slight = "slight",
        /// Seen at once.
        Plain = "plain",
        /// The panel is spoiled.
        Severe = "severe",
    }
}

impl Severity {
    /// One of three values.
    pub(crate) const fn of<T: Copy>(self, values: [T; 3]) -> T {
        let [slight, plain, severe] = values;
        match self {
            Self::Slight => slight,
            Self::Plain => plain,
            Self::Severe => severe,
        }
    }
}

named! {
    /// What was done to see better.
    #[derive(Default)]
    Probe {
        /// Looked at as it lies.
        #[default]
        None = "none",
        /// A band wiped with a soft damp cloth.
        Wiped = "wiped",
        /// Wet with naphtha.
        Wetted = "wetted",
        /// A thumbnail pressed in beside the middle.
        Pressed = "pressed",
        /// A cloth pressed on for a minute, beside the middle.
        Cloth = "cloth",
        /// Looked at as it was on the day of its last coat: nothing had aged, been rubbed or been unmasked yet.
        Aged = "aged",
    }
}

/// The dyes of a panel.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dyes {
    /// In the wood.
    pub stain: Dye,
    /// In the film.
    pub film: Dye,
    /// In the shade of its edges.
    pub shade: Dye,
}

impl Dyes {
    /// Honey in wood and film, and edges shaded dark.
    pub const USUAL: Self = Self { stain: Dye::Amber, film: Dye::Amber, shade: Dye::Black };
}

/// A panel to be drawn. The same recipe gives the same picture.
#[derive(Debug, Clone, PartialEq)]
pub struct Recipe {
    /// The wood.
    pub species: Species,
    /// How the face lies in the log.
    pub face: Face,
    /// Chance: which piece of wood, and where a fault lies.
    pub seed: u32,
    /// How far the finish has come.
    pub finish: Finish,
    /// Colour of pore filler; `None` where the pores are open.
    pub filler: Option<Screen>,
    /// Build of a stain, 0 to 2.
    pub stain: f32,
    /// Build of colour in the film, 0 to 1.
    pub amber: f32,
    /// The dyes of stain, film and shade.
    pub dyes: Dyes,
    /// Opaque colour of the film; the wood is not seen through it.
    pub opaque: Option<Screen>,
    /// Whether the edges are shaded dark.
    pub shaded: bool,
    /// The fault, and how much of it.
    pub fault: Option<(Fault, Severity)>,
    /// What was done to see it.
    pub probe: Probe,
}

impl Recipe {
    /// A wood as boards of it usually lie, sanded and nothing else.
    #[must_use]
    pub const fn bare(species: Species, seed: u32) -> Self {
        Self {
            face: species.face,
            species,
            seed,
            finish: Finish::Bare,
            filler: None,
            stain: 0.0,
            amber: 0.0,
            dyes: Dyes::USUAL,
            opaque: None,
            shaded: false,
            fault: None,
            probe: Probe::None,
        }
    }
}
