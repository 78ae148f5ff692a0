//! The wet film on a grid: what was laid, what of it is still wet, how wet each place ever was, what landed dry.
//!
//! Solvent leaves evenly in time, the same share of it each second. What is still wet is kept as if it had been laid at one
//! moment, so that no cell is touched but those that are sprayed.

use super::grid::Grid;
use super::spot::{Spot, single};

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
    /// All that was laid.
    laid: Vec<f32>,
    /// What of it landed dry.
    dry: Vec<f32>,
    /// What is still wet, as laid at the moment `since`.
    wet: Vec<f32>,
    /// The wettest that each place ever was.
    wettest: Vec<f32>,
    since: f64,
    flash: f64,
}

impl Film {
    /// A bare face; `flash` is the time in which wet film falls to 1/e of itself, s.
    #[must_use]
    pub fn bare(grid: Grid, flash: f64) -> Self {
        let none = || vec![0.0; grid.count()];
        Self { grid, laid: none(), dry: none(), wet: none(), wettest: none(), since: 0.0, flash }
    }

    /// The grid.
    #[must_use]
    pub const fn grid(&self) -> Grid {
        self.grid
    }

    /// What was laid in each cell, µm.
    #[must_use]
    pub fn laid(&self) -> &[f32] {
        &self.laid
    }

    /// What of it landed dry, µm.
    #[must_use]
    pub fn dry(&self) -> &[f32] {
        &self.dry
    }

    /// The wettest that each cell ever was, µm.
    #[must_use]
    pub fn wettest(&self) -> &[f32] {
        &self.wettest
    }

    /// Wet film in each cell at a moment, µm: for a moment not before the last piece.
    pub fn wet_at(&self, moment: f64) -> impl Iterator<Item = f32> + '_ {
        let left = self.left_at(moment);
        self.wet.iter().map(move |wet| wet * left)
    }

    /// Wet film in one cell, µm, by what is left at a moment ([`Film::left_at`]).
    #[must_use]
    pub fn wet_in(&self, cell: usize, left: f32) -> f32 {
        self.wet.get(cell).map_or(0.0, |wet| wet * left)
    }

    /// How much of the wet film as it is kept is wet at a moment not before the last piece.
    #[must_use]
    pub fn left_at(&self, moment: f64) -> f32 {
        single(libm::exp((self.since - moment) / self.flash))
    }

    /// Lays a piece. Pieces come in the order of time.
    pub fn lay(&mut self, spot: &Spot, piece: &Piece) {
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
        let (ahead_x, beside_x) = ahead_of(1.0, 0.0);
        let reach_x = libm::hypot(a * cos, b * sin);
        let reach_y = libm::hypot(a * sin, b * cos);
        let columns =
            grid.columns_in(piece.from.0.min(piece.to.0) - reach_x, piece.from.0.max(piece.to.0) + reach_x);
        let rows =
            grid.rows_in(piece.from.1.min(piece.to.1) - reach_y, piece.from.1.max(piece.to.1) + reach_y);
        let height = single(piece.lands * spot.peak() / (a * b));
        let moist = 1.0 - single(piece.dry);
        let age = (piece.at - self.since) / self.flash;
        let (older, left) = (single(libm::exp(age)), single(libm::exp(-age)));
        let step = (single(ahead_x * grid.cell), single(beside_x * grid.cell));
        for row in rows {
            let start = (grid.across(columns.start) - piece.from.0, grid.down(row) - piece.from.1);
            let (ahead, beside) = ahead_of(start.0, start.1);
            let (mut ahead, mut beside) = (single(ahead), single(beside));
            let cells = row * grid.columns + columns.start..row * grid.columns + columns.end;
            let laid = self.laid.get_mut(cells.clone()).into_iter().flatten();
            let dry = self.dry.get_mut(cells.clone()).into_iter().flatten();
            let wet = self.wet.get_mut(cells.clone()).into_iter().flatten();
            let wettest = self.wettest.get_mut(cells).into_iter().flatten();
            for (((laid, dry), wet), wettest) in laid.zip(dry).zip(wet).zip(wettest) {
                let film = height * spot.lays(ahead, beside, single(length));
                (ahead, beside) = (ahead + step.0, beside + step.1);
                if film > 0.0 {
                    *laid += film;
                    *dry += film * (1.0 - moist);
                    *wet += film * moist * older;
                    *wettest = wettest.max(*wet * left);
                }
            }
        }
    }

    /// Reckons what is wet from a later moment, where the one it counts from lies far back.
    fn reckon_from(&mut self, moment: f64) {
        let age = (moment - self.since) / self.flash;
        if age > ANEW_AFTER {
            let left = single(libm::exp(-age));
            self.wet.iter_mut().for_each(|wet| *wet *= left);
            self.since = moment;
        }
    }
}
