//! How far each place lies within lines, known on a coarse net and mixed between: quick, and as good as a tenth of a mm
//! wherever a line is not sharply bent.

use super::path::{Path, Point, within};
use crate::map::Grid;
use crate::number::{coordinate, mix, pixel, whole};
use crate::pause::pause;

/// From one knot to the next, mm.
const STEP: f32 = 4.0;
/// Room left round the lines, in steps.
const ROOM: f32 = 2.0;
/// Nearer to a line than this the distance is taken by itself, mm.
const EXACT: f32 = 3.0;

/// Distances on a net.
#[derive(Debug, Clone)]
pub(super) struct Field {
    paths: Vec<Path>,
    corner: Point,
    columns: usize,
    rows: usize,
    known: Vec<f32>,
}

impl Field {
    /// Measures the net, a row of it in each turn.
    pub(super) async fn of(paths: &[Path]) -> Self {
        let ((left, top), (right, bottom)) = bounds(paths);
        let corner = (left - ROOM * STEP, top - ROOM * STEP);
        let count = |from: f32, to: f32| whole((to - from) / STEP + 2.0 * ROOM + 0.5) + 1;
        let (columns, rows) = (count(left, right), count(top, bottom));
        let mut field = Self { paths: paths.to_vec(), corner, columns, rows, known: Vec::new() };
        for row in 0..rows {
            for column in 0..columns {
                field.known.push(within(paths, field.place(column, row)));
            }
            pause().await;
        }
        field
    }

    fn place(&self, column: usize, row: usize) -> Point {
        (self.corner.0 + STEP * coordinate(column), self.corner.1 + STEP * coordinate(row))
    }

    fn knot(&self, column: usize, row: usize) -> f32 {
        let (column, row) =
            (column.min(self.columns.saturating_sub(1)), row.min(self.rows.saturating_sub(1)));
        self.known.get(row * self.columns + column).copied().unwrap_or(f32::NEG_INFINITY)
    }

    /// Distance within the lines at a place, mm; below 0 outside.
    pub(super) fn at(&self, at: Point) -> f32 {
        let last = self.place(self.columns.saturating_sub(1), self.rows.saturating_sub(1));
        let on_net = (self.corner.0..=last.0).contains(&at.0) && (self.corner.1..=last.1).contains(&at.1);
        let mixed = self.mixed(at);
        if !on_net || mixed.abs() < EXACT { within(&self.paths, at) } else { mixed }
    }

    fn mixed(&self, (x, y): Point) -> f32 {
        let along = |from: f32, to: f32| pixel((to - from) / STEP).unwrap_or((0, 0.0));
        let ((column, u), (row, v)) = (along(self.corner.0, x), along(self.corner.1, y));
        let upper = mix(self.knot(column, row), self.knot(column + 1, row), u);
        let lower = mix(self.knot(column, row + 1), self.knot(column + 1, row + 1), u);
        mix(upper, lower, v)
    }

    /// What is farther within than `far`, and no more than another measure says.
    pub(super) fn less(mut self, far: f32, other: impl Fn(Point) -> f32) -> Self {
        let known: Vec<f32> = self
            .known
            .iter()
            .enumerate()
            .map(|(knot, within)| {
                (within - far).min(other(self.place(knot % self.columns, knot / self.columns)))
            })
            .collect();
        self.known = known;
        self
    }

    /// The way in which the distance grows.
    pub(super) fn inward(&self, (x, y): Point) -> Point {
        let half = 0.5 * STEP;
        let way = (
            self.mixed((x + half, y)) - self.mixed((x - half, y)),
            self.mixed((x, y + half)) - self.mixed((x, y - half)),
        );
        let long = libm::hypotf(way.0, way.1).max(f32::EPSILON);
        (way.0 / long, way.1 / long)
    }

    /// The place farthest within, the upper one of several.
    pub(super) fn deepest(&self) -> Point {
        let best = self.known.iter().enumerate().fold((0, f32::NEG_INFINITY), |best, (knot, far)| {
            if *far > best.1 + f32::EPSILON { (knot, *far) } else { best }
        });
        self.place(best.0 % self.columns, best.0 / self.columns)
    }

    /// The lines along which the distance has a value: a step from cell to cell along the edge of what lies farther within.
    pub(super) fn contours(&self, level: f32) -> Vec<Path> {
        let mut pieces = self.pieces(level);
        let mut contours = Vec::new();
        while let Some((first, mut end)) = pieces.pop() {
            let mut points = vec![first, end];
            while let Some(next) = pieces.iter().position(|(from, _)| near(*from, end)) {
                end = pieces.swap_remove(next).1;
                points.push(end);
            }
            points.pop();
            if points.len() > 2 {
                contours.push(Path::through(points));
            }
        }
        contours
    }

    /// Pieces of the contours, one or two a cell, each with what is farther within on the same hand.
    fn pieces(&self, level: f32) -> Vec<(Point, Point)> {
        let mut pieces = Vec::new();
        for row in 0..self.rows.saturating_sub(1) {
            for column in 0..self.columns.saturating_sub(1) {
                let corner = |dx: usize, dy: usize| {
                    (self.place(column + dx, row + dy), self.knot(column + dx, row + dy) - level)
                };
                let round = [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)];
                let (mut into, mut out) = (Vec::new(), Vec::new());
                for (here, next) in round.iter().zip(round.iter().cycle().skip(1)) {
                    if (here.1 > 0.0) == (next.1 > 0.0) {
                        continue;
                    }
                    let share = here.1 / (here.1 - next.1);
                    let point = (mix(here.0.0, next.0.0, share), mix(here.0.1, next.0.1, share));
                    if next.1 > 0.0 { into.push(point) } else { out.push(point) }
                }
                pieces.extend(out.into_iter().zip(into));
            }
        }
        pieces
    }
}

/// Whether two points of neighbouring cells are one.
fn near(a: Point, b: Point) -> bool {
    const SAME: f32 = 1.0e-2;
    (a.0 - b.0).abs() < SAME && (a.1 - b.1).abs() < SAME
}

/// The least and the greatest coordinates of lines.
pub(super) fn bounds(paths: &[Path]) -> (Point, Point) {
    Path::through(paths.iter().flat_map(|path| path.points().iter().copied()).collect()).bounds()
}

/// The columns and the rows of a picture that lines touch, from and to.
pub(super) fn touched(paths: &[Path], grid: Grid) -> [(usize, usize); 2] {
    let ((left, top), (right, bottom)) = bounds(paths);
    let span = |from: f32, to: f32, count: usize| {
        (whole((from / grid.scale - 1.0).max(0.0)), (whole((to / grid.scale + 2.0).max(0.0))).min(count))
    };
    [span(left, right, grid.columns), span(top, bottom, grid.rows)]
}
