//! How faults are shown on computed panels: on which woods, in which finish and colour.

use crate::picture::{Finish, Probe, Recipe, Screen, Severity, Species};
use crate::terms;
use serde::{Deserialize, Serialize};

/// How a fault that can be drawn is shown.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Panel {
    /// The fault.
    pub fault: String,
    /// How far the finish has come where it shows, where it shows best first.
    pub finishes: Vec<Finish>,
    /// Looks of woods on which it is shown.
    pub looks: Vec<String>,
    /// Those of them on which a slight one can be seen: measured, see DEVELOPERS.md.
    #[serde(default)]
    pub slight: Vec<String>,
    /// Colours in which it is shown.
    pub dresses: Vec<String>,
    /// Whether one can point at it; not at what covers the face.
    #[serde(default)]
    pub points: bool,
    /// Faults that look the same until something is done to tell them apart.
    #[serde(default)]
    pub twins: Vec<String>,
}

impl Panel {
    /// The amount that is shown where one is wanted: never less than can be seen on that wood.
    #[must_use]
    pub fn seen(&self, look: &str, wanted: Severity) -> Severity {
        let hidden = wanted == Severity::Slight && !self.slight.iter().any(|one| one == look);
        if hidden { Severity::Plain } else { wanted }
    }
}

/// Colours of a panel: stain, filler, film colour.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Dress {
    /// Its slug.
    pub slug: String,
    /// Build of honey stain.
    #[serde(default)]
    pub stain: f32,
    /// Build of amber colour in the film.
    #[serde(default)]
    pub amber: f32,
    /// Opaque colour of the film.
    #[serde(default)]
    pub opaque: Option<Screen>,
    /// Colour of the filler in open pores.
    #[serde(default)]
    pub filler: Option<Screen>,
    /// Whether the edge is shaded.
    #[serde(default)]
    pub shaded: bool,
}

impl Dress {
    /// A panel of a wood in these colours, with no fault. What has no open pores is not filled.
    #[must_use]
    pub fn on(&self, species: &Species, finish: Finish, seed: u32) -> Recipe {
        Recipe {
            finish,
            filler: self.filler.filter(|_| species.telegraphs),
            stain: self.stain,
            amber: self.amber,
            opaque: self.opaque,
            shaded: self.shaded,
            ..Recipe::bare(species.clone(), seed)
        }
    }
}

terms! {
    /// How a test is seen on a computed panel.
    View {
        /// A band is wiped with a damp cloth.
        Wiped = "wiped",
        /// The panel is wet with naphtha.
        Wetted = "wetted",
        /// A thumbnail is pressed in.
        Pressed = "pressed",
        /// A cloth is pressed on for a minute.
        Cloth = "cloth",
        /// As it was on the day of its last coat: not aged, not rubbed, not unmasked.
        Aged = "aged",
        /// Under a lamp that rakes over it.
        Raking = "raking",
        /// Under a small lamp that is moved about.
        MovedLamp = "moved-lamp",
        /// Under the loupe.
        Loupe = "loupe",
    }
}

impl View {
    /// What is done to the panel; a lamp and a loupe do nothing to it.
    #[must_use]
    pub const fn probe(self) -> Probe {
        match self {
            Self::Wiped => Probe::Wiped,
            Self::Wetted => Probe::Wetted,
            Self::Pressed => Probe::Pressed,
            Self::Cloth => Probe::Cloth,
            Self::Aged => Probe::Aged,
            Self::Raking | Self::MovedLamp | Self::Loupe => Probe::None,
        }
    }
}
