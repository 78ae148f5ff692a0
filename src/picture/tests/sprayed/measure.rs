//! What these tests share: woods with and without large pores, and spots that are found and measured.

use crate::panels::{draw, spoiled};
use stepboard_picture::{Growth, Panel, Pores, Recipe, Severity, Species};

/// A wood with large pores everywhere, as mahogany.
pub(crate) fn open_pored() -> Species {
    let pores = Pores {
        count: 25.0,
        stand: Growth::Diffuse,
        length: 3.0,
        length_spread: 0.6,
        width: 0.16,
        width_spread: 0.04,
    };
    Species { pore: [70, 33, 20], pores: vec![pores], telegraphs: true, ..Species::plain() }
}

/// How much a fault raises each pixel, micrometres.
pub(crate) fn raised(recipe: &Recipe, slug: &str, severity: Severity, scale: f32) -> (Panel, Vec<f32>) {
    let (with, without) = (draw(&spoiled(recipe, slug, severity), scale), draw(recipe, scale));
    let rise = with.height().iter().zip(without.height()).map(|(a, b)| a - b).collect();
    (with, rise)
}

/// A spot: its middle and its size, mm.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Spot {
    pub(crate) x: f32,
    pub(crate) y: f32,
    /// Diameter of a disc as large.
    pub(crate) across: f32,
    /// Whether it touches the edge of the picture.
    pub(crate) cut: bool,
}

/// Spots of pixels that touch each other.
pub(crate) fn spots(panel: &Panel, on: impl Fn(usize) -> bool) -> Vec<Spot> {
    let (columns, rows, scale) = (panel.grid().columns, panel.grid().rows, panel.grid().scale);
    let mut left: Vec<bool> = (0..columns * rows).map(on).collect();
    let mut found = Vec::new();
    for start in 0..left.len() {
        let (mut open, mut area, mut sum, mut cut) = (vec![start], 0.0, (0.0, 0.0), false);
        while let Some(place) = open.pop() {
            if !std::mem::replace(&mut left[place], false) {
                continue;
            }
            let (column, row) = (place % columns, place / columns);
            area += 1.0;
            sum = (sum.0 + column as f32 + 0.5, sum.1 + row as f32 + 0.5);
            cut |= column == 0 || row == 0 || column + 1 == columns || row + 1 == rows;
            for beside in row.saturating_sub(1)..(row + 2).min(rows) {
                open.extend(
                    (column.saturating_sub(1)..(column + 2).min(columns)).map(|at| beside * columns + at),
                );
            }
        }
        if area > 0.0 {
            let across = scale * 2.0 * (area / std::f32::consts::PI).sqrt();
            found.push(Spot { x: scale * sum.0 / area, y: scale * sum.1 / area, across, cut });
        }
    }
    found
}

/// Spots that are marked.
pub(crate) fn marked(panel: &Panel) -> Vec<Spot> {
    spots(panel, |place| panel.mask()[place] > 0.5)
}

/// Share of spots whose nearest neighbour lies along the grain from them, within about 17 degrees.
pub(crate) fn in_line(spots: &[Spot]) -> f32 {
    const WITHIN: f32 = 0.3;
    let along = |spot: &&Spot| {
        let off = |other: &Spot| (other.x - spot.x, other.y - spot.y);
        let far = |other: &Spot| off(other).0.hypot(off(other).1);
        let others = spots.iter().filter(|other| far(other) > 0.0);
        let nearest = others.min_by(|a, b| far(a).total_cmp(&far(b)));
        nearest.is_some_and(|other| off(other).1.abs() < WITHIN * off(other).0.abs())
    };
    spots.iter().filter(along).count() as f32 / spots.len().max(1) as f32
}
