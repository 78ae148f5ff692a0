//! Ten situations that practitioners met, answered by `stepboard judge` and `stepboard work` as scripts use them.
//!
//! What a situation asks is common practice, no source, unless a published figure is named beside the check.

mod support;

use serde_json::{Value, json};
use support::binary::{answer, json as printed};
use support::near;

/// Micrometres in a thousandth of an inch, exact.
const MIL_UM: f64 = 25.4;

fn work(words: &[&str]) -> Value {
    printed(&[&["work"], words].concat())
}

/// A verdict on a job of one part.
fn judged(wood: &str, changes: Value, steps: &[Value]) -> Value {
    let mut job = json!({
        "parts": [{ "name": "work", "wood": wood }], "look": "level-gloss", "class": "instrument-gloss",
        "colour": "natural", "filler": "fast-solvent",
    });
    let mut told = json!({});
    for (key, value) in changes.as_object().expect("an object") {
        let place = if ["sheet", "settings", "air"].contains(&key.as_str()) { &mut told } else { &mut job };
        place[key] = value.clone();
    }
    told["job"] = job;
    told["steps"] = json!(steps);
    answer(&["judge", "-"], &told.to_string())
}

/// The faults that observations point to, the likeliest first, and what is done now.
fn diagnosed(observed: &[&str]) -> (Vec<String>, String) {
    let found = work(&[&["diagnose"], observed].concat());
    let faults = found["faults"].as_array().expect("a list").iter();
    let faults = faults.map(|one| one["fault"].as_str().expect("a fault").to_owned()).collect();
    (faults, found["do_now"].as_str().unwrap_or_default().to_owned())
}

fn rules(verdict: &Value) -> Vec<&str> {
    let findings = verdict["findings"].as_array().expect("findings");
    findings.iter().map(|one| one["rule"].as_str().expect("a rule")).collect()
}

#[track_caller]
fn accepted(verdict: &Value) {
    assert_eq!(verdict["accepted"], true, "{}", verdict["findings"]);
}

/// What a finding says, by its rule.
#[track_caller]
fn finding<'a>(verdict: &'a Value, rule: &str) -> &'a Value {
    let findings = verdict["findings"].as_array().expect("findings");
    let found = findings.iter().find(|one| one["rule"] == rule);
    found.unwrap_or_else(|| panic!("no `{rule}` in {:?}", rules(verdict)))
}

fn faults(finding: &Value) -> Vec<&str> {
    finding["faults"].as_array().expect("faults").iter().filter_map(|fault| fault["id"].as_str()).collect()
}

fn step(operation: &str) -> Value {
    json!({ "operation": operation })
}

fn how(operation: &str, remarks: &[&str]) -> Value {
    json!({ "operation": operation, "how": remarks })
}

/// Bare wood to the first coat, done as the sheet asks.
fn prepared() -> Vec<Value> {
    ["pre-fit", "sand-wood", "glue-check", "clean-off"].map(step).to_vec()
}

fn then(mut steps: Vec<Value>, more: &[Value]) -> Vec<Value> {
    steps.extend(more.iter().cloned());
    steps
}

/// Levelled and buffed as the sheet asks.
fn finished(steps: Vec<Value>) -> Vec<Value> {
    then(steps, &[step("level-film"), step("buff-gloss")])
}

#[test]
fn case_1_milky_spots_on_a_rainy_cool_day() {
    let (faults_seen, do_now) =
        diagnosed(&["mark=veil", "came=within-the-hour", "damp_wipe=wipe-stays", "first_clear=came-after"]);
    assert_eq!(faults_seen[0], "blush");
    assert!(do_now.contains("retarder"), "the conditional way on: {do_now}");
    // 60 °F (16 °C), raining. Dew point by Magnus (17.625, 243.04): 14.4 °C at 90 % RH.
    let rainy = work(&["spray-gate", "air_c=16", "rh=90", "work_c=16"]);
    assert_eq!(rainy["verdict"], "stop");
    near(rainy["dew_point"]["value"].as_f64().expect("a number"), 14.4, 0.05, "dew point");
    assert!(rainy["gap_margin"]["value"].as_f64() < Some(0.0), "the spread is under the limit");
    assert!(rainy["humidity_margin"]["value"].as_f64() < Some(0.0), "the humidity is over the limit");
    // The wet film cools below the work: with fast thinner it falls under the dew point.
    assert!(rainy["film_margin_fast"]["value"].as_f64() < Some(0.0));
    // A spread of 20 °F (11.1 K) is near 50 % RH, so the two limits are not the same: at 58 % RH the humidity passes and
    // the spread does not, and retarder is the conditional way on.
    let half = work(&["humidity-from-dew-point", "air_c=21", "dew_c=9.9"]);
    near(half["value"].as_f64().expect("a number"), 50.0, 2.0, "20 °F of spread at 21 °C");
    let between = work(&["spray-gate", "air_c=21", "rh=58", "work_c=21"]);
    assert_eq!(between["verdict"], "retarder");
    assert!(between["humidity_margin"]["value"].as_f64() > Some(0.0));
    assert!(between["gap_margin"]["value"].as_f64() < Some(0.0));
    assert!(between["retarder_margin"]["value"].as_f64() > Some(0.0));
    // The same as work that was done: the blush shows at once.
    let air = json!([{ "from_h": 0, "air_c": 16, "rh": 90 }]);
    let steps = finished(then(prepared(), &[step("seal-coat"), step("clear-coats")]));
    let verdict = judged("hard-maple", json!({ "air": air }), &steps);
    let damp = finding(&verdict, "se-19");
    assert!(faults(damp).contains(&"blush"), "{damp}");
    assert_eq!(damp["made"], damp["shows"], "blush comes at once");
    // Retarder does not help where the humidity itself is over the limit; it does where only the spread is short.
    for (rh, remarks, sprays) in
        [(58, &["with-retarder"][..], true), (58, &[], false), (70, &["with-retarder"], false)]
    {
        let air = json!([{ "from_h": 0, "air_c": 21, "rh": rh }]);
        let steps = finished(then(prepared(), &[how("seal-coat", remarks), how("clear-coats", remarks)]));
        let verdict = judged("hard-maple", json!({ "air": air }), &steps);
        assert_eq!(verdict["accepted"], sprays, "{rh} % RH, {remarks:?}: {:?}", rules(&verdict));
    }
}

#[test]
fn case_2_how_thick_is_one_coat() {
    // 4 mil x 27 % = 1.08 mil.
    let wet = format!("wet_um={}", 4.0 * MIL_UM);
    let coat = work(&["dry-film", &wet, "volume_solids=0.27", "parts_base=1", "parts_thinner=0"]);
    near(coat["dry_film"]["value"].as_f64().expect("a number"), 1.08 * MIL_UM, 0.01, "one dry coat");
    let coats = work(&["dry-film", &wet, "volume_solids=0.27", "parts_base=1", "parts_thinner=0", "coats=6"]);
    near(coats["build"]["value"].as_f64().expect("a number"), 6.0 * 1.08 * MIL_UM, 0.05, "six dry coats");
    let thinned = work(&["dry-film", &wet, "volume_solids=0.27", "parts_base=1", "parts_thinner=1"]);
    near(thinned["dry_film"]["value"].as_f64().expect("a number"), 0.54 * MIL_UM, 0.01, "thinned one to one");
    // Warned near 5 wet mils on a standing face, sags from 6.
    let verdict = |mils: f64| {
        let wet = format!("wet_um={}", mils * MIL_UM);
        work(&["sag-check", &wet, "facing=standing"])["verdict"].clone()
    };
    let (light, near_running, sagging) = (verdict(4.0), verdict(5.2), verdict(6.2));
    assert!(
        light != near_running && near_running != sagging && light != sagging,
        "{light} {near_running} {sagging}"
    );
    // The build is not made with sealer.
    let sealed = |coats: u32| {
        let seal = json!({ "operation": "seal-coat", "coats": coats, "how": ["stearated-sealer"] });
        judged("hard-maple", json!({}), &finished(then(prepared(), &[seal, step("clear-coats")])))
    };
    accepted(&sealed(1));
    assert_eq!(rules(&sealed(4)), ["se-14"]);
}

#[test]
fn case_3_wash_coat_ratio_for_soft_maple() {
    let washcoat = |solids: &str, thinner: &str| {
        let solids = format!("volume_solids={solids}");
        let thinner = format!("parts_thinner={thinner}");
        work(&["washcoat-solids", &solids, "parts_sealer=1", &thinner])
    };
    // 1:1 of a 20 to 25 % sealer is 10 to 12.5 % (Popular Woodworking no. 119: a washcoat has 3 to 7 %).
    for (solids, wanted) in [("0.20", 0.10), ("0.25", 0.125)] {
        let half = washcoat(solids, "1");
        near(half["value"].as_f64().expect("a number"), wanted, 0.000_5, "one to one");
        assert_eq!(half["verdict"], "add-thinner", "too heavy: {half}");
    }
    assert_eq!(washcoat("0.20", "3")["verdict"], "use-as-is", "5 % is a washcoat");
    assert_eq!(washcoat("0.20", "9")["verdict"], "add-sealer", "2 % is too thin");
    // The ratio alone is never judged.
    let unknown = work(&["washcoat-solids", "parts_sealer=1", "parts_thinner=1"]);
    assert_eq!(unknown["verdict"], "cannot-be-judged");
    assert_eq!(unknown["missing"], json!(["volume_solids"]));
}

#[test]
fn case_4_bubbles_on_the_drying_rack() {
    // Both causes are offered, and whether the holes follow the pores is asked.
    let (offered, _) = diagnosed(&["mark=pits", "came=within-the-hour"]);
    assert!(offered[..2].iter().all(|fault| ["pore-pinhole", "solvent-pop"].contains(&fault.as_str())));
    assert_eq!(work(&["diagnose", "mark=pits", "came=within-the-hour"])["next"], "pore_line");
    let sprayed = |remarks: &[&str]| {
        let filled = ["fill-pores", "wipe-filler", "sand-filler"].map(step);
        let coats = [how("seal-coat", remarks), step("clear-coats")];
        judged("red-oak", json!({}), &finished(then(then(prepared(), &filled), &coats)))
    };
    accepted(&sprayed(&[]));
    // Panels sunned and brought in, a heater or the sun on the fresh coat: both are wrong, both causes are offered.
    for remark in ["heated-wet", "cold-work"] {
        let verdict = sprayed(&[remark]);
        let made = finding(&verdict, "se-20");
        let offered = faults(made);
        assert!(
            offered.contains(&"pore-pinhole") && offered.contains(&"solvent-pop"),
            "{remark}: {offered:?}"
        );
        assert_eq!(made["shows"], made["made"], "it shows at once");
    }
}

#[test]
fn case_5_oil_type_coat_never_dries_on_cocobolo() {
    let away = json!({ "operation": "rags-away", "after_h": 0 });
    let oiled = |wood: &str, wiped: bool, seal: &[&str]| {
        let mut steps = then(prepared(), &["fill-pores", "wipe-filler", "sand-filler"].map(step));
        if wiped {
            steps.push(step("solvent-wipe"));
        }
        steps.extend([how("seal-coat", seal), how("clear-coats", &["oil-cured-coat"]), away.clone()]);
        judged(wood, json!({}), &finished(steps))
    };
    for wood in ["cocobolo", "indian-rosewood"] {
        let bare = oiled(wood, true, &[]);
        assert_eq!(rules(&bare), ["se-35"], "{wood}: oil on an oily wood is a hold");
        assert!(faults(finding(&bare, "se-35")).contains(&"soft-film"), "it stays soft");
        accepted(&oiled(wood, true, &["barrier-coat"]));
        assert_eq!(rules(&oiled(wood, false, &["barrier-coat"])), ["se-35"], "{wood} is cleaned first");
        // Lacquer dries; it still wants the wipe and the seal.
        let lacquered = |wiped: bool| {
            let mut steps = then(prepared(), &["fill-pores", "wipe-filler", "sand-filler"].map(step));
            if wiped {
                steps.push(step("solvent-wipe"));
            }
            judged(wood, json!({}), &finished(then(steps, &[step("seal-coat"), step("clear-coats")])))
        };
        accepted(&lacquered(true));
        assert_eq!(rules(&lacquered(false)), ["se-35"]);
    }
    for wood in ["black-cherry", "yellow-birch", "red-oak", "mahogany"] {
        accepted(&oiled(wood, false, &[]));
    }
}

#[test]
fn case_6_scratches_appear_only_after_buffing() {
    // Scratch or swirl is told by moving the lamp.
    for (seen, fault) in
        [("lamp_moved=lines-keep-place", "sanding-scratch"), ("lamp_moved=arcs-circle", "buff-swirl")]
    {
        assert_eq!(diagnosed(&["mark=lines", "came=on-rubbing", seen]).0[0], fault);
    }
    // Two grading systems: P800 stands beside US 400 (published comparison charts of P and US grades).
    let fine = work(&["grit", "grade=800"]);
    assert!(fine.to_string().contains("400"), "{fine}");
    let levelled = |change: Value| {
        let mut level = step("level-film");
        for (key, value) in change.as_object().expect("an object") {
            level[key] = value.clone();
        }
        let coats = [step("seal-coat"), step("clear-coats"), level, step("buff-gloss")];
        judged("hard-maple", json!({}), &then(prepared(), &coats))
    };
    accepted(&levelled(json!({ "grit": 2000 })));
    for change in [json!({ "how": ["grit-skipped"] }), json!({ "grit": 600 })] {
        let verdict = levelled(change);
        let made = finding(&verdict, "se-26");
        assert_eq!(faults(made), ["sanding-scratch", "buff-swirl"]);
        assert_eq!((&made["shows"], &made["correction"]), (&json!("buff"), &json!("add-step")));
    }
    let unknown = levelled(json!({ "untold": ["grit"] }));
    assert_eq!(unknown["verdict"], "cannot-be-judged");
}

#[test]
fn case_7_touch_up_enamel_on_wet_polyurethane_crackles() {
    assert_eq!(diagnosed(&["mark=folds", "came=within-the-hour"]).0[0], "wrinkle-lift");
    // The window of the example: up to 2 h, or from 8 h on.
    let window = json!({ "sheet": "water-borne", "settings": {
        "seal-wait": 1, "clear-wait": 1, "recoat-closes": 2, "recoat-opens-again": 8 } });
    let recoated = |hours: f64| {
        let scuff = json!({ "operation": "scuff-film", "after_h": 0 });
        let clear = json!({ "operation": "clear-coats", "after_h": hours });
        judged("hard-maple", window.clone(), &finished(then(prepared(), &[step("seal-coat"), scuff, clear])))
    };
    for (hours, closed) in [(1.0, false), (2.0, false), (2.5, true), (7.5, true), (8.0, false), (30.0, false)]
    {
        let verdict = recoated(hours);
        assert_eq!(rules(&verdict).contains(&"se-16"), closed, "after {hours} h: {:?}", rules(&verdict));
        if closed {
            assert_eq!(faults(finding(&verdict, "se-16")), ["wrinkle-lift"]);
        }
    }
    // An unlike coat waits for a hard film, is scuffed and isolated; into the wet coat it never goes.
    let touched = |hours: f64, scuffed: bool, isolated: bool| {
        let mut steps = then(prepared(), &[step("seal-coat"), step("clear-coats")]);
        if scuffed {
            steps.push(json!({ "operation": "scuff-film", "after_h": hours }));
        }
        let wait = if scuffed { 0.0 } else { hours };
        if isolated {
            steps.push(json!({ "operation": "clear-coats", "after_h": wait, "how": ["barrier-coat"] }));
            steps.push(json!({ "operation": "clear-coats", "after_h": 1, "how": ["unlike-film"] }));
        } else {
            steps.push(json!({ "operation": "clear-coats", "after_h": wait, "how": ["unlike-film"] }));
        }
        judged("hard-maple", json!({}), &finished(steps))
    };
    accepted(&touched(72.0, true, true));
    for (hours, scuffed, isolated) in
        [(0.0, false, false), (72.0, false, true), (72.0, true, false), (1.0, true, true)]
    {
        let verdict = touched(hours, scuffed, isolated);
        let made = finding(&verdict, "recoat.unlike-film");
        assert_eq!(faults(made), ["wrinkle-lift"], "{hours} h, scuffed {scuffed}, isolated {isolated}");
        assert_eq!(made["correction"], "wait-longer");
    }
}

#[test]
fn case_8_staining_rags_left_in_a_pile_overnight() {
    // 29 CFR 1910.107(g)(3): rags into metal cans immediately after use.
    let away = |hours: f64| json!({ "operation": "rags-away", "after_h": hours });
    let oil_stain = |rags: Option<Value>| {
        let mut steps = then(prepared(), &[how("stain-wood", &["oil-stain"])]);
        steps.extend(rags);
        let rest = ["seal-coat", "inspect-work", "clear-coats"].map(step);
        judged("red-alder", json!({ "colour": "stained" }), &finished(then(steps, &rest)))
    };
    let oil_filler = |rags: Option<Value>| {
        let mut steps = then(prepared(), &["fill-pores", "wipe-filler"].map(step));
        steps.extend(rags);
        let rest = ["sand-filler", "seal-coat", "clear-coats"].map(step);
        judged("mahogany", json!({ "filler": "oil-paste" }), &finished(then(steps, &rest)))
    };
    let varnish = |rags: Option<Value>| {
        let mut steps = then(prepared(), &[step("seal-coat"), how("clear-coats", &["oil-cured-coat"])]);
        steps.extend(rags);
        judged("hard-maple", json!({}), &finished(steps))
    };
    let jobs: [&dyn Fn(Option<Value>) -> Value; 3] = [&oil_stain, &oil_filler, &varnish];
    for job in jobs {
        let left = job(None);
        let fire = finding(&left, "waste.rags");
        assert_eq!((&left["accepted"], &fire["severity"]), (&json!(false), &json!("safety")));
        assert_eq!(
            (&fire["shows"], &fire["correction"]),
            (&json!("later"), &json!("add-step")),
            "it burns by night"
        );
        assert!(fire["source"].as_str().is_some_and(|source| source.contains("1910.107(g)(3)")));
        let task = |verdict: &Value| verdict["tasks"][0]["rule"] == "waste.rags";
        assert!(task(&left), "the disposal is a task of the schedule");
        let heaped = job(Some(away(12.0)));
        assert!(rules(&heaped).contains(&"waste.rags"), "a night on the bench is not right after use");
        let done = job(Some(away(0.0)));
        accepted(&done);
        assert!(task(&done));
        let shown = done["cautions"].as_array().expect("cautions").iter().any(|one| one["id"] == "c07");
        assert!(shown || done["cautions"].to_string().contains("c29"), "the cautions of waste are shown");
    }
    // Where nothing oily is used, no such task is asked for.
    let plain =
        judged("hard-maple", json!({}), &finished(then(prepared(), &["seal-coat", "clear-coats"].map(step))));
    accepted(&plain);
    assert_eq!(plain["tasks"], json!([]));
}

#[test]
fn case_9_how_long_before_buffing_lacquer() {
    let wait = |class: &str, build: &str| {
        let class = format!("class={class}");
        let build = format!("build_um={build}");
        work(&["earliest", "wait=buff", &class, "air_c=21", &build])
    };
    let hours = |class: &str, build: &str| wait(class, build)["value"].as_f64().expect("a number");
    // Published: turned work 2 days or longer (a club tip), full-gloss instruments 2 to 4 weeks.
    let (turned, satin, gloss) =
        (hours("turned", "40"), hours("satin", "80"), hours("instrument-gloss", "80"));
    assert!((48.0..=7.0 * 24.0).contains(&turned), "{turned} h");
    assert!((48.0..=7.0 * 24.0).contains(&satin), "{satin} h");
    assert!((14.0 * 24.0..=28.0 * 24.0).contains(&gloss), "{gloss} h");
    assert!(hours("turned", "200") > turned, "more film needs longer");
    assert!(hours("instrument-gloss", "400") > gloss, "more film needs longer");
    // Smell, nail and powder stand above the calendar.
    let tests = wait("turned", "40")["tests"].to_string();
    assert!(["smell", "nail", "powder"].iter().all(|test| tests.contains(test)), "{tests}");
    // The thickness is not given: a range by film, and by gloss.
    let range = |class: &str| {
        let found = work(&["earliest", "wait=buff", &format!("class={class}"), "air_c=21"]);
        assert_eq!(found["verdict"], "range-by-film");
        ["from", "to"].map(|key| found[key]["value"].as_f64().expect("hours"))
    };
    let ([from, to], [gloss_from, gloss_to]) = (range("turned"), range("instrument-gloss"));
    assert!(from < to && gloss_from < gloss_to && from < gloss_from && to < gloss_to);
    assert!(gloss_from >= 14.0 * 24.0 && gloss_to <= 28.0 * 24.0, "{gloss_from} to {gloss_to} h");
    let unknown = work(&["earliest", "wait=buff", "air_c=21", "build_um=40"]);
    assert_eq!(unknown["verdict"], "cannot-be-judged", "the class of work decides");
    let buffed = |hours: f64, remarks: &[&str]| {
        let level = json!({ "operation": "level-film", "after_h": hours, "how": remarks });
        let coats = [step("seal-coat"), step("clear-coats"), level, step("buff-gloss")];
        judged("hard-maple", json!({ "class": "turned" }), &then(prepared(), &coats))
    };
    accepted(&buffed(48.0, &[]));
    assert_eq!(rules(&buffed(24.0, &[])), ["se-23"], "levelled too early");
    let gummy = buffed(500.0, &["dry-test-failed"]);
    let soft = finding(&gummy, "drying.physical-tests");
    assert_eq!((&gummy["accepted"], &soft["correction"]), (&json!(false), &json!("wait-longer")));
}

#[test]
fn case_10_seal_before_dye_on_figured_maple() {
    let dyed = |before: &[Value], remarks: &[&str]| {
        let steps = then(then(prepared(), before), &[how("stain-wood", remarks)]);
        let rest = ["seal-coat", "inspect-work", "clear-coats"].map(step);
        let parts = json!([{ "name": "top", "wood": "hard-maple", "figured": true }]);
        judged("hard-maple", json!({ "colour": "stained", "parts": parts }), &finished(then(steps, &rest)))
    };
    // Both ways are accepted, tied to the method: sprayed on bare wood, wiped on a washcoat.
    accepted(&dyed(&[], &["sprayed-on", "sample-approved"]));
    accepted(&dyed(&[step("washcoat")], &["wiped-on", "sample-approved"]));
    assert!(rules(&dyed(&[], &["wiped-on"])).contains(&"staining.blotching-wants-washcoat"));
    // Wiped over a full seal coat the dye cannot bring out the figure.
    let sealed = dyed(&[step("seal-coat")], &["wiped-on", "sample-approved"]);
    assert!(rules(&sealed).contains(&"se-40"), "{:?}", rules(&sealed));
    // A sample board is asked for either way.
    for (before, remark) in [(vec![], "sprayed-on"), (vec![step("washcoat")], "wiped-on")] {
        let untried = dyed(&before, &[remark]);
        assert_eq!(rules(&untried), ["staining.sample-board"], "{remark}");
        assert_eq!(untried["tasks"][0]["done"], false);
    }
    // Without the method the order cannot be judged.
    let parts = json!([{ "name": "top", "wood": "hard-maple", "figured": true }]);
    let stain = json!({ "operation": "stain-wood", "untold": ["sprayed-on", "wiped-on"], "how": ["sample-approved"] });
    let rest = ["seal-coat", "inspect-work", "clear-coats"].map(step);
    let steps = finished(then(then(prepared(), &[stain]), &rest));
    let unknown = judged("hard-maple", json!({ "colour": "stained", "parts": parts }), &steps);
    assert_eq!(unknown["verdict"], "cannot-be-judged", "{unknown}");
}
