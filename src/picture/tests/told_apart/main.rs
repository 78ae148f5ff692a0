//! Look-alikes of different kinds beside each other: what decides between the two is in the picture of one and not of the
//! other. Pairs whose faults are of one kind stand with that kind. Where no source is named: common practice, no source.

mod decides;
#[path = "../stains/measure.rs"]
#[expect(dead_code, reason = "not all of what other tests measure is measured here")]
mod panels;

use panels::{ASIDE, COARSE, Dress, Field, LOW, SEEDS, draw, open_wood, recipe, spoiled, spread};
use stepboard_picture::{Finish, Lamp, LampKind, Probe, Recipe, Severity, Species};

/// Change of brightness, of 255, that nobody overlooks.
const SEEN: f32 = 6.0;
const FINE: f32 = 0.25;

/// Change of red under a lamp.
fn change(recipe: &Recipe, slug: &str, severity: Severity, lamp: Lamp, scale: f32) -> Field {
    let with = draw(&spoiled(recipe, slug, severity), scale);
    Field::light(&with, lamp, 0).less(&Field::light(&draw(recipe, scale), lamp, 0))
}

/// How much a fault raises each pixel, micrometres.
fn raised(recipe: &Recipe, slug: &str, severity: Severity, scale: f32) -> Field {
    let (with, without) = (draw(&spoiled(recipe, slug, severity), scale), draw(recipe, scale));
    Field::of(&with, with.height().iter().zip(without.height()).map(|(a, b)| a - b).collect())
}

/// How much a field varies from pixel to pixel across the grain, against along it, in columns from one on.
fn across_against_along(field: &Field, from: usize) -> f32 {
    let (mut along, mut across) = (0.0, 0.0);
    for row in 1..field.rows {
        for column in from.max(1)..field.columns {
            let here = field.at(column, row);
            along += (here - field.at(column - 1, row)).powi(2);
            across += (here - field.at(column, row - 1)).powi(2);
        }
    }
    across / along
}

/// Steepest side of a hollow or bump: micrometres a millimetre, over all but the steepest hundredth of what is changed.
fn steep(rise: &Field, scale: f32) -> f32 {
    let steps = (0..rise.rows).flat_map(|row| (1..rise.columns).map(move |column| (column, row)));
    let mut steps: Vec<f32> =
        steps.map(|(column, row)| (rise.at(column, row) - rise.at(column - 1, row)).abs() / scale).collect();
    steps.retain(|step| *step > 0.0);
    steps.sort_by(f32::total_cmp);
    steps.get(steps.len() * 99 / 100).copied().unwrap_or(0.0)
}

/// [la-08; T28, T6] Raised grain is fibres that lie with the grain; dry spray is grit without a direction.
#[test]
fn fibres_lie_with_the_grain_and_grit_does_not() {
    for seed in SEEDS {
        let panel = recipe(Species::plain(), Finish::Sealed, Dress::Stained, seed);
        let direction = |slug: &str| across_against_along(&raised(&panel, slug, Severity::Plain, FINE), 1);
        let (fibres, grit) = (direction("raised-grain"), direction("dry-spray"));
        assert!(fibres > 4.0 && (0.7..1.4).contains(&grit), "seed {seed}: {fibres}, {grit}");
    }
}

/// [la-11; T26, G1 5-23] Grey pores are pale in the pores alone, whatever the side of the lamp; blush is pale between them too.
#[test]
fn grey_lies_in_the_pores_and_blush_between_them_too() {
    let wood = Species { base: [90, 52, 38], early: [90, 52, 38], pore: [30, 18, 14], ..open_wood() };
    for seed in SEEDS {
        let panel = recipe(wood.clone(), Finish::Buffed, Dress::Amber, seed);
        let light = Field::light(&draw(&panel, FINE), ASIDE, 0);
        let mut sorted = light.values.clone();
        sorted.sort_by(f32::total_cmp);
        let (pore, flat) = (0.75 * sorted[sorted.len() / 2], 0.95 * sorted[sorted.len() / 2]);
        let parts = |slug: &str| {
            let lamp = Lamp { kind: LampKind::Point, x: 0.0, y: -60.0, turn: 0.0 };
            let change = change(&panel, slug, Severity::Severe, lamp, FINE);
            let mean = |pick: &dyn Fn(f32) -> bool| {
                let there: Vec<f32> = change
                    .values
                    .iter()
                    .zip(&light.values)
                    .filter(|(_, l)| pick(**l))
                    .map(|(c, _)| *c)
                    .collect();
                there.iter().sum::<f32>() / there.len() as f32
            };
            (mean(&|light| light < pore), mean(&|light| light > flat))
        };
        let ((grey, between), (_, cloud)) = (parts("grey-pore"), parts("blush"));
        assert!(grey > SEEN && between < 0.2 * grey, "seed {seed}: {grey} in pores, {between} between");
        assert!(cloud > 2.0 * SEEN, "seed {seed}: {cloud} between");
    }
}

/// [la-13; T13] Pale filler is colour under a level film: a low lamp finds nothing. Pinholes are holes, and it finds them.
#[test]
fn pale_filler_lies_level_and_pinholes_are_holes() {
    for seed in SEEDS {
        let open = recipe(open_wood(), Finish::Cleared, Dress::Amber, seed);
        let filled = Recipe { filler: Some([74, 50, 32]), ..open.clone() };
        let rise = |recipe: &Recipe, slug: &str| raised(recipe, slug, Severity::Severe, FINE);
        let deepest = |rise: &Field| rise.values.iter().copied().fold(0.0, f32::min);
        let (level, holes) = (rise(&filled, "white-filler-pore"), rise(&open, "pore-pinhole"));
        assert!(level.values.iter().all(|rise| *rise == 0.0), "seed {seed}");
        assert!(deepest(&holes) < -8.0, "seed {seed}: {}", deepest(&holes));
        // A low lamp lays light beside dark on a hole; a pale pore is pale from end to end.
        let both = |recipe: &Recipe, slug: &str| {
            let low = change(recipe, slug, Severity::Severe, LOW, FINE);
            let count = |pick: &dyn Fn(f32) -> bool| low.values.iter().filter(|c| pick(**c)).count() as f32;
            count(&|c| c < -SEEN).min(count(&|c| c > SEEN)) / count(&|c| c.abs() > SEEN)
        };
        let (pale, hole) = (both(&filled, "white-filler-pore"), both(&open, "pore-pinhole"));
        assert!(pale < 0.02 && hole > 0.2, "seed {seed}: {pale}, {hole}");
    }
}

/// [la-15; G3, T4] Blotch is the stain's: on wood that was never stained there is none. Filler left on the face is there.
#[test]
fn wood_without_stain_shows_filler_and_no_blotch() {
    for seed in SEEDS {
        let seen = |slug: &str, dress: Dress| {
            let bare =
                Recipe { filler: Some([60, 38, 24]), ..recipe(open_wood(), Finish::Bare, dress, seed) };
            let change = change(&bare, slug, Severity::Plain, ASIDE, COARSE);
            // Below it another strip may stand.
            spread(&change.values[..change.columns * (change.rows * 3 / 4)])
        };
        assert_eq!(seen("stain-blotch", Dress::Bare), 0.0, "seed {seed}");
        assert!(seen("stain-blotch", Dress::Stained) > 1.0, "seed {seed}");
        assert!(seen("filler-haze", Dress::Bare) > 1.0, "seed {seed}");
    }
}

/// [la-17; T9, T31] Glue was pale before anything was rubbed; a sand-through came with the paper.
#[test]
fn glue_was_there_before_the_paper_and_a_sand_through_was_not() {
    for seed in SEEDS {
        let panel = Recipe { amber: 0.35, ..recipe(Species::plain(), Finish::Cleared, Dress::Stained, seed) };
        let before = Recipe { probe: Probe::Aged, ..panel.clone() };
        let seen = |recipe: &Recipe, slug: &str| {
            spread(&change(recipe, slug, Severity::Plain, ASIDE, COARSE).values)
        };
        assert!(seen(&panel, "sand-through") > 1.0 && seen(&before, "sand-through") == 0.0, "seed {seed}");
        let (now, then) = (seen(&panel, "glue-spot"), seen(&before, "glue-spot"));
        assert!(then > 0.9 * now && now > 1.0, "seed {seed}: {now}, {then}");
    }
}

/// [la-26; B1, T24] A dye bleeds wherever it lies and runs down with the wet coat; what a dark wood gives off runs along the
/// grain and only from that wood.
#[test]
fn dye_runs_down_and_extractives_along_the_grain() {
    for seed in SEEDS {
        let panel = recipe(Species::plain(), Finish::Cleared, Dress::Stained, seed);
        let parts = |slug: &str| {
            let change = change(&panel, slug, Severity::Plain, ASIDE, COARSE);
            // Left of it dark wood may stand, below it another strip.
            const BESIDE: usize = 60;
            let upper = Field {
                columns: change.columns,
                rows: change.rows * 3 / 4,
                values: change.values[..change.columns * (change.rows * 3 / 4)].to_vec(),
            };
            let far: Vec<f32> = (0..upper.rows)
                .flat_map(|row| (upper.columns * 2 / 3..upper.columns).map(move |column| (column, row)))
                .map(|(column, row)| upper.at(column, row))
                .collect();
            (across_against_along(&upper, BESIDE), spread(&far))
        };
        let ((down, everywhere), (along, none)) = (parts("dye-bleed"), parts("extractive-bleed"));
        assert!(down < 0.6 && along > 1.5, "seed {seed}: {down}, {along}");
        assert!(everywhere > 1.0 && none < 0.2, "seed {seed}: {everywhere}, {none}");
    }
}

/// [la-37; T44, N5] A bridge tears the film along the tape's line; peeling lets go anywhere.
#[test]
fn a_bridge_keeps_to_the_line_and_peeling_does_not() {
    for seed in SEEDS {
        let panel = recipe(Species::plain(), Finish::Cleared, Dress::Stained, seed);
        let rows = |slug: &str| {
            let rise = raised(&panel, slug, Severity::Severe, COARSE);
            let torn = |row: &usize| (0..rise.columns).any(|column| rise.at(column, *row).abs() > 3.0);
            (0..rise.rows).filter(torn).count() as f32 * COARSE
        };
        let (bridge, peeling) = (rows("tape-bridge"), rows("peeling"));
        assert!((0.5..16.0).contains(&bridge), "seed {seed}: torn over {bridge} mm across the line");
        assert!(peeling > 2.0 * bridge, "seed {seed}: {peeling} mm and {bridge} mm");
    }
}

/// [la-38; T14, N6] A pinhole is a hole with sides, in which powder stays; sunk film is a dip that a finger does not feel.
#[test]
fn pinholes_have_sides_and_dips_have_none() {
    for seed in SEEDS {
        let panel = recipe(open_wood(), Finish::Cleared, Dress::Amber, seed);
        let sides = |slug: &str| steep(&raised(&panel, slug, Severity::Plain, FINE), FINE);
        let (hole, dip) = (sides("pore-pinhole"), sides("grain-sink"));
        assert!(hole > 4.0 * dip, "seed {seed}: {hole} and {dip} micrometres a millimetre");
    }
}
