//! Where the views of the work stand beside each other, and the labels at their right.

use crate::picture::instrument::{Path, Point, View};
use std::fmt::Write;

/// Width and height of all of it, and of what the views have of it; a unit is about a pixel on a tablet.
pub(super) const WIDTH: f32 = 576.0;
pub(super) const HEIGHT: f32 = 320.0;
pub(super) const PICTURE: f32 = 350.0;
/// Between views.
const APART: f32 = 12.0;
/// Where the labels begin.
pub(super) const LABELS: f32 = 366.0;
/// Pixels of a unit.
pub(super) const DENSITY: f32 = 1.5;

/// Where the views stand.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Layout {
    /// Units of a mm.
    pub(super) scale: f32,
    /// The upper left corner of each view.
    pub(super) corners: Vec<Point>,
}

impl Layout {
    pub(super) fn of(views: &[View]) -> Self {
        let gaps = views.iter().skip(1).map(|_| APART).sum::<f32>();
        let wide: f32 = views.iter().map(|view| view.size.0).sum();
        let high = views.iter().map(|view| view.size.1).fold(1.0, f32::max);
        let scale = ((PICTURE - gaps) / wide.max(1.0)).min(HEIGHT / high);
        let mut left = 0.5 * (PICTURE - gaps - wide * scale);
        let corner = |view: &View| {
            let corner = (left, 0.5 * (HEIGHT - view.size.1 * scale));
            left += view.size.0 * scale + APART;
            corner
        };
        Self { scale, corners: views.iter().map(corner).collect() }
    }

    /// A place of a view, mm, on the whole.
    pub(super) fn at(&self, view: usize, (x, y): Point) -> Point {
        let (left, top) = self.corners.get(view).copied().unwrap_or_default();
        (left + x * self.scale, top + y * self.scale)
    }

    /// Lines of a view as a path to be drawn.
    pub(super) fn path(&self, view: usize, paths: &[Path]) -> String {
        let mut drawn = String::new();
        for path in paths {
            for (nth, point) in path.points().iter().enumerate() {
                let (x, y) = self.at(view, *point);
                // Writing to a text cannot fail.
                let _ = write!(drawn, "{}{x:.1} {y:.1}", if nth == 0 { 'M' } else { 'L' });
            }
            drawn.push('Z');
        }
        drawn
    }
}
