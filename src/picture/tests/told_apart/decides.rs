//! The observation that decides between two, as `content/lookalikes.toml` names it, made on the pictures of both.

use crate::panels::{COARSE, Dress, LOW, SEEDS, longest_run, open_wood, period, recipe};
use crate::{FINE, change, raised};
use stepboard_picture::{Finish, Probe, Recipe, Severity, Species};

/// [la-29; T40, T23] Scratches are thin and lie at random; chatter is broad bars, one as far from the next as the last.
#[test]
fn scratches_are_thin_and_random_and_chatter_is_broad_and_even() {
    for seed in SEEDS {
        let strip = |slug: &str| {
            let panel = recipe(Species::plain(), Finish::Bare, Dress::Stained, seed);
            let change = change(&panel, slug, Severity::Severe, LOW, FINE);
            let row = change.rows / 2;
            (0..change.columns).map(|column| change.at(column, row)).collect::<Vec<f32>>()
        };
        // Broad: what is changed by more than a third of the most, mm.
        let broad = |strip: &[f32]| {
            let most = strip.iter().map(|value| value.abs()).fold(0.0, f32::max);
            longest_run(strip.len(), |n| strip[n].abs() > most / 3.0) as f32 * FINE
        };
        let (lines, bars) = (strip("sanding-scratch"), strip("chatter-mark"));
        let (random, even) = (period(&lines).1, period(&bars).1);
        assert!(even > 0.5 && random < 0.5, "seed {seed}: {random} {even}");
        assert!(broad(&bars) > 1.5 * broad(&lines), "seed {seed}: {} {}", broad(&lines), broad(&bars));
    }
}

/// [la-32; T18, G1 5-31] A thumbnail dents soft film; sunk film is hard, and holds it.
#[test]
fn a_thumbnail_dents_soft_film_and_not_sunk_film() {
    /// A dent that a lamp shows, micrometres.
    const DENT: f32 = 5.0;
    for seed in SEEDS {
        let dent = |slug: &str| {
            let panel = recipe(open_wood(), Finish::Buffed, Dress::Amber, seed);
            let pressed = Recipe { probe: Probe::Pressed, ..panel.clone() };
            let (before, after) = (
                raised(&panel, slug, Severity::Plain, COARSE),
                raised(&pressed, slug, Severity::Plain, COARSE),
            );
            before.less(&after).values.into_iter().fold(0.0, f32::max)
        };
        assert!(dent("soft-film") > DENT, "seed {seed}: {}", dent("soft-film"));
        assert_eq!(dent("grain-sink"), 0.0, "seed {seed}");
    }
}

/// [la-33; T18] Cloth that was pressed on prints its weave into soft film as hollows; under bloom the face is as it was.
#[test]
fn cloth_prints_into_soft_film_and_not_under_bloom() {
    /// From hollow to rim that bends the edge of a lamp, micrometres.
    const PRINT: f32 = 1.0;
    for seed in SEEDS {
        let panel = recipe(Species::plain(), Finish::Buffed, Dress::Amber, seed);
        let print = |slug: &str| {
            let mut rise = raised(&panel, slug, Severity::Plain, FINE).values;
            rise.sort_by(f32::total_cmp);
            rise[rise.len() * 99 / 100] - rise[rise.len() / 100]
        };
        assert!(print("soft-film") > PRINT, "seed {seed}: {} micrometres", print("soft-film"));
        let bloom = raised(&panel, "bloom-haze", Severity::Severe, FINE);
        assert!(bloom.values.iter().all(|rise| *rise == 0.0), "seed {seed}");
    }
}
