//! The width of the fan, set by its knob: the same paint on less of the face or on more.

use crate::support::{content, covered, near};
use crate::tries::{at, path, plain, seen, setup};
use serde_json::json;
use stepboard::spraying::program::path as way;
use stepboard::spraying::setup::FILM_A_ML;
use stepboard::spraying::{
    Better, Fault, Grid, Passes, Path, Point, Run, Setup, Sprayer, better, good, grade, read, told,
};

/// Film across a pass along y = 0 whose fan is set so wide: at its middle, then each millimetre down.
fn across(wide: f64) -> Vec<f64> {
    let grid = Grid { left: -0.5, top: -0.5, cell: 1.0, columns: 1, rows: 160 };
    let run = [(0.0, -120.0), (0.8, 120.0)].map(|(t, x)| Point { wide, ..at(t, x, 0.0) });
    let sprayer = Sprayer::spray(&plain(3.0), grid, &path(&run));
    sprayer.film().laid().iter().map(|film| f64::from(*film)).collect()
}

/// Volume balance of a pass, Q e / (v w): 200 mL/min at 0.30 m/s lay 55.6 µm over 200 mm and twice that over half of it; a
/// beta 3 section is 15/8 of its mean in the middle and ends at the edge of the fan.
#[test]
fn a_fan_half_as_wide_lays_twice_the_film_on_half_the_width() {
    for wide in [1.0, 0.75, 0.5] {
        let film = across(wide);
        let mean = 200.0 / 60.0 / (0.3 * 200.0 * wide) * 1_000.0;
        near(film[0], mean * 15.0 / 8.0, 0.002 * film[0], &format!("the middle of a fan of {wide}"));
        let edge = film.iter().position(|film| *film == 0.0).expect("it ends");
        near(edge as f64, 100.0 * wide, 1.0, &format!("the edge of a fan of {wide}"));
    }
    covered::values("spray", "volume balance of a pass with a narrower fan");
}

/// Nothing is lost and nothing comes from nowhere while the knob is turned (balance of volumes, to 0.1 %).
#[test]
fn a_knob_that_is_turned_keeps_the_deposit() {
    const WIDE: Grid = Grid { left: -600.0, top: -300.0, cell: 2.0, columns: 600, rows: 500 };
    let setup = setup("sealer-panel");
    let turned =
        seen(60).points().iter().map(|point| Point { wide: 1.0 - point.t / 16.0, ..*point }).collect();
    let sprayer = Sprayer::spray(&setup, WIDE, &Path::new(turned).expect("a path"));
    let laid: f64 = sprayer.film().laid().iter().map(|film| f64::from(*film)).sum();
    let paint = sprayer.paint();
    near(laid * WIDE.area() / FILM_A_ML + paint.lost, paint.sprayed, 1e-3 * paint.sprayed, "in all");
}

/// Closed the spot is round; the knob goes as far as the gun has it and no farther.
#[test]
fn the_knob_goes_from_a_round_spot_to_the_widest_fan() {
    let panel = setup("clear-panel");
    let half = |setup: &Setup, wide: f64| setup.opened(200.0, 0.0, wide).half_fan;
    assert_eq!(panel.fans(), (0.3, 1.0));
    near(half(&panel, 0.3), panel.held(200.0, 0.0).half_thin, 1e-9, "round");
    assert_eq!((half(&panel, 0.1), half(&panel, 3.0)), (half(&panel, 0.3), 100.0));
    let shaded = setup("shaded-edge");
    assert_eq!(shaded.fans(), (1.0, 3.0));
    near(half(&shaded, 3.0), 75.0, 1e-9, "fully opened");
}

#[test]
fn programmed_passes_lie_closer_with_a_narrower_fan() {
    let rows = |fan: f64| {
        let set = Passes::of(vec![(-180.0, 0.0), (180.0, 0.0)], [280.0, 200.0, 0.4, 0.5, 0.0, 0.0, 0.0, fan]);
        let path = way(&[set], &setup("clear-panel")).expect("a path");
        let mut rows: Vec<f64> =
            path.points().iter().filter(|point| point.trigger > 0.0).map(|point| point.y).collect();
        rows.dedup();
        assert!(path.points().iter().all(|point| point.wide == fan));
        rows.len()
    };
    // 280 mm in gaps of no more than 100 mm, and of no more than 50.
    assert_eq!((rows(1.0), rows(0.5)), (4, 7));
}

/// A good run with another fan: what is found first, and what is told to do better.
fn with_fan(task: &str, fan: f64) -> (Option<Fault>, Option<Better>) {
    let setup = setup(task);
    let mut sets = good::run(&setup).expect("a good run");
    sets.iter_mut().for_each(|set| set.fan = fan);
    let reading = read(&setup, &way(&sets, &setup).expect("a path"));
    let findings = grade(&reading, &setup);
    let advice = better(&reading, &findings, &setup).map(|advice| advice.better);
    (findings.first().map(|finding| finding.fault), advice)
}

/// A narrow fan at the speed of a full one lays heavy stripes that run; a shade with an open fan reaches past its fade.
#[test]
fn a_fan_set_wrongly_fails_and_is_told() {
    assert_eq!(with_fan("clear-panel", 1.0), (None, None));
    assert_eq!(with_fan("clear-panel", 0.4), (Some(Fault::Runs), Some(Better::OpenFan)));
    assert_eq!(with_fan("sealer-panel", 0.4), (Some(Fault::Missed), Some(Better::OpenFan)));
    assert_eq!(with_fan("shaded-edge", 3.0), (Some(Fault::CentreCovered), Some(Better::CloseFan)));
}

/// Runs that were kept before the fan could be set read as they did, and such a run is told as then.
#[test]
fn a_run_without_its_fan_is_one_as_the_task_sets_it() {
    let older = json!({ "hand": [[0, -2000, 500, 90, 100, 200, 0], [500, 2000, 0], [500, 2000, 10, 90, 0]] });
    let run = Run::try_from(older.clone()).expect("a run");
    let Run::Hand(path) = &run else { panic!("a hand") };
    assert!(path.points().iter().all(|point| point.wide == 1.0));
    assert_eq!(run.told(), older);
    let set = json!({ "line_mm": [[-180.0, 0.0], [180.0, 0.0]], "wide_mm": 0.0, "distance_mm": 200.0,
        "speed_m_s": 0.4, "overlap": 0.5, "lead_mm": 0.0, "lag_mm": 0.0, "wait_s": 0.0 });
    let older = json!({ "passes": [set] });
    assert_eq!(Run::try_from(older.clone()).expect("a run").told(), older);
}

#[test]
fn a_fan_that_is_set_is_kept() {
    let points = [(0.0, -100.0, 0.6), (0.5, 0.0, 0.6), (1.0, 100.0, 0.45)];
    let path = path(&points.map(|(t, x, wide)| Point { wide, ..at(t, x, 0.0) }));
    let run = Run::hand(&path).expect("short");
    let text = serde_json::to_string(&run).expect("json");
    assert_eq!(serde_json::from_str::<Run>(&text).expect("a run"), run);
    let Run::Hand(kept) = &run else { panic!("a hand") };
    assert_eq!(kept.points().iter().map(|point| point.wide).collect::<Vec<_>>(), [0.6, 0.6, 0.45]);
    let sets = vec![Passes::of(vec![(0.0, 0.0), (9.0, 0.0)], [0.0, 200.0, 0.4, 0.5, 0.0, 0.0, 0.0, 0.7])];
    let run = Run::programmed(sets.clone()).expect("short");
    let back: Run = serde_json::from_value(json!(run)).expect("a run");
    assert_eq!(back, Run::Passes(sets));
}

#[test]
fn a_fan_that_the_gun_does_not_have_is_refused() {
    let content = content();
    let point = |t: f64, share: f64| json!({ "t_s": t, "x_mm": t, "y_mm": 0.0, "distance_mm": 200.0, "trigger": 1.0, "fan_share": share });
    let run = |task: &str, share: f64| json!({ "task": task, "path": [point(0.0, 1.0), point(1.0, share)] });
    let refused = told::read(&run("clear-panel", 2.0), &content).expect_err("the fan is open at 1");
    assert!(refused[0].contains("fan_share") && refused[0].contains("0.3"), "{refused:?}");
    assert!(told::read(&run("clear-panel", 0.4), &content).is_ok());
    assert!(told::read(&run("shaded-edge", 2.0), &content).is_ok());
}
