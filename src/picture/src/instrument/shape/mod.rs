//! Outlines of our own, of no known maker: each shape tells the parts that are seen of it from each side.

mod lidded_box;
mod lute;
mod lyre;
mod plate;

use super::part::{Part, PartKind};
use super::path::Point;
use crate::named::named;

named! {
    /// What the work is, as its outline.
    Shape {
        /// A sample board.
        Plate = "plate",
        /// A box with a lid.
        Box = "box",
        /// A pear with a neck, a flat back and sides.
        Lute = "lute",
        /// A body with two arms that carry a yoke.
        Lyre = "lyre",
    }
}

named! {
    /// The side from which it is seen.
    Side {
        /// As it is played.
        Front = "front",
        /// From behind.
        Back = "back",
        /// From the right.
        Edge = "edge",
    }
}

/// Words of tickets for all that is finished together.
const WHOLES: [&str; 3] = ["body", "box", "frame"];

/// A shape as it is seen from a side.
#[derive(Debug, Clone, PartialEq)]
pub struct View {
    /// What is seen.
    pub shape: Shape,
    /// From where.
    pub side: Side,
    /// Width and height, mm.
    pub size: Point,
    /// Its parts, none over another.
    pub parts: Vec<Part>,
}

impl View {
    /// The view of a shape from a side; `None` where nothing is finished that is seen from there.
    #[must_use]
    pub fn of(shape: Shape, side: Side) -> Option<Self> {
        let (size, parts) = match shape {
            Shape::Plate => plate::seen(side),
            Shape::Box => lidded_box::seen(side),
            Shape::Lute => lute::seen(side),
            Shape::Lyre => lyre::seen(side),
        }?;
        Some(Self { shape, side, size, parts })
    }

    /// What is seen from here of a part that a ticket calls so: that part, or all of the wood that is finished together
    /// where the word is for the whole of a body or a frame; nothing where the part is not seen from here.
    #[must_use]
    pub fn called(&self, slug: &str) -> Vec<PartKind> {
        let kinds = self.parts.iter().map(|part| part.kind);
        let whole = WHOLES.contains(&slug);
        let apart = [PartKind::Fingerboard, PartKind::Neck];
        kinds.filter(|kind| kind.slug() == slug || whole && !apart.contains(kind)).collect()
    }
}
