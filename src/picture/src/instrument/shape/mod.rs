//! Outlines of our own, of no known maker: each shape tells the parts that are seen of it from each side.

mod lute;
mod lyre;
mod plate;
mod zither;

use super::part::Part;
use super::path::Point;
use crate::named::named;

named! {
    /// What the work is, as its outline.
    Shape {
        /// A sample board.
        Plate = "plate",
        /// A flat box with a slanted side, a fingerboard along the straight one.
        Zither = "zither",
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
            Shape::Zither => zither::seen(side),
            Shape::Lute => lute::seen(side),
            Shape::Lyre => lyre::seen(side),
        }?;
        Some(Self { shape, side, size, parts })
    }
}
