//! Clouds in, on and under the film: blush, bloom, water spots, filler left on the wood.

use crate::measure::{
    ASIDE, Face, SCALE, bytes, change, dark, draw, likeness, porous, probed, sound, spoiled,
};
use crate::{SEEDS, SEEN, buffed, cleared, pores};
use stepboard_picture::{Finish, Lamp, Probe, Recipe, Severity};

/// [la-09; B1, T2] One picture until it is wiped.
#[test]
fn blush_and_bloom_are_one_picture_until_they_are_wiped() {
    for seed in SEEDS {
        for severity in Severity::ALL {
            let lit =
                |slug: &str| bytes(&draw(&spoiled(&cleared(seed), slug, severity), SCALE), Lamp::OVERHEAD);
            assert!(lit("blush") == lit("bloom-haze"), "seed {seed}, {severity:?}");
        }
    }
}

/// [la-09; B1, T2] A wiped band of bloom comes clean; of blush nothing goes.
#[test]
fn a_damp_cloth_takes_bloom_and_leaves_blush() {
    for seed in SEEDS {
        let cloud = |slug: &str, probe: Probe| {
            let with = probed(&spoiled(&buffed(seed), slug, Severity::Plain), probe);
            Face::bright(&draw(&with, SCALE), ASIDE).less(&Face::bright(&draw(&buffed(seed), SCALE), ASIDE))
        };
        assert!(cloud("blush", Probe::Wiped).values == cloud("blush", Probe::None).values);
        let (before, after) = (cloud("bloom-haze", Probe::None), cloud("bloom-haze", Probe::Wiped));
        let clouded = |place: &usize| before.values[*place] > 2.0 * SEEN;
        let cleaned: Vec<usize> = (0..before.values.len())
            .filter(clouded)
            .filter(|place| after.values[*place] < 0.2 * before.values[*place])
            .collect();
        let share = cleaned.len() as f32 / (0..before.values.len()).filter(clouded).count() as f32;
        assert!((0.1..0.7).contains(&share), "seed {seed}: {share} of the cloud wiped");
        let (long, wide) = before.extent(&cleaned);
        assert!(long > 30.0 && (16.0..40.0).contains(&wide), "seed {seed}: a band {long} by {wide} mm");
    }
}

/// Worst where the film is thick, at sags and edges (faults reference, appearance of blush).
#[test]
fn blush_follows_the_thickness_of_the_film() {
    for seed in SEEDS {
        let with = draw(&spoiled(&cleared(seed), "blush", Severity::Plain), SCALE);
        let cloud = change(&cleared(seed), "blush", Severity::Plain, ASIDE);
        let thick = likeness(&cloud.values, with.height());
        assert!(thick > 0.35, "seed {seed}: {thick}");
        let edge = |place: usize| {
            let (x, y) = cloud.middle(place);
            x.min(y).min(120.0 - x).min(90.0 - y)
        };
        let (rim, inner) = (cloud.mean(|place| edge(place) < 3.0), cloud.mean(|place| edge(place) > 12.0));
        assert!(rim > 1.2 * inner, "seed {seed}: {rim} at the edge, {inner} inside");
    }
}

/// [la-36; G1 5-32, 5-23] A water spot has the shape of a drop, 3 to 26 mm wide; blush is a cloud without one.
#[test]
fn water_spots_are_drops_and_blush_is_not() {
    let mut ringed = 0;
    for seed in SEEDS {
        let spots = change(&buffed(seed), "water-spot", Severity::Slight, ASIDE);
        let patches = spots.patches(SEEN);
        let drops: Vec<_> = patches.iter().filter(|patch| patch.len() > 20).collect();
        assert!(!drops.is_empty(), "seed {seed}");
        for drop in drops {
            let (wide, high) = spots.extent(drop);
            assert!(wide.max(high) < 26.0 && wide.max(high) > 2.0, "seed {seed}: {wide} by {high} mm");
            // Rim against middle.
            let inside = |place: usize| drop.contains(&place);
            let (whole, most) =
                (spots.mean(inside), drop.iter().map(|p| spots.values[*p]).fold(0.0, f32::max));
            ringed += usize::from(most > 1.3 * whole);
        }
        let blush = change(&buffed(seed), "blush", Severity::Plain, ASIDE);
        let largest = blush.patches(SEEN).into_iter().max_by_key(Vec::len).unwrap_or_default();
        let (wide, high) = blush.extent(&largest);
        assert!(wide.max(high) > 40.0, "seed {seed}: {wide} by {high} mm");
    }
    assert!(ringed >= SEEDS.len(), "{ringed} rings");
}

/// [la-14; G3] Filler haze is there before any film, on the flats between the pores, in smears across the grain; blush needs a
/// film and has no direction.
#[test]
fn filler_haze_lies_across_the_grain_between_the_pores() {
    for seed in SEEDS {
        let filler = Some([40, 26, 18]);
        let recipe = Recipe { filler, amber: 0.0, ..sound(porous(), Finish::Bare, seed) };
        let haze = change(&recipe, "filler-haze", Severity::Severe, ASIDE);
        let (pore, flat) = pores(&recipe);
        let (in_pore, between) = (haze.mean(|place| pore[place]), haze.mean(|place| flat[place]));
        assert!(between > 2.0 * SEEN && in_pore < 0.5 * between, "seed {seed}: {in_pore}, {between}");
        let direction = |face: &Face| {
            let (mut along, mut across) = (0.0, 0.0);
            for row in 0..face.grid.rows - 4 {
                for column in 0..face.grid.columns - 4 {
                    along += (face.at(column + 4, row) - face.at(column, row)).abs();
                    across += (face.at(column, row + 4) - face.at(column, row)).abs();
                }
            }
            along / across
        };
        let smooth = Recipe { filler, amber: 0.0, ..sound(dark(), Finish::Bare, seed) };
        let smears = direction(&change(&smooth, "filler-haze", Severity::Plain, ASIDE));
        let cloud = direction(&change(&buffed(seed), "blush", Severity::Plain, ASIDE));
        assert!(smears > 1.15, "seed {seed}: {smears}");
        assert!((0.6..1.4).contains(&cloud), "seed {seed}: {cloud}");
    }
}

/// Rings and discs lie flat in the film: nothing stands up, and the lamp is seen through them.
#[test]
fn water_spots_are_flat() {
    for seed in SEEDS {
        let with = draw(&spoiled(&buffed(seed), "water-spot", Severity::Severe), SCALE);
        let without = draw(&buffed(seed), SCALE);
        assert_eq!(with.height(), without.height(), "seed {seed}");
        let rougher = with.rough().iter().zip(without.rough()).map(|(a, b)| a - b).fold(0.0, f32::max);
        assert!(rougher < 0.004, "seed {seed}: {rougher}");
    }
}

/// Filler is left about the mouths of the pores (appearance of filler haze): more lies beside a pore than far from all.
#[test]
fn filler_lies_about_the_pores() {
    let filler = Some([40, 26, 18]);
    let mut beside_more = 0;
    for seed in SEEDS {
        let recipe = Recipe { filler, amber: 0.0, ..sound(porous(), Finish::Bare, seed) };
        let haze = change(&recipe, "filler-haze", Severity::Plain, ASIDE);
        let (pore, _) = pores(&recipe);
        let columns = haze.grid.columns;
        // Rows from the nearest pore, up or down: the pores lie along the rows.
        let off = |place: usize| {
            let reach = |rows: &usize| {
                let up = place.checked_sub(rows * columns).is_some_and(|place| pore[place]);
                up || pore.get(place + rows * columns).is_some_and(|pore| *pore)
            };
            (0..8).find(reach).unwrap_or(8)
        };
        let (near, far) = (haze.mean(|place| off(place) == 2), haze.mean(|place| off(place) > 6));
        beside_more += usize::from(near > 1.1 * far);
    }
    assert_eq!(beside_more, SEEDS.len());
}
