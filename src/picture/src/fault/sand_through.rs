//! Sand-through: a patch at an edge or on a high spot where the colour was rubbed away, and in its middle the sealer too. The
//! colour changes, and naphtha does not bring it back; a witness line is an outline only. Round it the gloss is scuffed, and
//! its edge is clean, not smeared as where a wheel burnt.

use super::field::join;
use super::worn::{Rise, on_edge, wear};
use crate::noise::Chance;
use crate::number::smooth;
use crate::panel::{Layers, Probe, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Places at edges and on the face.
const EDGES: [usize; 3] = [1, 2, 2];
const SPOTS: [usize; 3] = [0, 0, 1];
/// Half of their length along the edge and of their width from it, mm, and how far they are worn.
const LONG: [(f32, f32); 3] = [(12.0, 18.0), (16.0, 25.0), (20.0, 34.0)];
const DEEP: [(f32, f32); 3] = [(6.0, 8.0), (6.5, 9.0), (7.0, 11.0)];
const WORN: [(f32, f32); 3] = [(1.8, 2.1), (2.0, 2.7), (2.4, 3.6)];
/// Shares of the panel between which a spot on the face lies.
const INNER: (f32, f32) = (0.25, 0.75);
/// A spot on the face is rounder, and not so far gone.
const ROUNDER: f32 = 1.7;
const SHORTER: f32 = 0.6;
const MILDER: f32 = 0.75;
/// Strokes of the block tear the outline.
const TORN: f32 = 0.16;
/// Wear at which the gloss is scuffed, the colour goes, the sealer goes.
const SCUFFED: (f32, f32) = (0.10, 0.60);
const COLOUR: (f32, f32) = (0.60, 1.15);
const SEALER: (f32, f32) = (1.25, 1.50);
/// What stain is left where the wood itself was cut.
const STAIN_LEFT: f32 = 0.35;
/// Fresh wood below is paler than what light and the finish have darkened.
const FRESH: f32 = 0.42;
/// Roughness of the scuff, radians, the share it scatters wide, and how pale its strokes are.
const SCUFF: f32 = 0.008;
const SCATTERS: f32 = 0.07;
const DUST: f32 = 0.03;
/// How much lower the face is where the clear is through, micrometres.
const LOWER: f32 = 14.0;
const LOWEST: f32 = 1.6;
/// The dish that the block leaves is rounder than its torn outline, mm.
const ROUND: f32 = 1.2;
/// Wear from which it counts as the fault.
const MARKED: (f32, f32) = (0.32, 0.50);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_240));
    let mut rises = Vec::new();
    for _ in 0..severity.of(EDGES) {
        let (at, along) = on_edge(grid, &mut chance);
        let (long, deep) = (pick(&mut chance, severity.of(LONG)), pick(&mut chance, severity.of(DEEP)));
        let half = if along { (long, deep) } else { (deep, long) };
        rises.push(Rise { at, half, worn: pick(&mut chance, severity.of(WORN)) });
    }
    for _ in 0..severity.of(SPOTS) {
        let at = (pick(&mut chance, INNER) * grid.width(), pick(&mut chance, INNER) * grid.height());
        let long = SHORTER * pick(&mut chance, severity.of(LONG));
        let wide = long / ROUNDER;
        rises.push(Rise { at, half: (long, wide), worn: MILDER * pick(&mut chance, severity.of(WORN)) });
    }
    let worn = wear(grid, &rises, layer(recipe.seed, 1_241), TORN).await;
    for (mask, worn) in layers.mask.values.iter_mut().zip(&worn.values) {
        *mask = mask.max(smooth(MARKED.0, MARKED.1, *worn));
    }
    let wet = recipe.probe == Probe::Wetted;
    let film = &mut layers.film;
    for (height, worn) in film.height.values.iter_mut().zip(&worn.blurred(ROUND).await.values) {
        *height -= LOWER * worn.min(LOWEST);
    }
    pause().await;
    for (place, worn) in worn.values.iter().copied().enumerate().filter(|(_, worn)| *worn > 0.0) {
        let change = |map: &mut crate::map::Map, edit: &dyn Fn(&mut f32)| {
            if let Some(value) = map.values.get_mut(place) {
                edit(value);
            }
        };
        let colour = smooth(COLOUR.0, COLOUR.1, worn);
        let bare = smooth(SEALER.0, SEALER.1, worn);
        change(&mut film.tint, &|tint| *tint *= 1.0 - colour);
        change(&mut film.body, &|body| *body *= 1.0 + FRESH * bare);
        change(&mut layers.wood.takes, &|takes| *takes *= 1.0 - (1.0 - STAIN_LEFT) * bare);
        // Naphtha fills the scuff and wets the wood: what is left is the colour.
        if !wet {
            let scuff = smooth(SCUFFED.0, SCUFFED.1, worn);
            change(&mut film.there, &|there| *there *= 1.0 - bare);
            change(&mut film.rough, &|rough| *rough += SCUFF * scuff);
            change(&mut film.veil, &|veil| join(veil, SCATTERS * scuff));
            change(&mut film.haze, &|haze| join(haze, DUST * scuff * (1.0 - bare)));
        }
    }
}

fn pick(chance: &mut Chance, (from, to): (f32, f32)) -> f32 {
    chance.between(from, to)
}
