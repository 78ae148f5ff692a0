//! What is read of a film that was laid cell by cell, so that every figure can be reckoned by hand.

use crate::support::{covered, near};
use crate::tries::{at, path, setup};
use stepboard::spraying::film::Film;
use stepboard::spraying::reading::measure;
use stepboard::spraying::reading::places::PlaceKind;
use stepboard::spraying::reading::shade::ShadeRead;
use stepboard::spraying::{Fault, Grid, Reading, Setup, Sprayer, grade};

/// Four cells by three over the clear panel, 90 mm each.
const PANEL: Grid = Grid { left: -180.0, top: 0.0, cell: 90.0, columns: 4, rows: 3 };
/// Film of each cell, over the thinnest that is asked for.
const FILM: [f32; 12] = [1.0, 1.2, 1.1, 1.3, 0.6, 0.8, 1.4, 1.7, 1.1, 1.1, 0.4, 0.2];
/// By `statistics.fmean` and `statistics.pstdev` of Python 3.11 on [`FILM`].
const MEAN: f64 = 0.991_666_666_666_666_7;
const DEVIATION: f64 = 0.409_182_789_906_363_9;

/// A face on which a film lies, measured: the gun passes by with its trigger let go.
fn measured(setup: &Setup, grid: Grid, film: &[f32]) -> Reading {
    let film = Film::laid_on(grid, setup.task.flash_s.get(), film);
    let passed = [0.0, 1.0].map(|t| stepboard::spraying::Point { trigger: 0.0, ..at(t, 0.0, 0.0) });
    measure(&Sprayer::over(setup.clone(), film), &path(&passed))
}

#[test]
fn mean_spread_and_shares_are_those_of_the_cells() {
    let setup = setup("clear-panel");
    let (from, to) = setup.window().expect("an even film");
    // Of 0.75 to 1.25 of a coat the thickest is 5/3 of the thinnest: one cell is heavier, four are thinner.
    near(to / from, 5.0 / 3.0, 1e-9, "the window");
    #[allow(clippy::cast_possible_truncation, reason = "film is single precision")]
    let film = FILM.map(|share| share * from as f32);
    let read = measured(&setup, PANEL, &film);
    near(read.film.mean, MEAN * from, 1e-4 * from, "mean");
    near(read.film.cv, DEVIATION / MEAN, 1e-5, "coefficient of variation");
    near(read.film.least, 0.2 * from, 1e-4 * from, "thinnest");
    near(read.film.most, 1.7 * from, 1e-4 * from, "thickest");
    near(read.film.thin, 4.0 / 12.0, 1e-9, "thin");
    near(read.film.heavy, 1.0 / 12.0, 1e-9, "heavy");
    near(read.film.in_window, 7.0 / 12.0, 1e-9, "as wanted");
    near(read.paint.on_work, MEAN * from * 12.0 * 90.0 * 90.0 / 1e6, 1e-3, "mL on the work");
    // Two thin cells touch, and so do two that are under half of the thinnest: they are missed.
    let of = |kind: PlaceKind| {
        let places: Vec<_> = read.places.iter().filter(|place| place.kind == kind).collect();
        assert_eq!(places.len(), 1, "{kind:?}: {places:?}");
        *places[0]
    };
    let (thin, missed, heavy) = (of(PlaceKind::Thin), of(PlaceKind::Missed), of(PlaceKind::Heavy));
    near(thin.area, 2.0 * 8_100.0, 1e-9, "thin, mm²");
    near(thin.film, 0.7 * from, 1e-4 * from, "thin, mean film");
    assert_eq!((thin.x, thin.y), (-90.0, 135.0));
    near(missed.area, 2.0 * 8_100.0, 1e-9, "missed, mm²");
    assert_eq!((missed.x, missed.y), (90.0, 225.0));
    assert_eq!((heavy.x, heavy.y), (135.0, 135.0));
    let faults: Vec<Fault> = grade(&read, &setup).iter().map(|finding| finding.fault).collect();
    assert!(faults.contains(&Fault::Missed) && faults.contains(&Fault::Stripes), "{faults:?}");
    covered::values("spray", "mean and standard deviation of a map by another program");
}

/// The lute's face as the table of Beer-Lambert has it: R of the wood 0.45, absorbance 0.08 a coat.
fn lute() -> Setup {
    let mut setup = setup("shaded-edge");
    let shade = setup.task.shade.as_mut().expect("it is shaded");
    shade.wood_reflectance = crate::tries::share(0.45);
    shade.coat_absorbance = stepboard::quantity::Absorbance::new(0.08).expect("an absorbance");
    setup
}

/// L* after one coat and after two, of that table; ΔE₀₀ of both greys by the formula of ISO/CIE 11664-6, whose terms of chroma
/// and hue are nothing for greys: 9.1 / (1 + 0.015 · 8.05² / √(20 + 8.05²)).
const ONE: f64 = 62.6;
const TWO: f64 = 53.5;
const APART: f64 = 8.23;

/// What is read of the lute with so many coats at each place.
fn coats(on: impl Fn(f64, f64) -> f64) -> ShadeRead {
    let setup = lute();
    let grid = setup.grid();
    let cells = (0..grid.count()).map(|cell| grid.middle(cell));
    #[allow(clippy::cast_possible_truncation, reason = "film is single precision")]
    let film: Vec<f32> = cells.map(|(x, y)| (on(x, y) * setup.coat()) as f32).collect();
    measured(&setup, grid, &film).shade.expect("it is shaded")
}

#[test]
fn an_even_shade_has_one_lightness_and_its_sides_are_alike() {
    let even = coats(|_, _| 1.0);
    for zone in &even.zones {
        near(zone.lightness, ONE, 0.06, &format!("L* of {:?}", zone.zone));
    }
    near(even.sides, 0.0, 1e-6, "both sides");
    near(even.banding, 0.0, 1e-6, "banding");
    covered::values("optics", "coats over wood by zone");
}

#[test]
fn a_side_of_two_coats_is_as_far_from_one_of_one_as_the_formula_says() {
    let lopsided = coats(|x, _| if x > 0.0 { 2.0 } else { 1.0 });
    near(lopsided.sides, APART, 0.05, "both sides");
    for ring in &lopsided.rings {
        near(ring.left.expect("left"), ONE, 0.06, "L* on the left");
        near(ring.right.expect("right"), TWO, 0.06, "L* on the right");
    }
    // The edge is half of each: each part of it is half as far from all of it, or a little less where the formula bends.
    near(lopsided.banding, APART / 2.0, 0.25, "banding");
    covered::values("optics", "colour difference of both sides");
}

/// One part in 24 of the edge, seen from the middle of the face, has a coat more: all of the edge stays as it is but for the
/// share of that part.
#[test]
fn a_band_on_the_edge_is_as_far_from_the_rest_as_the_formula_says() {
    let (least, most) = lute().outline.bounds();
    let middle = f64::midpoint(least.1, most.1);
    let turn = |x: f64, y: f64| x.atan2(middle - y).rem_euclid(std::f64::consts::TAU) / std::f64::consts::TAU;
    let banded = coats(|x, y| if turn(x, y) < 1.0 / 24.0 { 2.0 } else { 1.0 });
    assert!(banded.edge < ONE && banded.edge > ONE - (ONE - TWO) / 12.0, "{}", banded.edge);
    let difference = |one: f64, other: f64| {
        let off = f64::midpoint(one, other) - 50.0;
        (one - other) / (1.0 + 0.015 * off * off / (20.0 + off * off).sqrt())
    };
    near(banded.banding, difference(banded.edge, TWO), 0.05, "banding");
    near(banded.round[0].expect("the first part"), TWO, 0.06, "L* of the band");
    covered::values("optics", "colour difference of a band");
}
