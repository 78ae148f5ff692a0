//! What is no path and no run is refused with what, where and what is allowed.

use crate::support::binary::refused;
use crate::tries::at;
use stepboard::spraying::{NoPath, Path, Point};

#[test]
fn points_outside_their_limits_are_no_path() {
    let good = [at(0.0, 0.0, 0.0), at(1.0, 10.0, 0.0)];
    assert!(Path::new(good.to_vec()).is_ok());
    assert_eq!(Path::new(good[..1].to_vec()), Err(NoPath::Count(1)));
    let says = |change: &dyn Fn(&mut Point)| {
        let mut points = good;
        change(&mut points[1]);
        Path::new(points.to_vec()).expect_err("no path").to_string()
    };
    assert_eq!(says(&|point| point.t = -1.0), "point 1: t_s -1 is outside 0 to 3600 s");
    assert_eq!(says(&|point| point.x = f64::NAN), "point 1: x_mm NaN is outside -2000 to 2000 mm");
    assert_eq!(says(&|point| point.distance = 20.0), "point 1: distance_mm 20 is outside 50 to 1000 mm");
    assert_eq!(says(&|point| point.trigger = 1.5), "point 1: trigger 1.5 is outside 0 to 1 ");
    let falls = Path::new(vec![at(1.0, 0.0, 0.0), at(0.5, 0.0, 0.0)]).expect_err("no path");
    assert_eq!(falls.to_string(), "point 1: `t_s` is 0.5; times do not fall, the point before is at 1");
}

#[test]
fn a_run_that_cannot_be_read_is_refused_with_its_place() {
    let no = |input: &str, says: &[&str]| refused(&["spray"], input, says);
    no("{", &["no JSON"]);
    no(r#"{"path": []}"#, &["`task` is missing"]);
    no(
        r#"{"task": "sealer-pane", "path": []}"#,
        &["`task` is \"sealer-pane\"", "sealer-panel", "shaded-edge"],
    );
    no(r#"{"task": "sealer-panel"}"#, &["one of `path` and `passes` is needed"]);
    no(r#"{"task": "sealer-panel", "path": [], "passes": []}"#, &["one of `path` and `passes` is needed"]);
    no(r#"{"task": "sealer-panel", "path": []}"#, &["`path`: 0 points; 2 to 108000 are allowed"]);
    no(r#"{"task": "sealer-panel", "path": 5}"#, &["`path` is 5", "a list"]);
    no(r#"{"task": "sealer-panel", "tack": 1}"#, &["`tack` is not known here"]);
    no(
        r#"{"task": "sealer-panel", "sheet": "nitro", "path": []}"#,
        &["`sheet` is \"nitro\"", "nitrocellulose"],
    );
    let point = |more: &str| {
        format!(
            r#"{{"task": "sealer-panel", "path": [{{"t_s": 0, "x_mm": 0, "y_mm": 0, "distance_mm": 180, {more}}}]}}"#
        )
    };
    no(&point(r#""trigger": 2"#), &["`path[0].trigger` is 2", "a number from 0 to 1"]);
    no(&point(r#""pull": 1"#), &["`path[0].pull` is not known here", "`path[0].trigger` is missing"]);
    let set = |more: &str| format!(r#"{{"task": "sealer-panel", "passes": [{{{more}}}]}}"#);
    no(
        &set(r#""distance_mm": 180"#),
        &["`passes[0].line_mm` is missing", "`passes[0].speed_m_s` is missing"],
    );
    no(&set(r#""line_mm": [[0, 0]]"#), &["`passes[0].line_mm` is [[0,0]]", "2 to 1000 places"]);
    no(&set(r#""line_mm": [[0, 0], [1]]"#), &["`passes[0].line_mm[1]` is [1]", "a place [x, y]"]);
    no(
        &set(r#""line_mm": [[0, 0], [9, 0]], "distance_mm": 180, "speed_m_s": 9, "lead_mm": 0, "lag_mm": 0"#),
        &["`passes[0].speed_m_s` is 9", "a number from 0.02 to 3"],
    );
    no(
        &set(
            r#""line_mm": [[1900, 0], [2000, 0]], "distance_mm": 180, "speed_m_s": 1, "lead_mm": 0, "lag_mm": 400"#,
        ),
        &["`passes`: on their way x_mm 2400 is outside -2000 to 2000 mm"],
    );
    no(r#"{"task": "sealer-panel", "passes": []}"#, &["`passes`: none; one set is needed at least"]);
    refused(&["spray", "no-task", "--good"], "", &["`task` is \"no-task\"", "clear-panel"]);
}
