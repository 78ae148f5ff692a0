//! Straight passes at one speed against the table of overlaps: the beta sections through the path, lead, dwell and arc too.

use crate::support::table::{Row, table};
use crate::support::{covered, near};
use crate::tries::{at, path, plain};
use stepboard::rules::spray::fan::{Fan, Section};
use stepboard::rules::spray::overlap::Evenness;
use stepboard::rules::term::Term;
use stepboard::spraying::{Grid, Path, Point, Sprayer};

/// Half the fan of the plain gun at 200 mm, and half of its spot across it.
const HALF_FAN: f64 = 100.0;
const HALF_THIN: f64 = 30.0;
/// Speed of the passes, mm/s.
const SPEED: f64 = 300.0;
/// Side of a cell, mm: every pitch of the table is a whole number of them, and so is half the fan, so that a cell lies on
/// the edge of each pass, where the film may bend sharply.
const CELL: f64 = HALF_FAN / 300.0;
/// Passes on each side that reach no farther than the middle of the set.
const BEYOND: i32 = 6;

/// A β of the table.
fn beta(profile: &str) -> Option<f64> {
    match profile {
        "beta1.5" => Some(1.5),
        "parabola_beta2" => Some(2.0),
        "beta2.5" => Some(2.5),
        "beta3" => Some(3.0),
        "beta4" => Some(4.0),
        _ => None,
    }
}

/// A long pass through x = 0 at a height, and the way to the next.
fn pass(points: &mut Vec<Point>, y: f64) {
    let t = points.last().map_or(0.0, |last| last.t + 1.0);
    let long = 4.0 * HALF_THIN;
    points.push(at(t, -long, y));
    points.push(Point { trigger: 0.0, ..at(t + 2.0 * long / SPEED, long, y) });
}

/// One column of cells across the passes, so that each row is a place of the section: the first on the middle of a pass.
fn column(pitch: f64) -> Grid {
    let rows = (0_u32..).take_while(|row| f64::from(*row) * CELL < pitch + CELL / 2.0).count();
    Grid { left: -CELL / 2.0, top: -CELL / 2.0, cell: CELL, columns: 1, rows }
}

/// How even an endless set of passes lies that the path model lays, over one pitch.
fn laid(taper: f64, overlap: f64) -> Evenness {
    let pitch = 2.0 * HALF_FAN * (1.0 - overlap);
    let mut points = Vec::new();
    for nth in -BEYOND..=BEYOND {
        pass(&mut points, f64::from(nth) * pitch);
    }
    let setup = plain(taper);
    let sprayer = Sprayer::spray(&setup, column(pitch), &path(&points));
    let film: Vec<f64> = sprayer.film().laid().iter().map(|film| f64::from(*film)).collect();
    // Both ends are the same place: half of each counts.
    let weight = |nth: usize| if nth == 0 || nth + 1 == film.len() { 0.5 } else { 1.0 };
    let over = |of: &dyn Fn(f64) -> f64| {
        film.iter().enumerate().map(|(nth, film)| weight(nth) * of(*film)).sum::<f64>()
            / (film.len() - 1) as f64
    };
    let mean = over(&|film| film);
    let spread = over(&|film| (film - mean) * (film - mean)).sqrt();
    let most = film.iter().copied().fold(0.0, f64::max);
    let least = film.iter().copied().fold(f64::INFINITY, f64::min);
    let mut one = Vec::new();
    pass(&mut one, 0.0);
    let alone = Sprayer::spray(&setup, column(pitch), &path(&one));
    Evenness {
        cv: spread / mean,
        min_over_mean: least / mean,
        max_over_mean: most / mean,
        mean_over_peak: mean / f64::from(alone.film().laid()[0]),
    }
}

fn told(row: &Row, found: Evenness) -> Option<f64> {
    match row.text("quantity") {
        "cv" => Some(found.cv),
        "min_over_mean" => Some(found.min_over_mean),
        "max_over_mean" => Some(found.max_over_mean),
        "max_over_min" => Some(found.max_over_min()),
        "mean_over_single_peak" => Some(found.mean_over_peak),
        _ => None,
    }
}

/// Every row of spray_check.csv of a beta section at an overlap, through points of a path: closed forms and sums.
#[test]
fn passes_along_a_path_lie_as_the_table_says() {
    let mut rows = 0;
    let mut known: Option<(f64, f64, Evenness)> = None;
    for row in table("spray_check.csv") {
        let Some(beta) = beta(row.text("profile")) else { continue };
        let Ok(overlap) = row.text("overlap").parse::<f64>() else { continue };
        // Thirds are rounded in the table, and the closed forms are of whole thirds.
        let overlap = if (overlap - 2.0 / 3.0).abs() < 1e-3 {
            2.0 / 3.0
        } else if (overlap - 1.0 / 3.0).abs() < 1e-3 {
            1.0 / 3.0
        } else {
            overlap
        };
        let found = match known {
            Some((b, o, found)) if b == beta && o == overlap => found,
            _ => laid(beta, overlap),
        };
        known = Some((beta, overlap, found));
        let Some(value) = told(&row, found) else { continue };
        near(value, row.number("value"), row.number("tolerance"), row.text("id"));
        rows += 1;
    }
    assert!(rows >= 210, "{rows} rows");
    covered::values("spray", "spray_check.csv through a path");
}

/// The sections of the table that no elliptical spot sweeps, triangle, raised cosine and Gaussian, are rows of the profile
/// function (`reference_spray.rs`); the shop's fan is the beta section that the path lays.
#[test]
fn a_single_pass_has_the_section_of_the_profile_function() {
    for fan in [Fan::BetaOneAndHalf, Fan::Parabola, Fan::BetaTwoAndHalf, Fan::BetaThree, Fan::BetaFour] {
        let Section::Beta(beta) = Section::from(fan) else { panic!("a beta section") };
        let mut points = Vec::new();
        pass(&mut points, 0.0);
        let sprayer = Sprayer::spray(&plain(beta), column(2.0 * HALF_FAN), &path(&points));
        let film = sprayer.film().laid();
        for (nth, found) in film.iter().enumerate().step_by(20) {
            let place = nth as f64 * CELL / HALF_FAN;
            let wanted = Section::from(fan).height(place);
            near(f64::from(found / film[0]), wanted, 1e-3, &format!("{} at {place}", fan.slug()));
        }
    }
    covered::values("spray", "elliptical double beta spot swept, exact");
}

/// The film in µm of one pass, by the volume balance: 200 mL/min at 0.30 m/s over 200 mm, all of it landing, lay 55.6 µm on
/// average, and 15/8 of that over B(1/2, 3) in the middle of a beta 3 section.
#[test]
fn a_pass_lays_what_the_volume_balance_says() {
    let mut points = Vec::new();
    pass(&mut points, 0.0);
    let sprayer = Sprayer::spray(&plain(3.0), column(2.0 * HALF_FAN), &path(&points));
    let mean = 200.0 / 60.0 / (0.3 * 200.0) * 1_000.0;
    near(f64::from(sprayer.film().laid()[0]), mean * 15.0 / 8.0, 0.1, "peak of beta 3: 15/8 of the mean");
    covered::values("spray", "volume balance of a pass");
}

/// Film at x = 0 on the centre line for a gun that runs to the right with its trigger pulled at a place, let go at another.
fn on_centre(run: &[Point]) -> f64 {
    let cell = 0.01;
    let grid = Grid { left: -cell / 2.0, top: -cell / 2.0, cell, columns: 1, rows: 1 };
    // With a taper of 2.5 the spot is a parabola along the stroke.
    f64::from(Sprayer::spray(&plain(2.5), grid, &path(run)).film().laid()[0])
}

/// spray_check.csv S026 to S029: a spot that is parabolic along the stroke; a trigger pulled a lead before the edge, and a gun
/// that stands still with the trigger pulled.
#[test]
fn leads_and_stops_lay_what_the_closed_forms_say() {
    let far = 100.0;
    let whole = on_centre(&[at(0.0, -far, 0.0), at(2.0 * far / SPEED, far, 0.0)]);
    for row in table("spray_check.csv") {
        let lead = match row.text("quantity") {
            "edge_fraction_trigger_at_edge" => 0.0,
            "edge_fraction_lead_0.5b" => 0.5,
            "edge_fraction_lead_b" => 1.0,
            _ => continue,
        };
        let run = lead * HALF_THIN;
        let found = on_centre(&[at(0.0, -run, 0.0), at((run + far) / SPEED, far, 0.0)]);
        near(found / whole, row.number("value"), 5e-4, row.text("id"));
    }
    // 3 v τ / (4 b) with v = 300 mm/s, τ = 0.2 s, b = 25 mm is 1.8: for b = 30 mm it is 1.5.
    let stop = far / SPEED;
    let stood =
        [at(0.0, -far, 0.0), at(stop, 0.0, 0.0), at(stop + 0.2, 0.0, 0.0), at(2.0 * stop + 0.2, far, 0.0)];
    near(on_centre(&stood) / whole - 1.0, 1.8 * 25.0 / HALF_THIN, 2e-3, "dwell");
    covered::values("spray", "trigger and dwell through a path, closed forms");
}

/// spray_check.csv S030 and S031: a gun swung in an arc at even turning, its aim running away, its distance and its
/// tilt growing.
#[test]
fn an_arc_lays_what_the_closed_form_says() {
    let swung = |pivot: f64, degrees: f64| {
        let height = 200.0;
        let points: Vec<Point> = (0..=2_000)
            .map(|nth| {
                let turn = (f64::from(nth) / 1_000.0 - 1.0) * 45_f64.to_radians();
                let distance = (height + pivot) / turn.cos() - pivot;
                let aim = at(f64::from(nth) / 1_000.0, (height + pivot) * turn.tan(), 0.0);
                Point { distance, tilt: turn.to_degrees(), ..aim }
            })
            .collect();
        let cell = 0.01;
        let film = |x: f64| {
            let grid = Grid { left: x - cell / 2.0, top: -cell / 2.0, cell, columns: 1, rows: 1 };
            let mut setup = plain(3.0);
            // A spot so narrow along the stroke that it is at one angle at a time.
            setup.task.gun.thin_mm = stepboard::quantity::Millimetres::saturating(5.0);
            // What lands is another matter than where.
            let sprayer = Sprayer::spray(&setup, grid, &path(&points));
            f64::from(sprayer.film().laid()[0])
        };
        let landing = |distance: f64| plain(3.0).held(distance, 0.0).landing;
        let turn = degrees.to_radians();
        let distance = (height + pivot) / turn.cos() - pivot;
        film((height + pivot) * turn.tan()) / film(0.0) / landing(distance) * landing(height)
    };
    near(swung(0.0, 20.0), 0.8298, 2e-3, "S030, from the wrist");
    near(swung(600.0, 15.0), 0.8176, 2e-3, "S031, pivot 600 mm behind");
    covered::values("spray", "arc through a path, closed form");
}

/// A tilted spot is drawn out along the tilt: in its middle a gun that stands lays the cosine of what a square one lays
/// (projection: film per area goes with the cosine, spray.tilt), in all the same.
#[test]
fn a_tilted_spot_is_longer_and_thinner() {
    let setup = plain(3.0);
    for (degrees, wanted) in [(10.0, 0.985), (20.0, 0.940), (30.0, 0.866)] {
        let stands = |tilt: f64| {
            let held = |t: f64| Point { tilt, ..at(t, 0.0, 0.0) };
            let grid = Grid { left: -0.5, top: -0.5, cell: 1.0, columns: 1, rows: 1 };
            let sprayer = Sprayer::spray(&setup, grid, &path(&[held(0.0), held(1.0)]));
            (f64::from(sprayer.film().laid()[0]), sprayer.paint().landed)
        };
        let ((square, whole), (tilted, landed)) = (stands(0.0), stands(degrees));
        near(tilted / square, wanted, 1e-3, "in the middle");
        near(landed, whole, 1e-9, "in all");
    }
    covered::values("spray", "cosine of the tilt");
}

/// Either way along the same line lays the same, also aslant to the fan and in pieces of any length.
#[test]
fn a_line_lays_the_same_in_any_pieces() {
    let whole = path(&[at(0.0, -80.0, -40.0), at(0.5, 80.0, 60.0)]);
    let back = path(&[at(0.0, 80.0, 60.0), at(0.5, -80.0, -40.0)]);
    let (from, to) = (whole.points()[0], whole.points()[1]);
    let pieces = (0..=97).map(|nth| from.towards(&to, f64::from(nth) / 97.0)).collect::<Vec<_>>();
    let grid = Grid { left: -150.0, top: -150.0, cell: 5.0, columns: 60, rows: 60 };
    let lay = |path: &Path| Sprayer::spray(&plain(3.0), grid, path).film().laid().to_vec();
    let (one, other, many) = (lay(&whole), lay(&back), lay(&path(&pieces)));
    let most = one.iter().copied().fold(0.0, f32::max);
    for ((one, other), many) in one.iter().zip(&other).zip(&many) {
        assert!((one - other).abs() < 1e-3 * most && (one - many).abs() < 1e-3 * most);
    }
}
