//! `stepboard spray`: a good run asked for and sprayed, and the same as a path.

use crate::support::binary::{answer, json};
use crate::support::{content, near};
use crate::tries::setup;
use serde_json::Value;
use stepboard::spraying::{good, point, program};

#[test]
fn a_good_run_that_is_asked_for_passes() {
    for task in &content().sprays {
        let run = json(&["spray", &task.slug, "--good"]);
        let told = answer(&["spray", "-"], &run.to_string());
        assert_eq!(told["passes"], true, "{}: {}", task.slug, told["findings"]);
        assert_eq!(told["better"], Value::Null);
        assert_eq!(told["shade"].is_null(), task.shade.is_none());
        let paint = |key: &str| told["paint"][key].as_f64().expect("mL");
        // The valve opens and closes over the same time: the flow counts as long as the trigger is pulled (balance of volumes).
        let strokes = told["strokes"].as_array().expect("strokes");
        let lasts = |stroke: &Value| {
            let of = |key: &str| stroke[key].as_f64().expect("a number");
            of("length_mm") / 1_000.0 / of("speed_m_s")
        };
        let sprayed = strokes.iter().map(lasts).sum::<f64>() * task.gun.flow_ml_min.get() / 60.0;
        near(paint("sprayed_ml"), sprayed, 0.01 * sprayed, "the flow while the trigger is pulled");
    }
}

/// Points of a path tell the same run as the passes that they were made of.
#[test]
fn a_path_comes_to_the_same_as_its_passes() {
    let setup = setup("clear-panel");
    let sets = good::run(&setup).expect("a good run");
    let path = program::path(&sets, &setup).expect("a path");
    let points: Vec<Value> = path
        .points()
        .iter()
        .map(|point| {
            let named = point::LIMITS
                .iter()
                .zip(point.values())
                .map(|((key, ..), value)| ((*key).to_owned(), value.into()));
            Value::Object(named.collect())
        })
        .collect();
    let by_path =
        answer(&["spray"], &serde_json::json!({ "task": "clear-panel", "path": points }).to_string());
    let by_passes = answer(&["spray"], &json(&["spray", "clear-panel", "--good"]).to_string());
    assert_eq!(by_path["film"], by_passes["film"]);
    assert_eq!(by_path["strokes"], by_passes["strokes"]);
}

/// Another sheet asks for another film: by that of water-borne lacquer a coat is thinner.
#[test]
fn the_sheet_sets_the_window() {
    let mut run = json(&["spray", "clear-panel", "--good"]);
    let own = answer(&["spray"], &run.to_string());
    run["sheet"] = "water-borne".into();
    let other = answer(&["spray"], &run.to_string());
    assert!(other["film"]["window"]["to_um"].as_f64() < own["film"]["window"]["to_um"].as_f64());
}

#[test]
fn a_finding_tells_its_rule_and_numbers() {
    let mut run = json(&["spray", "clear-panel", "--good"]);
    for set in run["passes"].as_array_mut().expect("sets") {
        set["speed_m_s"] = 0.08.into();
    }
    let told = answer(&["spray"], &run.to_string());
    assert_eq!(told["passes"], false);
    let first = &told["findings"][0];
    assert_eq!((&first["fault"], &first["rule"]), (&"spray-runs".into(), &"film.sags".into()));
    assert!(first["found"].as_f64() > first["limit"].as_f64());
    assert_eq!(told["better"]["better"], "better-faster");
    assert!(
        told["better"]["says"].is_string()
            && told["better"]["was"].as_f64() < told["better"]["wanted"].as_f64()
    );
    assert!(
        told["places"]
            .as_array()
            .is_some_and(|places| places.iter().any(|place| place["kind"] == "place-run"))
    );
}
