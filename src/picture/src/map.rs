//! Values over the face of a panel, one a pixel.

use crate::number::{coordinate, pixel, whole};
use crate::pause::{pause, worked};

/// How a panel, or a window on it, is cut into pixels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    /// Pixels along the grain.
    pub columns: usize,
    /// Pixels across it.
    pub rows: usize,
    /// Millimetres a pixel.
    pub scale: f32,
    /// Upper left corner of the window on the panel, mm from the panel's own.
    corner: (f32, f32),
    /// Width and height of the whole panel, mm.
    face: (f32, f32),
}

impl Grid {
    /// A panel of a size in mm, cut into pixels of `scale` mm.
    #[must_use]
    pub fn covering(width: f32, height: f32, scale: f32) -> Self {
        let count = |length: f32| whole(length / scale + 0.5).max(1);
        let (columns, rows) = (count(width), count(height));
        let face = (coordinate(columns) * scale, coordinate(rows) * scale);
        Self { columns, rows, scale, corner: (0.0, 0.0), face }
    }

    /// A square window on the same panel round a place, mm, cut finer: so many pixels of `scale` mm each way.
    #[must_use]
    pub fn window(self, (x, y): (f32, f32), side: usize, scale: f32) -> Self {
        let half = 0.5 * coordinate(side) * scale;
        Self { columns: side, rows: side, scale, corner: (x - half, y - half), face: self.face }
    }

    /// Width of the whole panel, mm.
    #[must_use]
    pub const fn width(self) -> f32 {
        self.face.0
    }

    /// Height of the whole panel, mm.
    #[must_use]
    pub const fn height(self) -> f32 {
        self.face.1
    }

    /// Where a place, mm, lies in the window: pixels from its left and its top.
    pub(crate) fn inside(self, x: f32, y: f32) -> (f32, f32) {
        ((x - self.corner.0) / self.scale, (y - self.corner.1) / self.scale)
    }

    /// Its face, square centimetres.
    pub(crate) fn square_centimetres(self) -> f32 {
        const SQUARE_MM: f32 = 100.0;
        self.width() * self.height() / SQUARE_MM
    }

    /// The middle of a pixel, mm from the left and from the top.
    #[must_use]
    pub fn middle(self, column: usize, row: usize) -> (f32, f32) {
        worked();
        let along = |n: usize, from: f32| (coordinate(n) + 0.5) * self.scale + from;
        (along(column, self.corner.0), along(row, self.corner.1))
    }

    /// Whether a pixel, counted row by row, is the first of its row.
    pub(crate) const fn begins_row(self, place: usize) -> bool {
        place.is_multiple_of(self.columns)
    }

    /// Pixels in all.
    pub(crate) const fn len(self) -> usize {
        self.columns * self.rows
    }
}

/// One value a pixel, row by row.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Map {
    pub(crate) grid: Grid,
    pub(crate) values: Vec<f32>,
}

impl Map {
    pub(crate) fn of(grid: Grid, value: f32) -> Self {
        Self { grid, values: vec![value; grid.len()] }
    }

    /// The value at a pixel; beyond the face that of its nearest pixel.
    pub(crate) fn at(&self, column: usize, row: usize) -> f32 {
        let column = column.min(self.grid.columns.saturating_sub(1));
        let row = row.min(self.grid.rows.saturating_sub(1));
        self.values.get(row * self.grid.columns + column).copied().unwrap_or(0.0)
    }

    /// The value at a place, mm, between the pixels round it.
    pub(crate) fn near(&self, x: f32, y: f32) -> f32 {
        let along = |place: f32| pixel(place - 0.5).unwrap_or((0, 0.0));
        let (x, y) = self.grid.inside(x, y);
        let ((column, fx), (row, fy)) = (along(x), along(y));
        let upper = self.at(column, row) + (self.at(column + 1, row) - self.at(column, row)) * fx;
        let lower = self.at(column, row + 1) + (self.at(column + 1, row + 1) - self.at(column, row + 1)) * fx;
        upper + (lower - upper) * fy
    }

    /// Adds a weight at a place, mm, shared among the four pixels round it: what is thinner than a pixel is faint.
    pub(crate) fn splat(&mut self, x: f32, y: f32, weight: f32) {
        let (x, y) = self.grid.inside(x, y);
        let (Some((column, fx)), Some((row, fy))) = (pixel(x - 0.5), pixel(y - 0.5)) else {
            return;
        };
        for (dx, dy, share) in [
            (0, 0, (1.0 - fx) * (1.0 - fy)),
            (1, 0, fx * (1.0 - fy)),
            (0, 1, (1.0 - fx) * fy),
            (1, 1, fx * fy),
        ] {
            self.add(column + dx, row + dy, weight * share);
        }
    }

    /// Adds to one pixel; beyond the face nothing.
    pub(crate) fn add(&mut self, column: usize, row: usize, weight: f32) {
        worked();
        if column < self.grid.columns
            && let Some(value) = self.values.get_mut(row * self.grid.columns + column)
        {
            *value += weight;
        }
    }

    /// Adds a thin line from one place to another, mm, as the share of each pixel that it covers, times `depth`.
    pub(crate) fn stroke(&mut self, from: (f32, f32), to: (f32, f32), width: f32, depth: f32) {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length = libm::hypotf(dx, dy);
        let step = 0.5 * self.grid.scale;
        let steps = (length / step).max(1.0);
        let weight = depth * width * (length / steps) / (self.grid.scale * self.grid.scale);
        let mut done = 0.5;
        while done < steps {
            let share = done / steps;
            self.splat(from.0 + dx * share, from.1 + dy * share, weight);
            done += 1.0;
        }
    }

    /// Adds a round disc at a place, mm, as the share of each pixel that it covers, times `depth`.
    pub(crate) fn disc(&mut self, (x, y): (f32, f32), radius: f32, depth: f32) {
        let grid = self.grid;
        if radius < grid.scale {
            let area = core::f32::consts::PI * radius * radius / (grid.scale * grid.scale);
            self.splat(x, y, area * depth);
            return;
        }
        for (column, row, dx, dy) in near(grid, x, y, radius + grid.scale) {
            let share = ((radius - libm::hypotf(dx, dy)) / grid.scale + 0.5).clamp(0.0, 1.0);
            self.add(column, row, share * depth);
        }
    }

    /// Changes the pixels within a reach of a place: each by its offsets from it, mm.
    pub(crate) fn within(&mut self, x: f32, y: f32, reach: f32, mut change: impl FnMut(&mut f32, f32, f32)) {
        let grid = self.grid;
        for (column, row, dx, dy) in near(grid, x, y, reach) {
            if let Some(value) = self.values.get_mut(row * grid.columns + column) {
                change(value, dx, dy);
            }
        }
    }

    /// Every value through a function of its place, mm.
    pub(crate) async fn fill(&mut self, mut value: impl FnMut(f32, f32, f32) -> f32) {
        let grid = self.grid;
        for (row, slots) in self.values.chunks_exact_mut(grid.columns).enumerate() {
            for (column, slot) in slots.iter_mut().enumerate() {
                let (x, y) = grid.middle(column, row);
                *slot = value(x, y, *slot);
            }
            pause().await;
        }
    }

    /// Blurred by a normal curve, whose standard deviation is given in mm, by three boxes.
    pub(crate) async fn blurred(&self, deviation: f32) -> Self {
        const BOXES: usize = 3;
        // Three boxes of half-width w have the variance w (w + 1).
        let half = 0.5
            * (libm::sqrtf(1.0 + 4.0 * (deviation / self.grid.scale) * (deviation / self.grid.scale)) - 1.0);
        let half = whole(half + 0.5);
        let mut map = self.clone();
        if half > 0 {
            for _ in 0..BOXES {
                map = map.boxed(half, 1, self.grid.columns);
                pause().await;
                map = map.boxed(half, self.grid.columns, self.grid.rows);
                pause().await;
            }
        }
        map
    }

    /// The mean over `half` pixels on either side, in lines of `length` pixels that stand `stride` apart.
    fn boxed(&self, half: usize, stride: usize, length: usize) -> Self {
        let mut map = Self::of(self.grid, 0.0);
        let lines = self.grid.len() / length.max(1);
        let share = 1.0 / coordinate(2 * half + 1);
        for line in 0..lines {
            let start = if stride == 1 { line * length } else { line };
            let at = |n: usize| self.values.get(start + n.min(length - 1) * stride).copied().unwrap_or(0.0);
            let first = at(0);
            let mut sum = first * coordinate(half + 1) + (1..=half).map(at).sum::<f32>();
            for n in 0..length {
                if let Some(slot) = map.values.get_mut(start + n * stride) {
                    *slot = sum * share;
                }
                sum += at(n + half + 1) - if n >= half { at(n - half) } else { first };
            }
        }
        map
    }
}

/// Tells where rows begin among pixels that are walked through row by row.
#[derive(Debug, Clone, Default)]
pub(crate) struct Rows(Option<usize>);

impl Rows {
    /// Whether this row is another one than the last that was asked about.
    pub(crate) fn begins(&mut self, row: usize) -> bool {
        self.0.replace(row) != Some(row)
    }
}

/// The pixels within a reach of a place, each with its offsets from it, mm.
pub(crate) fn near(grid: Grid, x: f32, y: f32, reach: f32) -> impl Iterator<Item = (usize, usize, f32, f32)> {
    let (reach_in, (in_x, in_y)) = (reach / grid.scale, grid.inside(x, y));
    let span = move |middle: f32, count: usize| {
        let from = whole((middle - reach_in).max(0.0));
        let to = whole((middle + reach_in + 1.0).max(0.0)).min(count);
        from..to
    };
    span(in_y, grid.rows).flat_map(move |row| {
        span(in_x, grid.columns).map(move |column| {
            let (px, py) = grid.middle(column, row);
            (column, row, px - x, py - y)
        })
    })
}
