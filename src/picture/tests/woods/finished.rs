//! Woods under stain and film, measured from the pixels.

use crate::looks::look;
use crate::measure::{mean, whole};
use stepboard_picture::{Finish, Lamp, LampKind, Panel, Recipe};

const SCALE: f32 = 0.25;
/// A lamp here is not mirrored on the panel, mm.
const AWAY: Lamp = Lamp { x: 900.0, ..Lamp::OVERHEAD };

fn pixels(recipe: Recipe, lamp: Lamp) -> Vec<[f32; 3]> {
    let mut bytes = Vec::new();
    Panel::draw(recipe, whole(SCALE)).light(lamp, &mut bytes);
    bytes.chunks(4).map(|pixel| [0, 1, 2].map(|part| f32::from(pixel[part]))).collect()
}

/// Mean red, green and blue of a panel with that much stain.
fn colour(slug: &str, stain: f32) -> [f32; 3] {
    let recipe = Recipe { stain, ..Recipe::bare(look(slug), 3) };
    let pixels = pixels(recipe, Lamp { kind: LampKind::Point, ..AWAY });
    [0, 1, 2].map(|part| mean(&pixels.iter().map(|pixel| pixel[part]).collect::<Vec<_>>()))
}

/// How far from grey, of the brightest part.
fn vivid([red, _, blue]: [f32; 3]) -> f32 {
    (red - blue) / red
}

/// A honey stain turns pale wood yellow-brown; wood that is red-brown already only darkens, and no stain turns it orange
/// (common practice, no source).
#[test]
fn honey_stain_leaves_mahogany_brown() {
    for slug in ["mahogany", "sapele", "black-walnut"] {
        let (raw, stained) = (colour(slug, 0.0), colour(slug, 0.6));
        assert!(stained[0] < 0.93 * raw[0], "{slug} is darker: {raw:?} {stained:?}");
        assert!(vivid(stained) - vivid(raw) < 0.12, "{slug} is as brown: {raw:?} {stained:?}");
    }
    for slug in ["hard-maple", "white-ash"] {
        let (raw, stained) = (colour(slug, 0.0), colour(slug, 0.6));
        assert!(vivid(stained) - vivid(raw) > 0.2, "{slug} turns to honey: {raw:?} {stained:?}");
        let [red, green, blue] = stained;
        assert!(red > green && green > blue, "{stained:?}");
    }
}

/// Rows in which the right edge of the mirrored tubes leaves the row above by more than half a millimetre.
fn torn(filled: bool, slug: &str) -> usize {
    let filler = filled.then_some([74, 50, 32]);
    let recipe = |opaque| Recipe { finish: Finish::Cleared, filler, opaque, ..Recipe::bare(look(slug), 2) };
    // Under opaque colour only the surface is seen.
    let light = pixels(recipe(Some([8, 8, 8])), Lamp::OVERHEAD);
    let grid = whole(SCALE);
    let edges: Vec<f32> = light
        .chunks(grid.columns)
        .filter_map(|row| row.iter().rposition(|pixel| pixel[1] > 150.0).map(|last| last as f32 * SCALE))
        .collect();
    edges.windows(2).filter(|pair| (pair[1] - pair[0]).abs() > 0.5).count()
}

/// Open pores are grooves: they tear the mirrored lamp, and filled ones do not (T13; T14).
#[test]
fn open_pores_are_grooves_in_sprayed_gloss() {
    for slug in ["white-ash", "mahogany", "red-oak"] {
        let (open, filled) = (torn(false, slug), torn(true, slug));
        assert!(open > 30 && filled < open / 5, "{slug}: {open} open, {filled} filled");
    }
}

/// A satin face on dark wood is a soft dark sheen: nowhere bright, and no bright lines beside dark ones as on brushed metal
/// (by eye, common practice, no source).
#[test]
fn satin_on_ebony_is_dark_and_soft() {
    let recipe = Recipe { finish: Finish::Rubbed, ..Recipe::bare(look("ebony"), 2) };
    let grid = whole(SCALE);
    let light: Vec<f32> = pixels(recipe, Lamp::OVERHEAD).iter().map(|pixel| pixel[1]).collect();
    let most = light.iter().copied().fold(0.0, f32::max);
    assert!(most < 170.0, "{most}");
    let middle: Vec<f32> = light
        .chunks(grid.columns)
        .map(|row| mean(&row[grid.columns / 2 - 12..grid.columns / 2 + 12]))
        .collect();
    let steps: Vec<f32> = middle.windows(2).map(|pair| (pair[1] - pair[0]).abs()).collect();
    assert!(mean(&steps) < 0.02 * mean(&middle), "{} of {}", mean(&steps), mean(&middle));
}

/// Nothing of the wood is seen through opaque colour: whatever the figure below, rows are as bright as over plain maple.
#[test]
fn opaque_colour_hides_the_figure() {
    let rows = |slug: &str| -> Vec<f32> {
        let recipe = Recipe {
            finish: Finish::Cleared,
            filler: Some([74, 50, 32]),
            opaque: Some([190, 160, 120]),
            ..Recipe::bare(look(slug), 3)
        };
        let light = pixels(recipe, Lamp { kind: LampKind::Point, x: 60.0, y: 900.0, ..AWAY });
        let rows = light.chunks(whole(SCALE).columns);
        rows.map(|row| mean(&row.iter().map(|pixel| pixel[0]).collect::<Vec<_>>())).collect()
    };
    let plain = rows("hard-maple");
    for slug in ["sapele", "koa", "mahogany"] {
        let most = rows(slug).iter().zip(&plain).map(|(row, plain)| (row - plain).abs()).fold(0.0, f32::max);
        assert!(most < 4.0, "{slug}: {most}");
    }
}
