//! What these tests share: panels 120 by 90 mm, the change that a fault makes, and how such a change is measured.

use stepboard_picture::{Fault, Finish, Grid, Growth, Lamp, Panel, Pores, Recipe, Severity, Species};

/// Millimetres a pixel where nothing finer is needed.
pub(crate) const COARSE: f32 = 0.5;
/// A lamp so far aside that it is not mirrored: only the colour of what lies there is seen.
pub(crate) const ASIDE: Lamp = Lamp { x: 600.0, ..Lamp::OVERHEAD };
/// A low lamp.
pub(crate) const LOW: Lamp = Lamp { x: Lamp::OVERHEAD.x, ..Lamp::RAKING };

/// Pixels in a length, mm.
pub(crate) fn pixels(length: f32, scale: f32) -> usize {
    (1..u16::MAX).take_while(|n| f32::from(*n) * scale <= length).count()
}

/// Colours that faults are seen in.
#[derive(Clone, Copy)]
pub(crate) enum Dress {
    Bare,
    Stained,
    Amber,
}

pub(crate) fn recipe(species: Species, finish: Finish, dress: Dress, seed: u32) -> Recipe {
    let (stain, amber) = match dress {
        Dress::Bare => (0.0, 0.0),
        Dress::Stained => (0.6, 0.0),
        Dress::Amber => (0.0, 0.4),
    };
    Recipe { finish, stain, amber, ..Recipe::bare(species, seed) }
}

pub(crate) fn draw(recipe: &Recipe, scale: f32) -> Panel {
    Panel::draw(recipe.clone(), Grid::covering(120.0, 90.0, scale))
}

/// The same panel with a fault.
pub(crate) fn spoiled(recipe: &Recipe, slug: &str, severity: Severity) -> Recipe {
    let fault = Fault::from_slug(slug).expect("a fault that is drawn");
    Recipe { fault: Some((fault, severity)), ..recipe.clone() }
}

/// Values over a face.
pub(crate) struct Field {
    pub(crate) columns: usize,
    pub(crate) rows: usize,
    pub(crate) values: Vec<f32>,
}

impl Field {
    pub(crate) fn of(panel: &Panel, values: Vec<f32>) -> Self {
        let grid = panel.grid();
        Self { columns: grid.columns, rows: grid.rows, values }
    }

    pub(crate) fn at(&self, column: usize, row: usize) -> f32 {
        self.values[row * self.columns + column]
    }

    /// One of red, green, blue under a lamp, 0 to 255.
    pub(crate) fn light(panel: &Panel, lamp: Lamp, part: usize) -> Self {
        let mut pixels = Vec::new();
        panel.light(lamp, &mut pixels);
        Self::of(panel, pixels.chunks_exact(4).map(|pixel| f32::from(pixel[part])).collect())
    }

    /// What another has more.
    pub(crate) fn less(&self, other: &Self) -> Self {
        let values = self.values.iter().zip(&other.values).map(|(a, b)| a - b).collect();
        Self { values, ..*self }
    }

    /// Mean of each column and of each row.
    pub(crate) fn means(&self) -> (Vec<f32>, Vec<f32>) {
        let row = |row: usize| {
            (0..self.columns).map(|column| self.at(column, row)).sum::<f32>() / self.columns as f32
        };
        let column =
            |column: usize| (0..self.rows).map(|row| self.at(column, row)).sum::<f32>() / self.rows as f32;
        ((0..self.columns).map(column).collect(), (0..self.rows).map(row).collect())
    }
}

/// Change of blue, in which honey and amber are darkest, that a fault makes under a lamp.
pub(crate) fn change(recipe: &Recipe, slug: &str, severity: Severity, lamp: Lamp, scale: f32) -> Field {
    const BLUE: usize = 2;
    let with = draw(&spoiled(recipe, slug, severity), scale);
    Field::light(&with, lamp, BLUE).less(&Field::light(&draw(recipe, scale), lamp, BLUE))
}

pub(crate) fn spread(values: &[f32]) -> f32 {
    let mean = values.iter().sum::<f32>() / values.len() as f32;
    (values.iter().map(|value| (value - mean).powi(2)).sum::<f32>() / values.len() as f32).sqrt()
}

/// Distance at which a line of values is most like itself again, in steps: the first top of its autocorrelation after it
/// has once been unlike, and how alike it is there, 0 to 1.
pub(crate) fn period(values: &[f32]) -> (usize, f32) {
    let mean = values.iter().sum::<f32>() / values.len() as f32;
    let alike = |shift: usize| {
        let pairs = values.iter().zip(&values[shift..]);
        let count = (values.len() - shift) as f32;
        pairs.map(|(a, b)| (a - mean) * (b - mean)).sum::<f32>() / count
    };
    let own = alike(0);
    let most = values.len() * 2 / 3;
    let from = (1..most).find(|shift| alike(*shift) < 0.0).unwrap_or(most - 1);
    let top = (from..most).max_by(|a, b| alike(*a).total_cmp(&alike(*b)));
    // The first top that is nearly as high as the highest one.
    let best = top.map_or(0.0, alike);
    let first = (from..most).find(|shift| {
        alike(*shift) > 0.8 * best && alike(*shift) >= alike(shift + 1) && alike(*shift) >= alike(shift - 1)
    });
    first.map_or((0, 0.0), |shift| (shift, alike(shift) / own))
}

/// How alike two fields are, -1 to 1.
pub(crate) fn likeness(a: &[f32], b: &[f32]) -> f32 {
    let (mean_a, mean_b) = (a.iter().sum::<f32>() / a.len() as f32, b.iter().sum::<f32>() / b.len() as f32);
    let both = a.iter().zip(b).map(|(a, b)| (a - mean_a) * (b - mean_b)).sum::<f32>() / a.len() as f32;
    both / (spread(a) * spread(b)).max(f32::MIN_POSITIVE)
}

pub(crate) const SEEDS: [u32; 3] = [1, 2, 3];

pub(crate) fn amber(seed: u32) -> Recipe {
    recipe(Species::plain(), Finish::Cleared, Dress::Amber, seed)
}

pub(crate) fn stained(seed: u32) -> Recipe {
    recipe(Species::plain(), Finish::Cleared, Dress::Stained, seed)
}

pub(crate) fn bare(seed: u32) -> Recipe {
    recipe(Species::plain(), Finish::Bare, Dress::Bare, seed)
}

/// A wood with large pores.
pub(crate) fn open_wood() -> Species {
    let pores = Pores {
        count: 25.0,
        stand: Growth::Diffuse,
        length: 3.0,
        length_spread: 0.5,
        width: 0.2,
        width_spread: 0.03,
    };
    Species { pores: vec![pores], telegraphs: true, pore: [70, 40, 25], ..Species::plain() }
}

/// Longest run of places for which something holds.
pub(crate) fn longest_run(length: usize, holds: impl Fn(usize) -> bool) -> usize {
    let (mut run, mut most) = (0, 0);
    for n in 0..length {
        run = if holds(n) { run + 1 } else { 0 };
        most = most.max(run);
    }
    most
}
