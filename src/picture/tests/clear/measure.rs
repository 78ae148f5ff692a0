//! What these tests share: a dark panel 120 by 90 mm, with pores or without, and what a fault changes of its picture.

use stepboard_picture::{
    Fault, Finish, Grid, Growth, Lamp, LampKind, Panel, Pores, Probe, Recipe, Severity, Species,
};

/// Millimetres a pixel.
pub(crate) const SCALE: f32 = 0.5;
/// A lamp so far aside that it is not mirrored: only the colour of what lies there is seen.
pub(crate) const ASIDE: Lamp = Lamp { x: 600.0, ..Lamp::OVERHEAD };
/// Channel bytes a pixel.
const PIXEL: usize = 4;

/// A dark, even wood without pores that one sees.
pub(crate) fn dark() -> Species {
    const DARK: [u8; 3] = [90, 52, 38];
    Species { base: DARK, early: DARK, pore: DARK, ..Species::plain() }
}

/// The same with wide, darker pores.
pub(crate) fn porous() -> Species {
    let pores = Pores {
        count: 9.0,
        stand: Growth::Diffuse,
        length: 4.0,
        length_spread: 0.4,
        width: 0.6,
        width_spread: 0.05,
    };
    Species { pores: vec![pores], pore: [30, 18, 14], telegraphs: true, streak: 0.0, fine: 0.0, ..dark() }
}

/// A bulb that is mirrored at a place.
pub(crate) const fn bulb(x: f32, y: f32) -> Lamp {
    Lamp { kind: LampKind::Point, x, y, turn: 0.0 }
}

pub(crate) fn sound(species: Species, finish: Finish, seed: u32) -> Recipe {
    Recipe { finish, amber: 0.3, ..Recipe::bare(species, seed) }
}

pub(crate) fn spoiled(recipe: &Recipe, slug: &str, severity: Severity) -> Recipe {
    let fault = Fault::from_slug(slug).expect("a fault that is drawn");
    Recipe { fault: Some((fault, severity)), ..recipe.clone() }
}

pub(crate) fn probed(recipe: &Recipe, probe: Probe) -> Recipe {
    Recipe { probe, ..recipe.clone() }
}

pub(crate) fn draw(recipe: &Recipe, scale: f32) -> Panel {
    Panel::draw(recipe.clone(), Grid::covering(120.0, 90.0, scale))
}

/// Values over a face.
pub(crate) struct Face {
    pub(crate) grid: Grid,
    pub(crate) values: Vec<f32>,
}

impl Face {
    /// Mean of red, green and blue under a lamp, 0 to 255.
    pub(crate) fn bright(panel: &Panel, lamp: Lamp) -> Self {
        let bytes = bytes(panel, lamp);
        let values = bytes
            .chunks_exact(PIXEL)
            .map(|pixel| pixel.iter().take(3).map(|part| f32::from(*part)).sum::<f32>() / 3.0);
        Self { grid: panel.grid(), values: values.collect() }
    }

    pub(crate) fn at(&self, column: usize, row: usize) -> f32 {
        self.values[row * self.grid.columns + column]
    }

    /// Middle of a pixel by its number, mm.
    pub(crate) fn middle(&self, place: usize) -> (f32, f32) {
        let along = |n: usize| (n as f32 + 0.5) * self.grid.scale;
        (along(place % self.grid.columns), along(place / self.grid.columns))
    }

    /// What another has more.
    pub(crate) fn less(&self, other: &Self) -> Self {
        let values = self.values.iter().zip(&other.values).map(|(a, b)| a - b).collect();
        Self { values, ..*self }
    }

    /// Mean over the pixels that a rule picks by their number; 0 where it picks none.
    pub(crate) fn mean(&self, pick: impl Fn(usize) -> bool) -> f32 {
        let picked = self.values.iter().enumerate().filter(|(place, _)| pick(*place));
        let (sum, count) = picked.fold((0.0, 0.0), |(sum, count), (_, value)| (sum + value, count + 1.0));
        if count > 0.0 { sum / count } else { 0.0 }
    }

    /// Patches of pixels above a value that touch: for each its pixels' numbers.
    pub(crate) fn patches(&self, above: f32) -> Vec<Vec<usize>> {
        let (columns, count) = (self.grid.columns, self.values.len());
        let mut seen = vec![false; count];
        let mut patches = Vec::new();
        for start in 0..count {
            if seen[start] || self.values[start] <= above {
                continue;
            }
            let (mut patch, mut next) = (Vec::new(), vec![start]);
            seen[start] = true;
            while let Some(place) = next.pop() {
                patch.push(place);
                let (column, row) = (place % columns, place / columns);
                let beside = [
                    (column > 0).then(|| place - 1),
                    (column + 1 < columns).then_some(place + 1),
                    (row > 0).then(|| place - columns),
                    (place + columns < count).then_some(place + columns),
                ];
                for place in beside.into_iter().flatten() {
                    if !seen[place] && self.values[place] > above {
                        seen[place] = true;
                        next.push(place);
                    }
                }
            }
            patches.push(patch);
        }
        patches
    }

    /// Width and height of the box round some pixels, mm.
    pub(crate) fn extent(&self, patch: &[usize]) -> (f32, f32) {
        let span = |of: &dyn Fn(usize) -> usize| {
            let (least, most) =
                patch.iter().fold((usize::MAX, 0), |(a, b), place| (a.min(of(*place)), b.max(of(*place))));
            (most + 1 - least) as f32 * self.grid.scale
        };
        let columns = self.grid.columns;
        (span(&|place| place % columns), span(&|place| place / columns))
    }
}

pub(crate) fn bytes(panel: &Panel, lamp: Lamp) -> Vec<u8> {
    let mut pixels = Vec::new();
    panel.light(lamp, &mut pixels);
    pixels
}

/// What a fault adds to the brightness of a panel under a lamp.
pub(crate) fn change(recipe: &Recipe, slug: &str, severity: Severity, lamp: Lamp) -> Face {
    let with = Face::bright(&draw(&spoiled(recipe, slug, severity), SCALE), lamp);
    with.less(&Face::bright(&draw(recipe, SCALE), lamp))
}

/// How alike two sets of values are, -1 to 1.
pub(crate) fn likeness(a: &[f32], b: &[f32]) -> f32 {
    let mean = |values: &[f32]| values.iter().sum::<f32>() / values.len() as f32;
    let (mean_a, mean_b) = (mean(a), mean(b));
    let sum = |pairs: &mut dyn Iterator<Item = (f32, f32)>| pairs.map(|(a, b)| a * b).sum::<f32>();
    let off_a: Vec<f32> = a.iter().map(|value| value - mean_a).collect();
    let off_b: Vec<f32> = b.iter().map(|value| value - mean_b).collect();
    let both = sum(&mut off_a.iter().copied().zip(off_b.iter().copied()));
    let own = |off: &[f32]| sum(&mut off.iter().copied().zip(off.iter().copied()));
    both / (own(&off_a) * own(&off_b)).sqrt().max(f32::MIN_POSITIVE)
}
