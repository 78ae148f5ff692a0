//! Faults of stain, colour and the wood below, measured from pixels and heights: what tells each from its look-alikes must
//! be in the picture. Where no source is named: common practice, no source.

mod measure;

use measure::{
    ASIDE, COARSE, Dress, Field, LOW, change, draw, likeness, period, pixels, recipe, spoiled, spread,
};
use stepboard_picture::{Finish, Growth, Lamp, LampKind, Pores, Probe, Recipe, Severity, Species};

const SEEDS: [u32; 3] = [1, 2, 3];

/// A wood with large pores.
fn open_wood() -> Species {
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

fn amber(seed: u32) -> Recipe {
    recipe(Species::plain(), Finish::Cleared, Dress::Amber, seed)
}

fn stained(seed: u32) -> Recipe {
    recipe(Species::plain(), Finish::Cleared, Dress::Stained, seed)
}

fn bare(seed: u32) -> Recipe {
    recipe(Species::plain(), Finish::Bare, Dress::Bare, seed)
}

/// Stripes run along the passes and lie about a fan's width apart (T11; G1 p.5-12): here a small gun of some 33 mm.
#[test]
fn lap_stripes_run_along_the_passes_as_far_apart_as_the_fan() {
    for seed in SEEDS {
        let change = change(&amber(seed), "lap-stripe", Severity::Severe, ASIDE, COARSE);
        let (columns, rows) = change.means();
        assert!(spread(&rows) > 4.0 * spread(&columns), "bands along the grain");
        let (steps, alike) = period(&rows);
        let apart = steps as f32 * COARSE;
        assert!((20.0..38.0).contains(&apart) && alike > 0.4, "{apart} mm apart, {alike}");
    }
}

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

/// Chatter is in the wood and stripes only in the colour (T11; T23): a low lamp on bare wood tells them apart.
#[test]
fn bare_wood_shows_chatter_and_no_stripes() {
    let stripes = change(&bare(4), "lap-stripe", Severity::Severe, LOW, COARSE);
    assert!(stripes.values.iter().all(|value| *value == 0.0));
    let film = amber(4);
    let heights = |recipe: &Recipe| draw(recipe, COARSE).height().to_vec();
    assert_eq!(heights(&film), heights(&spoiled(&film, "lap-stripe", Severity::Severe)));
    // Before colour there was nothing; chatter was there.
    let before = Recipe { probe: Probe::Aged, ..film };
    let stripes = change(&before, "lap-stripe", Severity::Severe, ASIDE, COARSE);
    assert!(stripes.values.iter().all(|value| *value == 0.0));
    let bars = change(&before, "chatter-mark", Severity::Severe, Lamp::OVERHEAD, COARSE);
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

/// Longest run of places for which something holds.
fn longest_run(length: usize, holds: impl Fn(usize) -> bool) -> usize {
    let (mut run, mut most) = (0, 0);
    for n in 0..length {
        run = if holds(n) { run + 1 } else { 0 };
        most = most.max(run);
    }
    most
}

/// Glue ends in a hard edge and blotch in a soft one (T9; T4): share of the whole contrast that lies in half a millimetre.
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

/// Row of the joint with a strip along the lower edge: where rows differ most from the next but one.
fn joint(light: &Field) -> usize {
    let (_, rows) = light.means();
    let from = rows.len() / 2;
    let step = |row: &usize| (rows[row + 1] - rows[row - 1]).abs();
    (from..rows.len() - 1).max_by(|a, b| step(a).total_cmp(&step(b))).unwrap_or(from)
}

/// Columns on the left, of a quarter of a millimetre, where dark wood may stand.
const BESIDE: usize = 100;

/// Whether each pixel of a row differs from the same strip without colour on it.
fn coloured(light: &Field, strip: &Field, row: usize) -> Vec<bool> {
    (BESIDE..light.columns)
        .map(|column| (light.at(column, row) - strip.at(column, row)).abs() > 10.0)
        .collect()
}

/// Colour under tape is fingers from one straight line (T43; T44); a dye that bleeds spreads with a broad front and also
/// moves in the field.
#[test]
fn bleed_under_tape_is_fingers_from_a_line_and_bleeding_dye_spreads() {
    const FINE: f32 = 0.25;
    for seed in SEEDS {
        let look = |slug: &str| {
            Field::light(&draw(&spoiled(&stained(seed), slug, Severity::Severe), FINE), ASIDE, 2)
        };
        let (tape, dye) = (look("tape-bleed"), look("dye-bleed"));
        assert!(joint(&tape).abs_diff(joint(&dye)) <= 2, "the same strip");
        let line = joint(&tape);
        // A slight bridge has the same strip and no colour that far on it.
        let strip =
            Field::light(&draw(&spoiled(&stained(seed), "tape-bridge", Severity::Slight), FINE), ASIDE, 2);
        let at = |light: &Field, mm: f32| coloured(light, &strip, line + pixels(mm, FINE));
        let share = |marks: &[bool]| marks.iter().filter(|on| **on).count() as f32 / marks.len() as f32;
        let run = |marks: &[bool]| longest_run(marks.len(), |n| marks[n]) as f32 * FINE;
        assert!(
            share(&at(&tape, 1.0)) > share(&at(&tape, 2.5))
                && share(&at(&tape, 2.5)) > share(&at(&tape, 6.0))
        );
        assert!(share(&at(&tape, 1.5)) > 0.03, "{}", share(&at(&tape, 1.5)));
        assert!(run(&at(&tape, 2.5)) < 8.0, "fingers: {} mm", run(&at(&tape, 2.5)));
        assert!(run(&at(&dye, 1.5)) > 15.0, "a front: {} mm", run(&at(&dye, 1.5)));
        // In the field only the dye has moved.
        let clean = Field::light(&draw(&stained(seed), FINE), ASIDE, 2);
        let moved = |light: &Field| {
            let change = light.less(&clean);
            let field =
                (0..line - 8).flat_map(|row| (BESIDE..change.columns).map(move |column| (column, row)));
            spread(&field.map(|(column, row)| change.at(column, row)).collect::<Vec<f32>>())
        };
        assert!(moved(&tape) < 0.5 && moved(&dye) > 2.0, "{} {}", moved(&tape), moved(&dye));
    }
}

/// What a dark wood gives off is strongest beside it, runs out along the grain and is red-brown (B1; T24).
#[test]
fn extractives_run_out_along_the_grain_and_are_red() {
    for seed in SEEDS {
        let clean = recipe(Species::plain(), Finish::Cleared, Dress::Bare, seed);
        let spoiled = draw(&spoiled(&clean, "extractive-bleed", Severity::Plain), COARSE);
        let clean = draw(&clean, COARSE);
        let part = |part: usize| Field::light(&spoiled, ASIDE, part).less(&Field::light(&clean, ASIDE, part));
        let (red, blue) = (part(0), part(2));
        // The strip of dark wood ends where red comes back: what bleeds takes little of it.
        let (columns, _) = red.means();
        let darkest = columns.iter().copied().fold(0.0, f32::min);
        let joint = columns.iter().rposition(|value| *value < 0.5 * darkest).unwrap_or(0) + 2;
        let mean = |field: &Field, from: f32| {
            let columns = field.means().0;
            let start = joint + pixels(from, COARSE);
            columns[start..start + 6].iter().sum::<f32>() / 6.0
        };
        assert!(mean(&blue, 1.0) < mean(&blue, 7.0) && mean(&blue, 7.0) < mean(&blue, 18.0));
        assert!(mean(&blue, 1.0) < 2.0 * mean(&red, 1.0), "{} {}", mean(&blue, 1.0), mean(&red, 1.0));
        let (mut along, mut across) = (0.0, 0.0);
        for row in 1..blue.rows {
            for column in joint + 4..joint + 30 {
                along += (blue.at(column, row) - blue.at(column - 1, row)).powi(2);
                across += (blue.at(column, row) - blue.at(column, row - 1)).powi(2);
            }
        }
        assert!(across > 1.5 * along, "fingers with the grain: {along} {across}");
    }
}

/// A bridge tears the film at the line alone: no colour on the strip apart from flakes, nothing changed farther off.
#[test]
fn a_bridge_is_at_the_line_and_nowhere_else() {
    for seed in SEEDS {
        let panel = stained(seed);
        let (clean, torn) =
            (draw(&panel, COARSE), draw(&spoiled(&panel, "tape-bridge", Severity::Severe), COARSE));
        let rise: Vec<f32> = torn.height().iter().zip(clean.height()).map(|(a, b)| a - b).collect();
        let rise = Field::of(&torn, rise);
        let line = joint(&Field::light(&torn, ASIDE, 2));
        let most = |rows: std::ops::Range<usize>| {
            rows.flat_map(|row| (0..rise.columns).map(move |column| (column, row)))
                .map(|(column, row)| rise.at(column, row).abs())
                .fold(0.0, f32::max)
        };
        assert!(most(line - 3..line + 3) > 6.0);
        assert_eq!(most(0..line - 16), 0.0);
        assert_eq!(most(line + 16..rise.rows), 0.0);
    }
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

/// A dark edge leaves the field as it was (T30d) and ends in a line where a good shade fades.
#[test]
fn a_dark_edge_leaves_the_field_alone_and_has_a_line() {
    let good = Recipe { shaded: true, ..amber(2) };
    let look = |recipe: &Recipe| Field::light(&draw(recipe, COARSE), ASIDE, 1);
    let (fade, line) = (look(&good), look(&spoiled(&good, "dark-edge", Severity::Severe)));
    let change = line.less(&fade);
    assert_eq!(change.at(change.columns / 2, change.rows / 2), 0.0);
    let steepest = |light: &Field| {
        let row: Vec<f32> = (0..light.columns / 2)
            .map(|column| (70..110).map(|row| light.at(column, row)).sum::<f32>() / 40.0)
            .collect();
        row.windows(3).map(|three| three[2] - three[0]).fold(0.0, f32::max)
    };
    assert!(steepest(&line) > 1.5 * steepest(&fade), "{} {}", steepest(&line), steepest(&fade));
}

/// A finer or coarser picture shows the same board: as much of it lies in the fault.
#[test]
fn sizes_do_not_change_with_the_scale() {
    for slug in [
        "glue-spot",
        "stain-blotch",
        "lap-stripe",
        "tape-bridge",
        "dye-bleed",
        "extractive-bleed",
        "chatter-mark",
        "dark-edge",
    ] {
        let share = |scale: f32| {
            let panel = draw(&spoiled(&stained(9), slug, Severity::Plain), scale);
            panel.mask().iter().sum::<f32>() / panel.mask().len() as f32
        };
        let (coarse, fine) = (share(0.5), share(0.25));
        assert!((coarse - fine).abs() < 0.2 * fine, "{slug}: {coarse} {fine}");
    }
}

/// What lies beside the wood tells nothing: of two faults that are told apart it stands beside both on the same panels.
#[test]
fn neighbours_do_not_give_the_fault_away() {
    let darkest_left = |slug: &str, seed: u32| {
        let light = Field::light(&draw(&spoiled(&stained(seed), slug, Severity::Slight), COARSE), ASIDE, 0);
        let column = |column: usize| (0..light.rows / 2).map(|row| light.at(column, row)).sum::<f32>();
        column(2) < 0.6 * column(light.columns - 3)
    };
    let pale_below = |slug: &str, seed: u32| {
        let light = Field::light(&draw(&spoiled(&stained(seed), slug, Severity::Slight), COARSE), ASIDE, 2);
        let row =
            |row: usize| (light.columns / 2..light.columns).map(|column| light.at(column, row)).sum::<f32>();
        row(light.rows - 3) > 1.2 * row(light.rows / 2)
    };
    let count = |holds: &dyn Fn(u32) -> bool| (0..8).filter(|seed| holds(*seed)).count();
    assert!((1..8).contains(&count(&|seed| darkest_left("dye-bleed", seed))));
    assert!((1..8).contains(&count(&|seed| pale_below("extractive-bleed", seed))));
    for seed in 0..8 {
        assert_eq!(pale_below("glue-spot", seed), pale_below("stain-blotch", seed), "{seed}");
    }
}

/// A slight fault changes enough of the picture to be seen, on a wood where it makes sense.
#[test]
fn slight_faults_are_seen() {
    /// Share of the face, and what of 255 steps the eye sees.
    const SHARE: f32 = 0.003;
    const STEP: u8 = 6;
    let sealed = recipe(Species::plain(), Finish::Sealed, Dress::Stained, 3);
    let open = recipe(open_wood(), Finish::Buffed, Dress::Amber, 3);
    let shaded = Recipe { shaded: true, ..amber(3) };
    for (slug, panel) in [
        ("glue-spot", stained(3)),
        ("stain-blotch", stained(3)),
        ("sanding-scratch", stained(3)),
        ("grain-sink", open),
        ("lap-stripe", amber(3)),
        ("tape-bleed", stained(3)),
        ("tape-bridge", stained(3)),
        ("dye-bleed", stained(3)),
        ("extractive-bleed", amber(3)),
        ("chatter-mark", stained(3)),
        ("raised-grain", sealed),
        ("dark-edge", shaded),
    ] {
        let (clean, slight) = (draw(&panel, 0.25), draw(&spoiled(&panel, slug, Severity::Slight), 0.25));
        let (mut before, mut after) = (Vec::new(), Vec::new());
        let seen = [30.0, 60.0, 90.0].map(|x| {
            clean.light(Lamp { x, ..Lamp::OVERHEAD }, &mut before);
            slight.light(Lamp { x, ..Lamp::OVERHEAD }, &mut after);
            let pairs = before.chunks_exact(4).zip(after.chunks_exact(4));
            // Only where the answer lies: a strip that stands beside the wood is no fault.
            let marked = pairs.zip(slight.mask()).filter(|(_, mask)| **mask > 0.05);
            let changed =
                marked.filter(|((a, b), _)| a.iter().zip(b.iter()).any(|(a, b)| a.abs_diff(*b) > STEP));
            changed.count() as f32 / slight.mask().len() as f32
        });
        let most = seen.into_iter().fold(0.0, f32::max);
        assert!(most > SHARE, "{slug}: {most}");
    }
}
