//! Faults of stain, colour and the wood below, measured from pixels and heights: what tells each from its look-alikes must
//! be in the picture. Where no source is named: common practice, no source.

mod bleeds;
mod measure;
mod wood;

use measure::*;
use stepboard_picture::{Finish, Lamp, Recipe, Severity, Species};

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

/// Stripes are more and less of one transparent colour (appearance of lap marks): where there is least of it, it is still more
/// than half of the way from the wood without colour to the panel as it was meant.
#[test]
fn no_stripe_is_without_colour() {
    for seed in SEEDS {
        let rows = |recipe: &Recipe| Field::light(&draw(recipe, COARSE), ASIDE, 2).means().1;
        let striped = rows(&spoiled(&amber(seed), "lap-stripe", Severity::Severe));
        let (meant, bare) = (rows(&amber(seed)), rows(&Recipe { amber: 0.0, ..amber(seed) }));
        let paler =
            striped.iter().zip(&meant).zip(&bare).map(|((it, meant), bare)| (it - meant) / (bare - meant));
        let most = paler.fold(f32::MIN, f32::max);
        assert!((0.1..0.5).contains(&most), "seed {seed}: {most}");
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
