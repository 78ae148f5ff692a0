//! What is measured on pictures of woods: light of the pixels, dashes, rows.

use stepboard_picture::{Face, Grid, Lamp, LampKind, Panel, Recipe, Species};

/// Wood is darker than this share of the way to a pore's dark only in one.
pub(crate) const PART: f32 = 0.45;

const WIDTH: f32 = 120.0;
const HEIGHT: f32 = 90.0;

/// A picture of bare wood: its light, 0 to 255, row by row.
pub(crate) struct Picture {
    pub(crate) grid: Grid,
    pub(crate) light: Vec<f32>,
    pub(crate) bytes: Vec<u8>,
}

pub(crate) fn whole(scale: f32) -> Grid {
    Grid::covering(WIDTH, HEIGHT, scale)
}

pub(crate) fn picture(species: &Species, face: Face, seed: u32, grid: Grid) -> Picture {
    let panel = Panel::draw(Recipe { face, ..Recipe::bare(species.clone(), seed) }, grid);
    let mut bytes = Vec::new();
    // A small lamp lights bare wood evenly.
    panel.light(Lamp { kind: LampKind::Point, ..Lamp::OVERHEAD }, &mut bytes);
    let light =
        bytes.chunks(4).map(|pixel| pixel[..3].iter().map(|part| f32::from(*part)).sum::<f32>() / 3.0);
    Picture { grid, light: light.collect(), bytes }
}

/// A dark dash, mm: its length along the grain, its greatest width across it.
pub(crate) struct Dash {
    pub(crate) length: f32,
    pub(crate) width: f32,
}

impl Picture {
    pub(crate) fn at(&self, column: usize, row: usize) -> f32 {
        self.light[row * self.grid.columns + column]
    }

    /// Mean light of each row of a strip.
    pub(crate) fn rows(&self, from: usize, to: usize) -> Vec<f32> {
        (0..self.grid.rows)
            .map(|row| mean(&(from..to).map(|column| self.at(column, row)).collect::<Vec<_>>()))
            .collect()
    }

    /// How much of each pixel is dark: its light between that of wood and that of the darkest pixels.
    pub(crate) fn cover(&self) -> Vec<f32> {
        let mut sorted = self.light.clone();
        sorted.sort_by(f32::total_cmp);
        let (darkest, wood) = (sorted[sorted.len() / 500], sorted[sorted.len() * 3 / 5]);
        self.light.iter().map(|light| ((wood - light) / (wood - darkest)).clamp(0.0, 1.0)).collect()
    }

    /// Dark dashes that do not reach the sides.
    pub(crate) fn dashes(&self) -> Vec<Dash> {
        let (columns, rows) = (self.grid.columns, self.grid.rows);
        let cover = self.cover();
        let mut seen = vec![false; cover.len()];
        let mut dashes = Vec::new();
        for start in 0..cover.len() {
            if seen[start] || cover[start] < PART {
                continue;
            }
            let (mut stack, mut part) = (vec![start], Vec::new());
            seen[start] = true;
            while let Some(place) = stack.pop() {
                part.push(place);
                for next in beside(place, columns, rows) {
                    if !seen[next] && cover[next] >= PART {
                        seen[next] = true;
                        stack.push(next);
                    }
                }
            }
            let (first, last) = part.iter().fold((columns, 0), |(first, last), place| {
                (first.min(place % columns), last.max(place % columns))
            });
            if first == 0 || last + 1 == columns {
                continue;
            }
            let thickness = |column: usize| {
                part.iter().filter(|place| *place % columns == column).map(|place| cover[*place]).sum::<f32>()
            };
            let widest = (first..=last).map(thickness).fold(0.0, f32::max);
            dashes.push(Dash {
                length: (last - first + 1) as f32 * self.grid.scale,
                width: widest * self.grid.scale,
            });
        }
        dashes
    }
}

pub(crate) fn mean(values: &[f32]) -> f32 {
    values.iter().sum::<f32>() / values.len() as f32
}

/// Variance of values against their mean.
pub(crate) fn dispersion(values: &[f32]) -> f32 {
    let middle = mean(values);
    let square = values.iter().map(|value| (value - middle) * (value - middle)).sum::<f32>();
    square / values.len() as f32 / middle
}

/// Correlation of two rows of values.
pub(crate) fn correlation(a: &[f32], b: &[f32]) -> f32 {
    let (mean_a, mean_b) = (mean(a), mean(b));
    let sum =
        |f: &dyn Fn(f32, f32) -> f32| a.iter().zip(b).map(|(x, y)| f(x - mean_a, y - mean_b)).sum::<f32>();
    sum(&|x, y| x * y) / (sum(&|x, _| x * x) * sum(&|_, y| y * y)).sqrt()
}

/// The value that a share of all is below.
pub(crate) fn quantile(values: &mut [f32], share: f32) -> f32 {
    values.sort_by(f32::total_cmp);
    values[((values.len() - 1) as f32 * share) as usize]
}

/// The pixels beside a pixel, above, below and to both sides, that lie on the face.
pub(crate) fn beside(place: usize, columns: usize, rows: usize) -> impl Iterator<Item = usize> {
    let (column, row) = (place % columns, place / columns);
    let all = [
        (column > 0).then(|| place - 1),
        (column + 1 < columns).then(|| place + 1),
        (row > 0).then(|| place - columns),
        (row + 1 < rows).then(|| place + columns),
    ];
    all.into_iter().flatten()
}
