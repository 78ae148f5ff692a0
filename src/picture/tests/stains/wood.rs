//! What is in the wood or follows it.

use crate::measure::*;
use stepboard_picture::{Finish, Lamp, LampKind, Probe, Recipe, Severity, Species};

/// Bars are broad, even and across (T40); those of a scraper or planer lie some millimetres apart.
#[test]
fn chatter_lies_across_some_millimetres_apart_in_bare_wood() {
    for seed in SEEDS {
        let change = change(&bare(seed), "chatter-mark", Severity::Severe, LOW, COARSE);
        let (columns, rows) = change.means();
        assert!(spread(&columns) > 4.0 * spread(&rows), "bars across the grain");
        // A strip of the face: bars lean a little.
        let strip: Vec<f32> = (0..change.columns).map(|column| change.at(column, change.rows / 2)).collect();
        let (steps, alike) = period(&strip);
        let apart = steps as f32 * COARSE;
        assert!((3.0..6.5).contains(&apart) && alike > 0.5, "{apart} mm apart, {alike}");
    }
}

/// [la-30] Chatter is in the wood and stripes only in the colour (T11; T23): a low lamp on bare wood tells them apart.
#[test]
fn bare_wood_shows_chatter_and_no_stripes() {
    let stripes = change(&bare(4), "lap-stripe", Severity::Severe, LOW, COARSE);
    assert!(stripes.values.iter().all(|value| *value == 0.0));
    let film = amber(4);
    let heights = |recipe: &Recipe| draw(recipe, COARSE).height().to_vec();
    assert_eq!(heights(&film), heights(&spoiled(&film, "lap-stripe", Severity::Severe)));
    // Before colour there was nothing; chatter was there.
    let before = Recipe { finish: Finish::Bare, amber: 0.0, ..film };
    let stripes = change(&before, "lap-stripe", Severity::Severe, ASIDE, COARSE);
    assert!(stripes.values.iter().all(|value| *value == 0.0));
    let bars = change(&before, "chatter-mark", Severity::Severe, LOW, COARSE);
    assert!(spread(&bars.values) > 1.0);
}

/// A scratch keeps its place when the lamp moves (T15; T16), and is thin and scattered where chatter is even.
#[test]
fn scratches_keep_their_place_under_a_moved_lamp() {
    for (panel, spread_least) in
        [(stained(5), 1.5), (recipe(open_wood(), Finish::Buffed, Dress::Bare, 5), 0.5)]
    {
        let under = |x: f32| {
            let lamp = Lamp { kind: LampKind::Point, x, y: -160.0, ..Lamp::OVERHEAD };
            change(&panel, "sanding-scratch", Severity::Severe, lamp, COARSE)
        };
        let (left, right) = (under(10.0), under(110.0));
        assert!(spread(&left.values) > spread_least, "{}", spread(&left.values));
        assert!(likeness(&left.values, &right.values) > 0.95, "{}", likeness(&left.values, &right.values));
    }
    // Swirl marks go with the lamp.
    let polished = recipe(open_wood(), Finish::Buffed, Dress::Bare, 5);
    let swirl = [10.0, 110.0].map(|x| {
        let lamp = Lamp { kind: LampKind::Point, x, ..Lamp::OVERHEAD };
        change(&polished, "buff-swirl", Severity::Severe, lamp, COARSE).values
    });
    assert!(likeness(&swirl[0], &swirl[1]) < 0.5, "{}", likeness(&swirl[0], &swirl[1]));
    let lines = change(&stained(5), "sanding-scratch", Severity::Severe, ASIDE, COARSE);
    let strip: Vec<f32> = (0..lines.columns).map(|column| lines.at(column, lines.rows / 2)).collect();
    assert!(period(&strip).1 < 0.5, "no even spacing: {}", period(&strip).1);
    // Dark lines in stain: what is strongly changed is thin.
    let deepest = lines.values.iter().copied().fold(0.0, f32::min);
    let strong = |value: f32| value < 0.4 * deepest;
    let widest =
        (0..lines.rows).map(|row| longest_run(lines.columns, |column| strong(lines.at(column, row)))).max();
    assert!(widest.is_some_and(|run| run as f32 * COARSE < 3.0), "{widest:?}");
}

/// [la-16] Glue ends in a hard edge and blotch in a soft one (T9; T4): share of the whole contrast that lies in half a millimetre.
#[test]
fn glue_has_a_hard_edge_and_blotch_a_soft_one() {
    const FINE: f32 = 0.25;
    let steepest = |slug: &str, least_row: f32| {
        let change = change(&stained(6), slug, Severity::Severe, ASIDE, FINE);
        // Above the strip that the glued joint needs.
        let rows = pixels(least_row, FINE);
        let mut values: Vec<f32> = change.values[..rows * change.columns].to_vec();
        values.sort_by(f32::total_cmp);
        let contrast = values[values.len() - 1] - values[0];
        let step = (0..rows).flat_map(|row| (2..change.columns).map(move |column| (column, row)));
        let steepest = step
            .map(|(column, row)| (change.at(column, row) - change.at(column - 2, row)).abs())
            .fold(0.0, f32::max);
        steepest / contrast
    };
    let (glue, blotch) = (steepest("glue-spot", 80.0), steepest("stain-blotch", 80.0));
    assert!(glue > 0.75, "{glue}");
    assert!(blotch < 0.30, "{blotch}");
}

/// Naphtha on bare wood shows glue before any stain is on (T9): nothing is to be seen dry.
#[test]
fn wetting_bare_wood_shows_the_glue() {
    const ROWS: usize = 150;
    let panel = |probe: Probe| {
        let recipe = Recipe { probe, ..bare(7) };
        let change = change(&recipe, "glue-spot", Severity::Severe, ASIDE, COARSE);
        change.values[..ROWS * change.columns].iter().filter(|value| value.abs() > 6.0).count()
    };
    assert_eq!(panel(Probe::None), 0);
    assert!(panel(Probe::Wetted) > 100, "{}", panel(Probe::Wetted));
}

/// Sunk film follows the pores, keeps its gloss and came with time (T14; T18); wood without visible pores shows nothing.
#[test]
fn sinking_follows_the_pores_and_comes_with_time() {
    for seed in SEEDS {
        let panel = recipe(open_wood(), Finish::Buffed, Dress::Bare, seed);
        let (clean, sunk) = (draw(&panel, 0.25), draw(&spoiled(&panel, "grain-sink", Severity::Plain), 0.25));
        let depth: Vec<f32> = clean.height().iter().zip(sunk.height()).map(|(a, b)| a - b).collect();
        let light = Field::light(&clean, ASIDE, 1).values;
        let mut sorted = light.clone();
        sorted.sort_by(f32::total_cmp);
        let dark = sorted[sorted.len() / 20];
        let mean = |pore: bool| {
            let there: Vec<f32> = depth
                .iter()
                .zip(&light)
                .filter(|(_, light)| (**light < dark) == pore)
                .map(|(d, _)| *d)
                .collect();
            there.iter().sum::<f32>() / there.len() as f32
        };
        assert!(mean(true) > 2.5 * mean(false), "{} {}", mean(true), mean(false));
        // Peel minds neither pores nor grain.
        let peel = draw(&spoiled(&panel, "orange-peel", Severity::Plain), 0.25);
        let peel: Vec<f32> = clean.height().iter().zip(peel.height()).map(|(a, b)| a - b).collect();
        assert!(likeness(&peel, &light).abs() < 0.1, "{}", likeness(&peel, &light));
        assert!(likeness(&depth, &light) < -0.3, "{}", likeness(&depth, &light));
        assert_eq!(clean.rough(), sunk.rough(), "gloss in the dips");
        let aged = Recipe { probe: Probe::Aged, ..spoiled(&panel, "grain-sink", Severity::Plain) };
        assert_eq!(clean.height(), draw(&aged, 0.25).height(), "flat on the day it was buffed");
    }
    let maple = recipe(Species::plain(), Finish::Buffed, Dress::Bare, 1);
    assert_eq!(
        draw(&maple, COARSE).height(),
        draw(&spoiled(&maple, "grain-sink", Severity::Severe), COARSE).height()
    );
}

/// Swollen fibres stand up along the grain (T1; T28).
#[test]
fn raised_fibres_lie_along_the_grain() {
    for seed in SEEDS {
        let panel = recipe(Species::plain(), Finish::Sealed, Dress::Stained, seed);
        let (clean, raised) =
            (draw(&panel, 0.25), draw(&spoiled(&panel, "raised-grain", Severity::Plain), 0.25));
        let rise: Vec<f32> = raised.height().iter().zip(clean.height()).map(|(a, b)| a - b).collect();
        let rise = Field::of(&raised, rise);
        assert!(rise.values.iter().all(|rise| *rise > -0.01), "nothing is lower");
        let (mut along, mut across) = (0.0, 0.0);
        for row in 1..rise.rows {
            for column in 1..rise.columns {
                along += (rise.at(column, row) - rise.at(column - 1, row)).powi(2);
                across += (rise.at(column, row) - rise.at(column, row - 1)).powi(2);
            }
        }
        assert!(across > 5.0 * along, "{along} {across}");
    }
}
