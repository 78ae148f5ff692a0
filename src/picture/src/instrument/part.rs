//! The parts of a view: where each is, how its wood lies, what is on it besides wood.

use super::field::Field;
use super::path::{Path, Point};
use crate::named::named;
use crate::pause::at_once;

named! {
    /// What a part is.
    PartKind {
        /// A sample board.
        Plate = "plate",
        /// The soundboard.
        Top = "top",
        /// The back.
        Back = "back",
        /// The sides.
        Sides = "sides",
        /// The neck with its head.
        Neck = "neck",
        /// The fingerboard.
        Fingerboard = "fingerboard",
        /// The arms of a lyre.
        Arms = "arms",
        /// What the arms carry.
        Yoke = "yoke",
    }
}

/// How the grain of a part lies in its view.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Grain {
    /// From below to above.
    Up,
    /// From left to right.
    Across,
    /// From below to above, in two halves that are each other's image on the two sides of an upright joint.
    Matched {
        /// Where the joint stands, mm.
        axis: f32,
    },
}

/// Rings inlaid round a hole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rosette {
    /// Middle of the hole, mm.
    pub middle: Point,
    /// Radius of the hole, mm; the rings lie outside.
    pub radius: f32,
}

/// A part of a view.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// What it is.
    pub kind: PartKind,
    /// Its area: what lies within an odd number of these lines.
    pub paths: Vec<Path>,
    /// The line along which a binding is let in and from which an edge is shaded; of a part without one its own.
    pub edge: Vec<Path>,
    /// Width of the binding, mm; `None` where it has none.
    pub binding: Option<f32>,
    /// What stays bare for glue.
    pub seat: Option<Path>,
    /// Rings about a hole.
    pub rosette: Option<Rosette>,
    /// Whether it has frets.
    pub frets: bool,
    /// How its grain lies.
    pub grain: Grain,
    /// How rounded its face is: 0 flat, 1 as a neck.
    pub bow: f32,
}

/// How rounded a face is that nothing else is said of.
const FACE_BOW: f32 = 0.25;

impl Part {
    pub(super) fn new(kind: PartKind, paths: Vec<Path>, grain: Grain) -> Self {
        Self {
            kind,
            edge: paths.clone(),
            paths,
            binding: None,
            seat: None,
            rosette: None,
            frets: false,
            grain,
            bow: FACE_BOW,
        }
    }

    pub(super) fn bound(self, edge: Path, width: f32) -> Self {
        Self { edge: vec![edge], binding: Some(width), ..self }
    }

    pub(super) fn with_seat(self, seat: Path) -> Self {
        Self { seat: Some(seat), ..self }
    }

    pub(super) fn with_rosette(self, middle: Point, radius: f32) -> Self {
        Self { rosette: Some(Rosette { middle, radius }), ..self }
    }

    pub(super) fn with_frets(self) -> Self {
        Self { frets: true, ..self }
    }

    pub(super) fn bowed(self, bow: f32) -> Self {
        Self { bow, ..self }
    }

    /// Whether a place, mm, lies on it.
    #[must_use]
    pub fn contains(&self, at: Point) -> bool {
        self.paths.iter().filter(|path| path.contains(at)).count() % 2 == 1
    }

    /// Where a leader line to it ends, mm: deep in its face and beside what stays bare.
    #[must_use]
    pub fn anchor(&self) -> Point {
        let bare = self.seat.iter().cloned();
        at_once(Field::of(&self.paths.iter().cloned().chain(bare).collect::<Vec<_>>())).deepest()
    }

    /// Where a leader line to its binding ends, mm: on the band, far to the right and near its middle height; `None` without
    /// a binding.
    #[must_use]
    pub fn binding_anchor(&self) -> Option<Point> {
        /// So far to the right is worth a mm nearer to the middle.
        const RIGHT: f32 = 0.05;
        let band = at_once(Field::of(&self.edge)).contours(0.5 * self.binding?);
        let middle = |(least, most): (Point, Point)| 0.5 * (least.1 + most.1);
        let places = band.iter().flat_map(|line| {
            let middle = middle(line.bounds());
            line.points().iter().map(move |(x, y)| (x - RIGHT * (y - middle).abs(), (*x, *y)))
        });
        let seen = places.filter(|(_, at)| self.contains(*at));
        seen.max_by(|(a, _), (b, _)| a.total_cmp(b)).map(|(_, at)| at)
    }

    /// Where a leader line to what stays bare ends, mm; `None` without such a place.
    #[must_use]
    pub fn seat_anchor(&self) -> Option<Point> {
        let (least, most) = self.seat.as_ref()?.bounds();
        Some((0.5 * (least.0 + most.0), 0.5 * (least.1 + most.1)))
    }
}
