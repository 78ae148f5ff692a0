//! Woods, measured from the pixels: how pores stand and how large they are, lines, chance, scale.

#![allow(
    clippy::as_conversions,
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss,
    clippy::indexing_slicing,
    clippy::expect_used,
    clippy::missing_panics_doc,
    reason = "a test stops where something is wrong"
)]

#[path = "../support/looks.rs"]
mod looks;

mod arches;
mod finished;
mod measure;
mod pores;

use looks::{look, looks};
use measure::{PART, correlation, dispersion, mean, picture, quantile, whole};
use stepboard_picture::{Face, Grid, Species};

/// How pores stand in bands along a quartered face: variance of the dark area in bands 0.5 mm high against what chance alone
/// would give to dashes of their size, which is 1.
fn banded(species: &Species, seed: u32) -> f32 {
    const BAND: usize = 10;
    let picture = picture(species, Face::Quartered, seed, window());
    let area: Vec<f32> = picture
        .cover()
        .chunks(BAND * picture.grid.columns)
        .map(|band| band.iter().filter(|share| **share > PART).sum::<f32>())
        .map(|pixels| pixels * picture.grid.scale * picture.grid.scale)
        .collect();
    let mut sizes: Vec<f32> =
        picture.dashes().iter().map(|dash| dash.length * dash.width).filter(|size| *size > 0.03).collect();
    dispersion(&area) / quantile(&mut sizes, 0.5)
}

/// Pieces of a wood over which a figure is taken.
const SEEDS: [u32; 3] = [0, 1, 2];

/// A window 20 mm square, seen through a glass.
fn window() -> Grid {
    whole(0.25).window((60.0, 45.0), 400, 0.05)
}

#[test]
fn pores_stand_in_bands_where_the_wood_is_ring_porous() {
    // Wood anatomy: a ring-porous wood has its large vessels in the first wood of the year, a diffuse one all through it.
    let mean_of = |slug: &str| {
        let species = look(slug);
        mean(&SEEDS.map(|seed| banded(&species, seed)))
    };
    for slug in ["white-ash", "red-oak"] {
        let found = mean_of(slug);
        assert!(found > 2.2, "{slug}: {found}");
    }
    for slug in ["mahogany", "sapele", "limba", "koa"] {
        let found = mean_of(slug);
        assert!(found < 1.7, "{slug}: {found}");
    }
}

#[test]
fn dashes_are_some_millimetres_long() {
    // Grooves of some mm that the eye sees as dashes: common practice, no source.
    for slug in ["mahogany", "limba", "black-walnut"] {
        let dashes = picture(&look(slug), Face::Rift, 4, window()).dashes();
        let mut lengths: Vec<f32> =
            dashes.iter().map(|dash| dash.length).filter(|length| *length > 0.5).collect();
        assert!(lengths.len() > 20, "{slug}: {} dashes", lengths.len());
        let length = quantile(&mut lengths, 0.5);
        assert!((1.5..5.0).contains(&length), "{slug}: {length} mm long");
    }
}

#[test]
fn an_end_shows_holes_where_a_face_shows_dashes() {
    let longest = |face| {
        let dashes = picture(&look("mahogany"), face, 2, window()).dashes();
        let mut lengths: Vec<f32> =
            dashes.iter().filter(|dash| dash.width > 0.08).map(|dash| dash.length).collect();
        assert!(lengths.len() > 20, "{face:?}: {}", lengths.len());
        quantile(&mut lengths, 0.5)
    };
    let (along, across) = (longest(Face::Flat), longest(Face::End));
    assert!(across < 0.35 && along > 4.0 * across, "{along} mm along, {across} mm across");
}

#[test]
fn spruce_has_fine_even_lines_with_one_sharp_edge() {
    let spruce = look("sitka-spruce");
    for seed in [0, 1, 2] {
        let picture = picture(&spruce, Face::Quartered, seed, whole(0.25));
        let rows = picture.rows(200, 230);
        let again = |lag: usize| correlation(&rows[lag..], &rows[..rows.len() - lag]);
        let period = (3..9).max_by(|a, b| again(*a).total_cmp(&again(*b))).expect("some lag") as f32 * 0.25;
        // Soundboard spruce: 10 to 25 lines an inch, 1 to 2.5 mm a year (common practice, no source).
        assert!((1.0..2.5).contains(&period), "seed {seed}: {period} mm");
        assert!(again((period / 0.25) as usize) > 0.3, "seed {seed}: lines are not even");
        // From the dark line it is one step to the pale wood of the next year; into it the way is longer.
        let steps: Vec<f32> = rows.windows(2).map(|pair| pair[1] - pair[0]).collect();
        let steepest = |sign: f32| steps.iter().map(|step| sign * step).fold(0.0, f32::max);
        assert!((steepest(1.0) / steepest(-1.0)).max(steepest(-1.0) / steepest(1.0)) > 1.15, "seed {seed}");
    }
}

#[test]
fn chance_gives_another_piece_and_the_same_chance_the_same_bytes() {
    for (slug, species) in looks() {
        let small = whole(1.0);
        let first = picture(&species, species.face, 7, small);
        assert_eq!(first.bytes, picture(&species, species.face, 7, small).bytes, "{slug}");
        assert_ne!(first.bytes, picture(&species, species.face, 8, small).bytes, "{slug}");
        for (n, face) in [Face::Flat, Face::Quartered, Face::End].into_iter().enumerate() {
            let other = [Face::Quartered, Face::End, Face::Flat][n];
            assert_ne!(
                picture(&species, face, 7, small).bytes,
                picture(&species, other, 7, small).bytes,
                "{slug} {face:?} {other:?}"
            );
        }
    }
}

#[test]
fn a_coarse_picture_shows_the_same_wood_as_a_fine_one() {
    for slug in ["white-ash", "hard-maple", "sitka-spruce", "indian-rosewood", "red-oak", "black-walnut"] {
        let species = look(slug);
        let fine = picture(&species, species.face, 4, whole(0.25));
        let coarse = picture(&species, species.face, 4, whole(0.5));
        let halved: Vec<f32> = (0..coarse.light.len())
            .map(|place| {
                let (column, row) = (2 * (place % coarse.grid.columns), 2 * (place / coarse.grid.columns));
                mean(&[(0, 0), (1, 0), (0, 1), (1, 1)].map(|(x, y)| fine.at(column + x, row + y)))
            })
            .collect();
        let (bright, dim) = (mean(&fine.light), mean(&coarse.light));
        assert!((bright - dim).abs() < 2.0, "{slug}: {bright} and {dim}");
        let alike = correlation(&halved, &coarse.light);
        assert!(alike > 0.85, "{slug}: {alike}");
    }
}

#[test]
fn woods_are_told_apart_by_their_colour_or_their_grain() {
    // Ten that a woodworker must know at a glance, on a screen of 480 by 360 and on one of half that: pale or dark, even or
    // marked.
    let told = [
        "white-ash",
        "mahogany",
        "hard-maple",
        "black-walnut",
        "sitka-spruce",
        "ebony",
        "indian-rosewood",
        "western-redcedar",
        "koa",
        "black-cherry",
    ];
    for scale in [0.25, 0.5] {
        let signs = told.map(|slug| {
            let species = look(slug);
            let picture = picture(&species, species.face, 3, whole(scale));
            let part = |n: usize| {
                mean(&picture.bytes.chunks(4).map(|pixel| f32::from(pixel[n])).collect::<Vec<_>>())
            };
            let across: Vec<f32> = picture.light.chunks(picture.grid.columns).map(|row| row[60]).collect();
            let rough = mean(&across.windows(2).map(|pair| (pair[1] - pair[0]).abs()).collect::<Vec<_>>());
            [part(0), part(1), part(2), 6.0 * rough]
        });
        for (n, first) in signs.iter().enumerate() {
            for (m, second) in signs.iter().enumerate().skip(n + 1) {
                let far = first.iter().zip(second).map(|(a, b)| (a - b) * (a - b)).sum::<f32>().sqrt();
                assert!(far > 20.0, "{} and {} at {scale} mm a pixel: {far}", told[n], told[m]);
            }
        }
    }
}
