//! The wet film on a grid: what was laid, what of it is still wet, how wet each place ever was, what landed dry.
//!
//! Solvent leaves evenly in time, the same share of it each second. What is still wet is kept as if it had been laid at one
//! moment, so that no cell is touched but those that are sprayed.

use super::grid::{Grid, Window};
use stepboard_picture::{Layers, Spot, Sweep, single};

/// Times of the flash-off after which what is kept is reckoned from a later moment, before single precision gives out.
const ANEW_AFTER: f64 = 20.0;

/// A piece of a straight line that the gun runs evenly.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// Where the gun aims at its beginning, mm.
    pub from: (f64, f64),
    /// Where it aims at its end, mm.
    pub to: (f64, f64),
    /// The moment in its middle, s.
    pub at: f64,
    /// Half the width of the spot along the fan, mm.
    pub half_fan: f64,
    /// Half its width across the fan, mm.
    pub half_thin: f64,
    /// Direction of the fan, degrees from the x axis towards the y axis.
    pub fan: f64,
    /// What lands, µm mm².
    pub lands: f64,
    /// Share of it that lands dry.
    pub dry: f64,
}

/// Film on a grid, all in µm of wet film as it was laid.
#[derive(Debug, Clone)]
pub struct Film {
    grid: Grid,
    /// What is wet is kept as laid at the moment `since`.
    layers: Layers,
    since: f64,
    flash: f64,
}

impl Film {
    /// A bare face; `flash` is the time in which wet film falls to 1/e of itself, s.
    #[must_use]
    pub fn bare(grid: Grid, flash: f64) -> Self {
        Self { grid, layers: Layers::bare(grid.columns, grid.rows), since: 0.0, flash }
    }

    /// A face on which so much was laid in each cell already, row by row, µm: all of it wet, at the moment 0. Cells that are
    /// not told are bare.
    #[must_use]
    pub fn laid_on(grid: Grid, flash: f64, laid: &[f32]) -> Self {
        let mut film = Self::bare(grid, flash);
        let Layers { laid: all, wet, wettest, .. } = &mut film.layers;
        for (cell, slots) in laid.iter().zip(all.iter_mut().zip(wet).zip(wettest)) {
            let ((all, wet), wettest) = slots;
            (*all, *wet, *wettest) = (*cell, *cell, *cell);
        }
        film
    }

    /// The grid.
    #[must_use]
    pub const fn grid(&self) -> Grid {
        self.grid
    }

    /// What was laid in each cell, µm.
    #[must_use]
    pub fn laid(&self) -> &[f32] {
        &self.layers.laid
    }

    /// What of it landed dry, µm.
    #[must_use]
    pub fn dry(&self) -> &[f32] {
        &self.layers.dry
    }

    /// The wettest that each cell ever was, µm.
    #[must_use]
    pub fn wettest(&self) -> &[f32] {
        &self.layers.wettest
    }

    /// Wet film in each cell at a moment, µm: for a moment not before the last piece.
    pub fn wet_at(&self, moment: f64) -> impl Iterator<Item = f32> + '_ {
        let left = self.left_at(moment);
        self.layers.wet.iter().map(move |wet| wet * left)
    }

    /// All of it by cells; what is wet as it is kept ([`Film::left_at`]).
    #[must_use]
    pub const fn layers(&self) -> &Layers {
        &self.layers
    }

    /// How much of the wet film as it is kept is wet at a moment not before the last piece.
    #[must_use]
    pub fn left_at(&self, moment: f64) -> f32 {
        single(libm::exp((self.since - moment) / self.flash))
    }

    /// Lays a piece and gives the cells that it may have touched. Pieces come in the order of time.
    pub fn lay(&mut self, spot: &Spot, piece: &Piece) -> Window {
        self.reckon_from(piece.at);
        let grid = self.grid;
        let (sin, cos) = libm::sincos(piece.fan.to_radians());
        let (a, b) = (piece.half_fan, piece.half_thin);
        // The spot counts in its own half widths: u along the fan, v across it.
        let scaled = |x: f64, y: f64| ((x * cos + y * sin) / a, (y * cos - x * sin) / b);
        let (move_u, move_v) = scaled(piece.to.0 - piece.from.0, piece.to.1 - piece.from.1);
        let length = libm::hypot(move_u, move_v);
        let (dir_u, dir_v) = if length > 0.0 { (move_u / length, move_v / length) } else { (1.0, 0.0) };
        // Along the line and beside it, both straight in x and y.
        let ahead_of = |x: f64, y: f64| {
            let (u, v) = scaled(x, y);
            (u * dir_u + v * dir_v, v * dir_u - u * dir_v)
        };
        let reach = (libm::hypot(a * cos, b * sin), libm::hypot(a * sin, b * cos));
        let window = grid.around(piece.from, piece.to, reach);
        let age = (piece.at - self.since) / self.flash;
        let both = |(ahead, beside): (f64, f64)| (single(ahead), single(beside));
        let first = (grid.across(window.columns.start), grid.down(window.rows.start));
        let sweep = Sweep {
            columns: window.columns.clone(),
            rows: window.rows.clone(),
            first: both(ahead_of(first.0 - piece.from.0, first.1 - piece.from.1)),
            right: both(ahead_of(grid.cell, 0.0)),
            below: both(ahead_of(0.0, grid.cell)),
            length: single(length),
            height: single(piece.lands * spot.peak() / (a * b)),
            moist: 1.0 - single(piece.dry),
            older: single(libm::exp(age)),
            left: single(libm::exp(-age)),
        };
        sweep.lay(spot, &mut self.layers);
        window
    }

    /// Reckons what is wet from a later moment, where the one it counts from lies far back.
    fn reckon_from(&mut self, moment: f64) {
        let age = (moment - self.since) / self.flash;
        if age > ANEW_AFTER {
            let left = single(libm::exp(-age));
            self.layers.wet.iter_mut().for_each(|wet| *wet *= left);
            self.since = moment;
        }
    }
}
