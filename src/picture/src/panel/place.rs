//! Places on a panel: of its fault, and of the marks that tests leave.

use super::Panel;
use crate::map::near;

impl Panel {
    /// Whether a place, mm from the left and the top, lies on the fault or within `reach` mm of it.
    #[must_use]
    pub fn is_on_fault(&self, x: f32, y: f32, reach: f32) -> bool {
        let on = |(column, row, dx, dy): (usize, usize, f32, f32)| {
            libm::hypotf(dx, dy) <= reach.max(self.mask.grid.scale)
                && self.mask.at(column, row) > Self::TOUCHED
        };
        near(self.mask.grid, x, y, reach.max(self.mask.grid.scale)).any(on)
    }

    /// The place of the fault that lies nearest a place, mm; none on a clean panel.
    #[must_use]
    pub fn fault_nearest(&self, x: f32, y: f32) -> Option<(f32, f32)> {
        let grid = self.mask.grid;
        let touched = self.mask.values.iter().enumerate().filter(|(_, share)| **share > Self::TOUCHED);
        let places = touched.map(|(place, _)| grid.middle(place % grid.columns, place / grid.columns));
        let far = |(at_x, at_y): &(f32, f32)| libm::hypotf(at_x - x, at_y - y);
        places.min_by(|a, b| far(a).total_cmp(&far(b)))
    }

    /// The middle of the mark that its test left, or of the place that it tried, mm; none of a test that takes the whole face
    /// or finds nothing to take.
    #[must_use]
    pub const fn mark(&self) -> Option<(f32, f32)> {
        self.mark
    }
}
