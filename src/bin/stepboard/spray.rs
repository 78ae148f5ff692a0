//! `spray`: a panel sprayed along a path or in programmed passes, measured and graded.

use crate::Output;
use crate::args::Args;
use serde_json::{Map, Value, json};
use stepboard::content::{Content, ENGLISH, Texts};
use stepboard::rules::term::Term;
use stepboard::spraying::reading::{PaintRead, Place, ShadeRead};
use stepboard::spraying::strokes::Stroke;
use stepboard::spraying::{Advice, Finding, Reading, Setup, better, good, grade, read, told};

pub(crate) fn run(content: &Content, args: Args) -> Output {
    args.nothing_left(&["FILE", "-", "--good"])?;
    if args.switches.iter().any(|given| given == "good") {
        let [slug] = args.names.as_slice() else { return Err(vec!["one task, by its name".to_owned()]) };
        let setup = told::task(slug, content)?;
        let sets = good::run(&setup).ok_or_else(|| vec!["no speed of a gun lays this film".to_owned()])?;
        return Ok(json!({ "task": slug, "passes": told::passes(&sets) }).to_string());
    }
    let text = args.text()?;
    let document: Value = serde_json::from_str(&text).map_err(|error| vec![format!("no JSON: {error}")])?;
    let (setup, path) = told::read(&document, content)?;
    let reading = read(&setup, &path);
    let findings = grade(&reading, &setup);
    let advice = better(&reading, &findings, &setup);
    Ok(told_of(&setup, &reading, &findings, advice, content.texts(ENGLISH)).to_string())
}

fn told_of(
    setup: &Setup,
    reading: &Reading,
    findings: &[Finding],
    advice: Option<Advice>,
    texts: &Texts,
) -> Value {
    let film = &reading.film;
    let window = setup.window().map(|(from, to)| json!({ "from_um": from, "to_um": to }));
    json!({
        "task": setup.task.slug, "sheet": setup.sheet.slug, "passes": findings.is_empty(),
        "findings": findings.iter().map(|one| finding(one, texts)).collect::<Vec<_>>(),
        "better": advice.map(|advice| advised(&advice, texts)),
        "film": {
            "mean_um": film.mean, "cv": film.cv, "least_um": film.least, "most_um": film.most, "dried_um": film.dried,
            "wettest_um": film.wettest, "window": window, "in_window": film.in_window, "thin": film.thin,
            "heavy": film.heavy, "ran": film.ran, "landed_dry": film.dry,
        },
        "places": reading.places.iter().map(place).collect::<Vec<_>>(),
        "shade": reading.shade.as_ref().map(shade),
        "paint": paint(reading.paint),
        "strokes": reading.strokes.iter().map(stroke).collect::<Vec<_>>(),
        "time_s": reading.time,
    })
}

/// A reason not to pass.
pub(crate) fn finding(finding: &Finding, texts: &Texts) -> Value {
    let fault = finding.fault.slug();
    json!({
        "fault": fault, "says": texts.find(&format!("spray.fault.{fault}")), "rule": finding.rule, "found": finding.found, "limit": finding.limit,
        "counted_in": finding.counted.slug(),
    })
}

/// The one thing to do better.
pub(crate) fn advised(advice: &Advice, texts: &Texts) -> Value {
    let mut told = Map::new();
    let better = advice.better.slug();
    told.insert("better".to_owned(), json!(better));
    told.insert("says".to_owned(), json!(texts.find(&format!("spray.better.{better}"))));
    told.insert("rule".to_owned(), json!(advice.rule));
    if let Some((counted, from, to)) = advice.from_to {
        told.insert("was".to_owned(), json!(from));
        told.insert("wanted".to_owned(), json!(to));
        told.insert("counted_in".to_owned(), json!(counted.slug()));
    }
    Value::Object(told)
}

fn place(place: &Place) -> Value {
    json!({ "kind": place.kind.slug(), "x_mm": place.x, "y_mm": place.y, "area_mm2": place.area, "film_um": place.film })
}

fn shade(shade: &ShadeRead) -> Value {
    let zones = shade.zones.iter().map(|read| {
        json!({ "zone": read.zone.slug(), "lightness": read.lightness, "wanted": read.wanted, "delta_e": read.difference })
    });
    json!({ "zones": zones.collect::<Vec<_>>(), "sides_delta_e": shade.sides, "banding_delta_e": shade.banding })
}

fn paint(paint: PaintRead) -> Value {
    json!({
        "sprayed_ml": paint.sprayed, "on_work_ml": paint.on_work, "beside_ml": paint.beside, "lost_ml": paint.lost,
        "wasted": paint.wasted(), "strayed": paint.strayed(),
    })
}

fn stroke(stroke: &Stroke) -> Value {
    json!({
        "from_s": stroke.from.t, "to_s": stroke.to.t, "length_mm": stroke.length, "speed_m_s": stroke.speed,
        "unsteady": stroke.unsteady, "distance_mm": stroke.distance, "nearest_mm": stroke.distances.0,
        "farthest_mm": stroke.distances.1, "fan_share": stroke.wide, "tilt_deg": stroke.tilt, "stood_s": stroke.stood, "lead_mm": stroke.lead,
        "lag_mm": stroke.lag, "overlap": stroke.overlap, "direction_deg": stroke.direction(),
    })
}
