//! Lamps that a panel is looked at under.

use crate::named::named;

named! {
    /// What stands over the panel.
    LampKind {
        /// Two tubes and a window, as over an inspection bench.
        Tubes = "tubes",
        /// One small bright lamp, as a phone's.
        Point = "point",
        /// Low from one side: every unevenness throws light and shade.
        Raking = "raking",
    }
}

/// A lamp, and where it is mirrored in a flat panel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lamp {
    /// Kind of lamp.
    pub kind: LampKind,
    /// Middle of its mirror image, mm from the left.
    pub x: f32,
    /// The same from the top.
    pub y: f32,
    /// Turn of the tubes against the grain, degrees. Of a raking lamp the side that it lies on, clockwise as one looks down
    /// on the panel: 0 at its left edge, 90 at the far one, 180 at the right, 270 at the near.
    pub turn: f32,
}

impl Lamp {
    /// The tubes across the middle of a panel 120 by 90 mm.
    pub const OVERHEAD: Self = Self { kind: LampKind::Tubes, x: 66.0, y: 45.0, turn: 62.0 };
    /// Low at the left edge of a panel 120 by 90 mm.
    pub const RAKING: Self = Self { kind: LampKind::Raking, x: 0.0, y: 45.0, turn: 0.0 };
}
