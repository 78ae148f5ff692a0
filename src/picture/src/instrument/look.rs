//! How a part looks now, as plain values: what was done to its wood and what lies on it, from the wood up.

use super::part::PartKind;
use super::states::{Binding, Cover, Filled, Prepared, Seat, Sheen, Trim};
use crate::dye::Dye;
use crate::wood::Screen;

/// The colour of a film.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paint {
    /// A clear film with dye: the wood is seen through it.
    Clear(Dye),
    /// Pigment: what lies below is hidden where there is enough.
    Solid(Screen),
}

/// Stain in the wood.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stain {
    /// Its dye.
    pub dye: Dye,
    /// How much, 0 to 2; 0.6 is usual.
    pub build: f32,
}

/// Filler.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Filler {
    /// Its colour on the screen.
    pub colour: Screen,
    /// What became of it.
    pub state: Filled,
}

/// A film of colour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Colour {
    /// Its colour.
    pub paint: Paint,
    /// Optical thickness as a share of what was meant, 0 to 2: of three passes that were meant each lays a third.
    pub build: f32,
    /// Dry thickness, micrometres.
    pub um: f32,
}

/// Colour that fades from the edge inward.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shade {
    /// Its dye.
    pub dye: Dye,
    /// Optical thickness at the edge as a share of what was meant, 0 to 2.
    pub build: f32,
    /// How far from the edge nothing of it is left, mm.
    pub reach: f32,
}

/// How a part looks. The same values on the same wood give the same picture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PartLook {
    /// The part.
    pub part: PartKind,
    /// How its bare wood was left.
    pub prepared: Prepared,
    /// Stain in it.
    pub stain: Option<Stain>,
    /// Filler in its pores.
    pub filler: Option<Filler>,
    /// Washcoat and seal coats, dry, micrometres.
    pub seal_um: f32,
    /// Colour in the film.
    pub colour: Option<Colour>,
    /// Shaded edge.
    pub shade: Option<Shade>,
    /// Clear coats, dry, micrometres.
    pub clear_um: f32,
    /// How the uppermost film was left.
    pub sheen: Sheen,
    /// Its binding.
    pub binding: Binding,
    /// What that is made of.
    pub trim: Trim,
    /// The place for glue.
    pub seat: Seat,
    /// What covers it.
    pub cover: Cover,
}

impl PartLook {
    /// A part of sanded wood and nothing else.
    #[must_use]
    pub fn bare(part: PartKind) -> Self {
        Self {
            part,
            prepared: Prepared::default(),
            stain: None,
            filler: None,
            seal_um: 0.0,
            colour: None,
            shade: None,
            clear_um: 0.0,
            sheen: Sheen::default(),
            binding: Binding::default(),
            trim: Trim::default(),
            seat: Seat::default(),
            cover: Cover::default(),
        }
    }

    /// All of its film, micrometres.
    #[must_use]
    pub fn film_um(&self) -> f32 {
        self.seal_um + self.colour.map_or(0.0, |colour| colour.um) + self.clear_um
    }
}
