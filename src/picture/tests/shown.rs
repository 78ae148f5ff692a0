//! Light from the side that it is laid on, and the line round a fault, measured on pixels, heights and mask.

#![allow(
    clippy::as_conversions,
    clippy::cast_precision_loss,
    clippy::indexing_slicing,
    reason = "a test stops where something is wrong"
)]

use stepboard_picture::{Fault, Finish, Grid, Lamp, Panel, Probe, Recipe, Severity, Species};

/// Width and height of the panel, mm, and millimetres a pixel.
const WIDTH: f32 = 120.0;
const HEIGHT: f32 = 90.0;
const SCALE: f32 = 0.25;
/// Bytes of a channel that nobody takes for the same: the lines are put on unmixed.
const CHANGED: u8 = 1;

fn panel(fault: Option<Fault>, seed: u32, scale: f32) -> Panel {
    Panel::draw(recipe(fault, seed), Grid::covering(WIDTH, HEIGHT, scale))
}

fn recipe(fault: Option<Fault>, seed: u32) -> Recipe {
    let mut recipe = Recipe::bare(Species::plain(), seed);
    recipe.finish = Finish::Cleared;
    recipe.opaque = Some([120, 120, 120]);
    recipe.fault = fault.map(|fault| (fault, Severity::Plain));
    recipe
}

fn green(panel: &Panel, lamp: Lamp) -> Vec<f32> {
    let mut pixels = Vec::new();
    panel.light(lamp, &mut pixels);
    pixels.chunks(4).map(|pixel| f32::from(pixel[1])).collect()
}

/// How much brighter than from the other side a place is, against the rise of the surface along the grain and across it:
/// correlations. What the room mirrors is the same both times and falls out.
fn with_slope(panel: &Panel, turn: f32) -> (f32, f32) {
    let (grid, height) = (panel.grid(), panel.height());
    let [one, other] = [turn, turn + 180.0].map(|turn| green(panel, Lamp { turn, ..Lamp::RAKING }));
    let light: Vec<f32> = one.iter().zip(other).map(|(one, other)| one - other).collect();
    let mut along = Vec::new();
    let mut across = Vec::new();
    for row in 1..grid.rows - 1 {
        for column in 1..grid.columns - 1 {
            let place = row * grid.columns + column;
            along.push((height[place + 1] - height[place - 1], light[place]));
            across.push((height[place + grid.columns] - height[place - grid.columns], light[place]));
        }
    }
    (correlation(&along), correlation(&across))
}

fn correlation(pairs: &[(f32, f32)]) -> f32 {
    let count = pairs.len() as f32;
    let mean = |of: &dyn Fn(&(f32, f32)) -> f32| pairs.iter().map(of).sum::<f32>() / count;
    let (x, y) = (mean(&|pair| pair.0), mean(&|pair| pair.1));
    let both = mean(&|pair| (pair.0 - x) * (pair.1 - y));
    let (xx, yy) = (mean(&|pair| (pair.0 - x).powi(2)), mean(&|pair| (pair.1 - y).powi(2)));
    both / (xx * yy).sqrt()
}

#[test]
fn a_raking_lamp_lights_what_faces_it() {
    /// A surface that faces the lamp is brighter, one that turns away darker; to one aside the lamp says little.
    const GOES_WITH: f32 = 0.6;
    const ASIDE: f32 = 0.25;
    let panel = panel(Some(Fault::OrangePeel), 4, SCALE);
    for (turn, along, across) in [(0.0, 1.0, 0.0), (90.0, 0.0, 1.0), (180.0, -1.0, 0.0), (270.0, 0.0, -1.0)] {
        let seen = with_slope(&panel, turn);
        for (name, seen, wanted) in [("along", seen.0, along), ("across", seen.1, across)] {
            let right = if wanted == 0.0 { seen.abs() < ASIDE } else { seen * wanted > GOES_WITH };
            assert!(right, "turned {turn}: {name} the grain {seen}");
        }
    }
}

#[test]
fn raking_from_the_left_is_the_lamp_that_is_not_turned() {
    let panel = panel(Some(Fault::RunSag), 2, SCALE);
    let turned = |turn: f32| green(&panel, Lamp { turn, ..Lamp::RAKING });
    let (first, round) = (turned(0.0), turned(360.0));
    let most = first.iter().zip(&round).map(|(a, b)| (a - b).abs()).fold(0.0, f32::max);
    assert!(most <= 1.0, "once round changes a pixel by {most}");
}

/// Which pixels the outline changes.
fn lined(panel: &Panel) -> Vec<bool> {
    let mut before = Vec::new();
    panel.light(Lamp::OVERHEAD, &mut before);
    let mut after = before.clone();
    panel.outline().draw(&mut after);
    let changed = |(a, b): (&[u8], &[u8])| a.iter().zip(b).any(|(a, b)| a.abs_diff(*b) >= CHANGED);
    before.chunks(4).zip(after.chunks(4)).map(changed).collect()
}

#[test]
fn the_line_goes_round_a_fault_and_hides_nothing_of_it() {
    // Faults that lie inside the face; what runs over an edge has its line along the edge.
    for fault in [Fault::FishEye, Fault::DustNib, Fault::RunSag, Fault::WaterSpot] {
        for seed in 1..4 {
            let panel = panel(Some(fault), seed, SCALE);
            let (grid, line) = (panel.grid(), lined(&panel));
            assert!(line.iter().any(|on| *on), "{fault:?}, piece {seed}: no line");
            /// Lines along the edge of the face may lie on the fault: a millimetre, in pixels.
            const EDGE: usize = 4;
            let touched = panel.mask().iter().zip(&line).enumerate().filter(|(place, (share, on))| {
                let (column, row) = (place % grid.columns, place / grid.columns);
                let inner = column.min(row).min(grid.columns - 1 - column).min(grid.rows - 1 - row) > EDGE;
                inner && **on && **share > 0.05
            });
            assert_eq!(touched.count(), 0, "{fault:?}, piece {seed}: the line hides some of it");
            let out = escapes(&line, panel.mask(), grid);
            assert_eq!(out, 0, "{fault:?}, piece {seed}: pixels of it outside the line");
        }
    }
}

/// How many pixels of a fault are reached from a place without any, going round the lines.
fn escapes(line: &[bool], mask: &[f32], grid: Grid) -> usize {
    let mut reached = vec![false; mask.len()];
    let clear = |place: usize| mask[place] <= 0.05 && !line[place];
    let mut to_go: Vec<usize> = (0..grid.columns).filter(|place| clear(*place)).take(1).collect();
    while let Some(place) = to_go.pop() {
        if reached[place] || line[place] {
            continue;
        }
        reached[place] = true;
        let (column, row) = (place % grid.columns, place / grid.columns);
        to_go.extend(
            [(column > 0, place.wrapping_sub(1)), (row > 0, place.wrapping_sub(grid.columns))]
                .into_iter()
                .chain([(column + 1 < grid.columns, place + 1), (row + 1 < grid.rows, place + grid.columns)])
                .filter(|(there, _)| *there)
                .map(|(_, next)| next),
        );
    }
    reached.iter().zip(mask).filter(|(reached, share)| **reached && **share > 0.05).count()
}

#[test]
fn a_clean_panel_has_no_line_and_the_line_is_as_wide_on_a_coarse_picture() {
    assert!(!lined(&panel(None, 1, SCALE)).contains(&true));
    let area = |scale: f32| {
        let count = lined(&panel(Some(Fault::FishEye), 1, scale)).iter().filter(|on| **on).count();
        count as f32 * scale * scale
    };
    let (coarse, fine) = (area(2.0 * SCALE), area(SCALE));
    assert!((coarse / fine - 1.0).abs() < 0.35, "{coarse} and {fine} square mm of line");
}

/// Round what takes most of the face the rest is hatched, off the fault; where the fault is the smaller part, nothing is.
#[test]
fn what_is_free_is_hatched_where_the_fault_takes_most() {
    for fault in
        [Fault::FishEye, Fault::DustNib, Fault::RunSag, Fault::OrangePeel, Fault::SoftFilm, Fault::BloomHaze]
    {
        for seed in 1..4 {
            let panel = panel(Some(fault), seed, SCALE);
            let grid = panel.grid();
            let free = |place: &usize| panel.mask()[*place] <= 0.05;
            /// Parts of a fault that are as near as the line is drawn off it count with it, mm.
            const NEAR: f32 = 6.0;
            let off = |place: &usize| {
                let (x, y) = ((place % grid.columns) as f32 * SCALE, (place / grid.columns) as f32 * SCALE);
                free(place) && !panel.is_on_fault(x, y, NEAR)
            };
            let far: Vec<usize> = (0..grid.columns * grid.rows).step_by(7).filter(off).collect();
            let taken = panel.mask().iter().filter(|share| **share > 0.05).count();
            let (hatched, lined) = (panel.outline().is_hatched(), lined(&panel));
            if 2 * taken > panel.mask().len() {
                assert!(hatched, "{fault:?}, piece {seed}: more than half, not hatched");
            }
            let struck = far.iter().filter(|place| lined[**place]).count();
            assert_eq!(
                hatched && !far.is_empty(),
                struck > 0,
                "{fault:?}, piece {seed}: {struck} of {}",
                far.len()
            );
        }
    }
}

/// The picture changes, taken all together, where a test is said to leave its mark.
#[test]
fn the_mark_of_a_test_lies_where_the_picture_changes() {
    /// Nearer the middle of the band than its edge, since most is wiped off where most lies; a crescent bulges: mm.
    const BAND: f32 = 6.5;
    const NAIL: f32 = 2.0;
    for (fault, probe, off) in [
        (Fault::BloomHaze, Probe::Wiped, BAND),
        (Fault::DrySpray, Probe::Wiped, BAND),
        (Fault::SoftFilm, Probe::Pressed, NAIL),
        (Fault::SoftFilm, Probe::Cloth, BAND),
    ] {
        for seed in 1..6 {
            let before = panel(Some(fault), seed, SCALE);
            assert_eq!(before.mark(), None, "{fault:?}: nothing was done");
            let tested = Recipe { probe, ..recipe(Some(fault), seed) };
            let after = Panel::draw(tested, before.grid());
            let (_, y) = after.mark().unwrap_or_default();
            let [before_light, after_light] = [&before, &after].map(|panel| green(panel, Lamp::RAKING));
            let columns = before.grid().columns;
            let (mut sum, mut at) = (0.0, 0.0);
            for (place, (a, b)) in before_light.iter().zip(&after_light).enumerate() {
                let changed = (a - b).abs();
                sum += changed;
                at += changed * ((place / columns) as f32 + 0.5) * SCALE;
            }
            assert!(sum > 0.0, "{fault:?}, piece {seed}: nothing changes");
            assert!((at / sum - y).abs() < off, "{fault:?}, piece {seed}: {} for {y}", at / sum);
        }
    }
}

#[test]
fn the_nearest_place_of_a_fault_is_on_it_and_none_is_nearer() {
    let panel = panel(Some(Fault::FishEye), 2, SCALE);
    let (grid, from) = (panel.grid(), (60.0, 45.0));
    let far = |(x, y): (f32, f32)| (x - from.0).hypot(y - from.1);
    let found = panel.fault_nearest(from.0, from.1).map(far).unwrap_or_default();
    let middle = |place: usize| {
        (((place % grid.columns) as f32 + 0.5) * SCALE, ((place / grid.columns) as f32 + 0.5) * SCALE)
    };
    let touched = panel.mask().iter().enumerate().filter(|(_, share)| **share > 0.05);
    let least = touched.map(|(place, _)| far(middle(place))).fold(f32::MAX, f32::min);
    assert!((found - least).abs() < 0.01, "{found} mm away, {least} by the mask");
    let clean = Panel::draw(recipe(None, 2), grid);
    assert_eq!(clean.fault_nearest(60.0, 45.0), None);
}
