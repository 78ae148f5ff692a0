//! The native command as scripts use it: JSON on standard output, bad input named on standard error with exit code 2.

mod support;

use serde_json::Value;
use std::collections::BTreeSet;
use stepboard::card::Mark;
use stepboard::quantity::Unit;
use stepboard::rules::term::{RuleKind, Severity, Stage, Term};
use support::binary::{answer, json, refused, run};

#[test]
fn work_lists_every_calculation_with_keys_units_ranges_and_outputs() {
    let list = json(&["work", "--list"]);
    let all = list["calculations"].as_array().expect("a list");
    let content = support::content();
    let texts = content.texts("en");
    for one in all {
        let name = one["name"].as_str().expect("a name");
        assert_ne!(one["title"], format!("bench.{name}"), "`{name}` has no title");
        for key in one["keys"].as_array().expect("keys") {
            let number = key["unit"].is_string() && key["min"].is_number() && key["max"].is_number();
            let term = key["terms"].as_array().is_some_and(|terms| !terms.is_empty());
            assert!(number != term, "`{name}`: key {key} needs a unit and range, or terms");
            assert!(
                key["label"].as_str().is_some_and(|label| !label.is_empty()),
                "`{name}`: {key} has no label"
            );
        }
        for gives in one["gives"].as_array().into_iter().flatten() {
            let key = format!("gives.{}", gives["key"].as_str().expect("a key"));
            assert!(texts.find(&key).is_some(), "`{name}`: `{key}` has no text");
        }
        assert!(one["gives"].as_array().is_some_and(|gives| !gives.is_empty()), "`{name}` gives nothing");
    }
    for wanted in [
        "dew-point",
        "wet-bulb",
        "humidity-ratio",
        "moisture-content",
        "spray-gate",
        "filler",
        "movement",
        "earliest",
        "job-time",
    ] {
        assert!(all.iter().any(|one| one["name"] == wanted), "`{wanted}` is missing");
    }
}

#[test]
fn a_share_is_written_from_0_to_1_or_with_a_per_cent_sign() {
    let solids =
        |given: &str| json(&["work", "dry-film", "wet_um=100", given, "parts_base=1", "parts_thinner=1"]);
    assert_eq!(solids("volume_solids=0.20")["dry_film"]["value"], 10.0);
    assert_eq!(solids("volume_solids=20%"), solids("volume_solids=0,2"));
    assert_eq!(solids("volume_solids=1")["dry_film"]["value"], 50.0, "1 is the whole");
    let says = ["`volume_solids` is `20`; a share from 0.01 to 1, or 1 % to 100 %, is allowed"];
    refused(&["work", "dry-film", "wet_um=100", "volume_solids=20"], "", &says);
    refused(&["work", "dry-film", "wet_um=100", "volume_solids=150%"], "", &["`volume_solids` is `150%`"]);
    refused(
        &["work", "dry-film", "wet_um=100%"],
        "",
        &["`wet_um` is `100%`; a number from 5 to 600 µm is allowed"],
    );
    assert_eq!(
        json(&["work", "dew-point", "air_c=20", "rh=50%"]),
        json(&["work", "dew-point", "air_c=20", "rh=50"])
    );
    let list = json(&["work", "--list"]);
    let film = list["calculations"].as_array().expect("a list").iter().find(|one| one["name"] == "dry-film");
    let keys = &film.expect("listed")["keys"];
    let solids =
        keys.as_array().expect("keys").iter().find(|key| key["key"] == "volume_solids").expect("a key");
    assert_eq!(
        (&solids["min"], &solids["max"], &solids["unit"]),
        (&0.01.into(), &1.0.into(), &"ratio".into())
    );
}

/// Warmth gives no credit unless the sheet does; a window of a water-borne film closes in the middle and opens again.
#[test]
fn warmth_gives_no_credit_and_a_window_may_close() {
    let buff = |air: &str| {
        json(&["work", "earliest", "wait=buff", "class=satin", "build_um=100", air])["value"].clone()
    };
    assert_eq!((buff("air_c=27"), buff("air_c=21")), (72.0.into(), 72.0.into()));
    let recoat =
        |hours: &str| json(&["work", "recoat", "sheet=water-borne", "air_c=21", hours])["verdict"].clone();
    assert_eq!(recoat("hours_since=1"), "too-soon");
    assert_eq!(recoat("hours_since=24"), "open");
    assert_eq!(recoat("hours_since=24.1"), "closed");
    assert_eq!(recoat("hours_since=72"), "open-again");
}

#[test]
fn one_coat_and_the_whole_clear_are_told_apart() {
    let between = |film: &str| json(&["work", "earliest", "wait=clear-to-clear", "air_c=21", film]);
    assert_eq!(between("coat_um=50")["value"], 2.0, "twice the reference of 25, floor of half an hour");
    assert_eq!(between("sheet=nitrocellulose")["missing"], serde_json::json!(["coat_um"]));
    let levelled = ["work", "earliest", "wait=buff", "class=satin", "air_c=21"];
    assert_eq!(json(&levelled)["verdict"], "range-by-film", "the film of one coat does not tell");
}

/// Film, coverage and abrasives as scripts ask for them. Values: wet and dry film formulae of a gauge maker; spreading-rate
/// sheet (solids 0.65 at 125 µm: 5.2 m2 a litre, 208.5 ft2 a gallon at 5 mil); three published charts of grades.
#[test]
fn films_and_grades_are_asked_by_name() {
    let film =
        |more: &[&str]| json(&[&["work", "dry-film", "wet_um=100", "volume_solids=0.2"], more].concat());
    assert_eq!(film(&[])["value"], 20.0, "as supplied, whatever the sheet thins its own clear by");
    assert_eq!(film(&["sheet=shellac"])["value"], 20.0);
    let build = film(&["parts_base=1", "parts_thinner=1", "coats=4"]);
    assert_eq!((&build["value"], &build["dry_film"]["value"]), (&40.0.into(), &10.0.into()));
    let coats = json(&["work", "coats-for", "target_um=105", "wet_um=125", "volume_solids=0.2"]);
    assert_eq!((&coats["value"], &coats["dry_film"]["value"]), (&5.0.into(), &25.0.into()));
    assert_eq!(json(&["work", "wet-film", "dry_um=20", "volume_solids=0.2"])["value"], 100.0);
    let spread = json(&["work", "coverage", "volume_solids=0.65", "dry_um=125", "area_m2=10"]);
    assert_eq!(spread["value"].as_f64().map(|value| (value * 1e6).round()), Some(5_200_000.0));
    assert_eq!(spread["volume"]["text"], "1923 mL");
    let landed = json(&["work", "coverage", "volume_solids=65%", "dry_um=127", "transfer=0.5"]);
    assert_eq!(landed["us_coverage"]["text"], "104 ft²/gal");
    let sag = |um: &str| json(&["work", "sag-check", um])["verdict"].clone();
    assert_eq!([sag("wet_um=100"), sag("wet_um=127"), sag("wet_um=152")], ["ok", "near-running", "sags"]);
    let grit = json(&["work", "grit", "grade=400"]);
    assert_eq!((&grit["value"], &grit["unit"]), (&35.0.into(), &"um".into()));
    assert_eq!((&grit["coarser"]["text"], &grit["finer"]["text"]), (&"P360".into(), &"P500".into()));
    assert_eq!(json(&["work", "us-grit", "us_grade=400"])["grade"]["text"], "P800");
    let next = |grade: &str, stage: &str| json(&["work", "next-grit", grade, stage]);
    assert_eq!(next("grade=120", "stage=sand")["value"], 220.0);
    assert_eq!(next("grade=240", "stage=sand")["verdict"], "sanding-done");
    assert_eq!(next("grade=240", "stage=sand")["before"], "before-stain");
    assert_eq!(next("grade=2000", "stage=level")["verdict"], "to-compound");
    assert_eq!(json(&["work", "last-grit", "before=before-clear"])["value"], 400.0);
    assert_eq!(
        json(&["work", "recoat", "sheet=water-borne", "hours_since=30", "air_c=21"])["verdict"],
        "closed"
    );
    assert_eq!(json(&["work", "recoat", "sheet=shellac", "hours_since=30", "air_c=21"])["verdict"], "open");
    let released = json(&["work", "released", "fo=0.125"])["value"].as_f64().expect("a share");
    assert!((released - 0.398_927_990).abs() < 1e-8, "polykin docstring, after Crank 1975 p. 48");
}

/// Wood Handbook ch. 16, Fillers: large-pored mahogany is filled, small-pored maple is not.
#[test]
fn work_answers_with_rules_and_says_what_is_missing() {
    assert_eq!(json(&["work", "filler", "wood=mahogany", "look=level-gloss"])["verdict"], "yes");
    assert_eq!(json(&["work", "filler", "wood=hard-maple", "look=level-gloss"])["verdict"], "no");
    let missing = json(&["work", "filler", "wood=mahogany"]);
    assert_eq!((&missing["verdict"], &missing["missing"][0]), (&"cannot-be-judged".into(), &"look".into()));
}

/// A line of answers for one card of a family that is sure to be there, at its version of today.
fn filler_line(rest: &str) -> String {
    let version = &json(&["deal", "wants-filler", "seed=7"])["cards"][0]["version"];
    format!(r#"{{"family":"wants-filler","version":{version},"seed":7,"sheet":"shellac",{rest}}}"#)
}

#[test]
fn bad_input_is_named_and_exits_with_two() {
    refused(&["nothing"], "", &["`nothing` is no command", "work"]);
    refused(&["work", "filler", "wood=plywood"], "", &["`wood` is `plywood`", "mahogany"]);
    refused(&["work", "filler", "wod=mahogany"], "", &["`wod`", "wood, look, sheet"]);
    refused(
        &["work", "filler", "wood=mahogany", "sheet=none"],
        "",
        &["`none` is no shop sheet", "nitrocellulose"],
    );
    refused(&["work", "filler", "wood=mahogany", "wood=koa"], "", &["`wood` is given twice"]);
    refused(&["deal", "wants-filler", "count=many"], "", &["`count` is `many`", "0 to 100000"]);
    refused(&["deal", "no-such"], "", &["`no-such` is no family"]);
    refused(&["grade"], "{\"family\":1}", &["line 1"]);
    let line = filler_line(r#""answer":{"pick":"A"}"#);
    refused(&["grade"], &line, &["line 1", "picks"]);
    refused(&["grade"], "\n", &["no answers came"]);
    refused(&["work", "movement", "width_mm=1,000"], "", &["`width_mm` is `1,000`"]);
    refused(&["work", "--list", "air_c=3"], "", &["`air_c` is not known here"]);
    refused(&["deal", "wants-filler", "seed=4294967295", "count=2"], "", &["seeds end at 4294967295"]);
    let line = filler_line(r#""sheet_hash":"0","answer":"not-enough""#);
    refused(&["grade"], &line, &["`sheet_hash` is not that of `shellac`"]);
    let line = filler_line(r#""answer":{"choice":1}"#);
    refused(&["grade"], &line, &["`answer` is", "{\"picks\":[\"A\"]}", "\"not-enough\""]);
    refused(&["check", "no/such/file"], "", &["no/such/file"]);
}

#[test]
fn every_dealt_card_is_graded_right_on_its_own_key_and_on_no_other_letter() {
    let dealt = json(&["deal", "first-week", "seed=11", "count=60", "--key"]);
    let cards = dealt["cards"].as_array().expect("cards");
    let line = |card: &Value, answer: &Value| {
        serde_json::json!({
            "family": card["family"], "version": card["version"], "seed": card["seed"], "sheet": card["sheet"],
            "answer": answer, "certainty": "test-board",
        })
        .to_string()
    };
    let right: Vec<String> = cards.iter().map(|card| line(card, &card["solution"]["answer"])).collect();
    let graded = run(&["grade"], &right.join("\n"));
    let marks: Vec<Value> = String::from_utf8_lossy(&graded.stdout)
        .lines()
        .map(|line| serde_json::from_str(line).expect("JSON"))
        .collect();
    assert_eq!(marks.len(), cards.len());
    for mark in &marks {
        assert_eq!(mark["mark"], "right", "{mark}");
    }
    for card in cards.iter().filter(|card| card["kind"] == "choose-one") {
        let lines: Vec<String> = card["options"]
            .as_array()
            .expect("options")
            .iter()
            .map(|option| serde_json::json!({ "pick": option["letter"] }))
            .filter(|answer| *answer != card["solution"]["answer"])
            .map(|answer| line(card, &answer))
            .collect();
        let graded = run(&["grade"], &lines.join("\n"));
        for out in String::from_utf8_lossy(&graded.stdout).lines() {
            let out: Value = serde_json::from_str(out).expect("JSON");
            assert_ne!(out["mark"], "right", "{out}");
            assert!(out["after"].is_object(), "a wrong answer has a consequence: {out}");
        }
    }
}

#[test]
fn dealing_is_the_same_every_time() {
    let deal = || json(&["deal", "wants-filler", "seed=4294967293", "count=3", "--key"]);
    assert_eq!(deal(), deal());
}

#[test]
fn every_command_explains_itself_with_an_example() {
    for command in ["work", "deal", "grade", "check"] {
        let output = run(&[command, "--help"], "");
        let text = String::from_utf8_lossy(&output.stdout).into_owned();
        assert!(
            output.status.success() && text.contains(&format!("  stepboard {command}")),
            "{command}: {text}"
        );
    }
}

#[test]
fn a_ticket_brings_its_own_sheet_and_a_told_fact_is_never_called_missing() {
    assert_eq!(json(&["work", "job-time", "ticket=walnut-dulcimer"])["sheet"], "water-borne");
    assert_eq!(json(&["work", "job-time", "ticket=walnut-dulcimer", "sheet=shellac"])["sheet"], "shellac");
    let many = json(&["work", "spray-gate", "rh=50"]);
    assert_eq!(many["missing"], serde_json::json!(["air_c", "work_c"]));
    let cold = json(&["work", "moisture-content", "air_c=-2", "rh=50"]);
    assert_eq!((&cold["missing"], &cold["outside"]), (&serde_json::json!([]), &serde_json::json!(["air_c"])));
}

#[test]
fn a_sheet_from_a_file_is_graded_on_that_file() {
    let path = std::env::temp_dir().join(format!("stepboard-sheet-{}.toml", std::process::id()));
    std::fs::write(
        &path,
        "slug = \"ours\"\ncoating = \"nitrocellulose\"\n[values]\nbuff-wait-instrument = 72.0\n",
    )
    .expect("a temporary file");
    let sheet = format!("sheet={}", path.display());
    let dealt = json(&["deal", "level-when", "count=30", "--key", &sheet]);
    let lines: Vec<String> = dealt["cards"]
        .as_array()
        .expect("cards")
        .iter()
        .map(|card| {
            serde_json::json!({
                "family": card["family"], "version": card["version"], "seed": card["seed"], "sheet": card["sheet"],
                "sheet_hash": card["sheet_hash"], "answer": card["solution"]["answer"],
            })
            .to_string()
        })
        .collect();
    let graded = run(&["grade"], &lines.join("\n"));
    std::fs::remove_file(&path).expect("the file was there");
    let out = String::from_utf8_lossy(&graded.stdout).into_owned();
    assert!(graded.status.success(), "{}", String::from_utf8_lossy(&graded.stderr));
    assert_eq!(out.matches("\"mark\":\"right\"").count(), lines.len(), "{out}");
}

#[test]
fn help_and_version_are_found_where_people_look() {
    for words in [&["--help"][..], &["-h"], &["help"], &[]] {
        assert!(
            String::from_utf8_lossy(&run(words, "").stdout).contains("stepboard work --help"),
            "{words:?}"
        );
    }
    assert!(String::from_utf8_lossy(&run(&["help", "deal"], "").stdout).contains("stepboard deal NAME"));
    assert!(String::from_utf8_lossy(&run(&["--version"], "").stdout).starts_with("stepboard "));
}

#[test]
fn the_shipped_content_passes_its_own_check() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/content");
    assert_eq!(json(&["check", path])["ok"], true);
}

#[test]
fn a_single_file_is_checked_as_what_it_is() {
    let root = concat!(env!("CARGO_MANIFEST_DIR"), "/content");
    for (file, kind) in [
        ("woods.toml", "wood"),
        ("tickets.toml", "ticket"),
        ("facts/air.toml", "fact"),
        ("sheets/3-shellac.toml", "sheet"),
        ("sets/filling.toml", "set"),
    ] {
        assert_eq!(json(&["check", &format!("{root}/{file}")])["checked"][0]["kind"], kind);
    }
    refused(
        &["check", &format!("{root}/text/en/air.toml")],
        "",
        &["text/en/air.toml", "`coating`", "`task`"],
    );
}

/// 29 CFR 1910.107(b)(5)(i): 8 x 7 ft at 100 ft/min is 5,600 ft3/min. 29 CFR 1910.1000(d)(2): each solvent is under its own
/// limit, the sum is 1.0667. Dilution air by the lowest limit published, the table's beside it and labelled.
#[test]
fn hazards_are_answered_with_what_defers_to_code_and_data_sheet() {
    let number = |value: &Value| value["value"].as_f64().expect("a number");
    let booth = json(&["work", "booth-air", "width_m=2.4384", "height_m=2.1336", "velocity_m_s=0.508"]);
    assert!((number(&booth["flow_ft3_min"]) - 5_600.0).abs() < 0.001);
    assert_eq!(booth["unit"], "m3/min");
    let air = json(&["work", "dilution-air", "solvent=toluene", "litres=3.785411784", "minutes=20"]);
    // Lowest limit 1.0 %: 4 x 99 x 30.4 / 1.0; arithmetic on a vapour volume from memory.
    assert!((number(&air["air_ft3"]) - 12_038.4).abs() < 0.1);
    assert!(number(&air["by_table"]) < air["value"].as_f64().expect("a number"));
    assert_eq!(air["unconfirmed"], serde_json::json!(["table-from-memory"]));
    let room = ["acetone=300", "n-butyl-acetate=40", "toluene=60", "isopropanol=80"];
    let sum = json(&[&["work", "exposure-sum"], &room[..]].concat());
    assert_eq!((&sum["verdict"], &sum["ceilings"]), (&"over-limit".into(), &"ceiling-not-shown".into()));
    assert_eq!(sum["over"], serde_json::json!([]), "each is under its own limit");
    assert!(
        (number(&sum["sum_pel"]) - 1.0667).abs() < 0.0005
            && (number(&sum["sum_rel"]) - 2.2667).abs() < 0.0005
    );
    for answer in [&booth, &air, &sum] {
        assert!(answer["defer"].as_str().is_some_and(|line| line.contains("Local code")), "{answer}");
    }
    let open = json(&["work", "exposure-sum", "pgmea=3"]);
    assert_eq!((&open["verdict"], &open["missing"][0]), (&"cannot-be-judged".into(), &"pgmea".into()));
    let spirits = json(&["work", "exposure-sum", "toluene=10", "stoddard-solvent=10", "vmp-naphtha=5"]);
    assert_eq!(spirits["verdict"], "cannot-be-judged");
    assert_eq!(spirits["missing"], serde_json::json!(["vmp-naphtha", "stoddard-solvent"]));
    assert_eq!(spirits["rel_in_mg"], spirits["missing"]);
    assert_eq!(json(&["work", "exposure-sum"])["missing"][0], "solvent");
    refused(&["work", "booth-air", "width_m=20"], "", &["`width_m` is `20`", "0.1 to 10 m"]);
    refused(&["work", "dilution-air", "solvent=water"], "", &["`solvent` is `water`", "toluene"]);
}

/// The values that a JSON Schema allows at a place.
fn allowed(schema: &str, at: &str) -> Vec<Value> {
    let path = format!("{}/content/schema/{schema}.schema.json", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).expect("a schema");
    let schema: Value = serde_json::from_str(&text).expect("JSON");
    schema.pointer(at).and_then(Value::as_array).unwrap_or_else(|| panic!("{path}{at}")).clone()
}

/// What is listed by hand in a schema is what the program can print: nothing new is forgotten there.
#[test]
fn the_schemas_of_cards_and_grades_list_every_value_of_their_closed_lists() {
    fn all<T: serde::Serialize>(values: &[T]) -> Vec<Value> {
        values.iter().map(|value| serde_json::to_value(value).expect("plain data")).collect()
    }
    let stages = all(Stage::ALL);
    let lists = [
        ("deal", "/$defs/unit/enum", all(&Unit::ALL)),
        ("grade", "/$defs/unit/enum", all(&Unit::ALL)),
        ("deal", "/$defs/card/properties/stage/enum", stages.clone()),
        ("grade", "/$defs/grade_line/properties/after/oneOf/1/properties/made/enum", stages.clone()),
        ("grade", "/$defs/grade_line/properties/after/oneOf/1/properties/shows/enum", stages),
        ("deal", "/$defs/card/properties/severity/enum", all(Severity::ALL)),
        ("deal", "/$defs/rules/items/properties/severity/enum", all(Severity::ALL)),
        ("deal", "/$defs/rules/items/properties/kind/enum", all(RuleKind::ALL)),
        ("grade", "/$defs/rules/items/properties/kind/enum", all(RuleKind::ALL)),
        ("grade", "/$defs/grade_line/properties/mark/enum", all(&[Mark::Right, Mark::Partly, Mark::Wrong])),
    ];
    let set = |values: Vec<Value>| values.iter().map(Value::to_string).collect::<BTreeSet<String>>();
    for (schema, at, wanted) in lists {
        assert_eq!(set(allowed(schema, at)), set(wanted), "{schema}{at}");
    }
}

/// A grade is written with its P and a temperature with its scale as well as bare; another kind of unit is refused.
#[test]
fn a_number_may_carry_a_unit_of_its_kind() {
    let value = |words: &[&str]| json(words)["value"].clone();
    assert_eq!(value(&["work", "grit", "grade=P400"]), value(&["work", "grit", "grade=400"]));
    let dew = |air| value(&["work", "dew-point", air, "rh=50"]).as_f64().expect("a number");
    assert!((dew("air_c=68 F") - dew("air_c=20")).abs() < 1e-9);
    refused(&["work", "dew-point", "air_c=20 mm", "rh=50"], "", &["`air_c` is `20 mm`", "-20"]);
}

/// The example that `grade --help` shows is graded as it stands.
#[test]
fn the_example_of_the_help_is_graded() {
    let help = String::from_utf8(run(&["grade", "--help"], "").stdout).expect("text");
    let line = help.lines().map(str::trim).find(|line| line.starts_with('{')).expect("an example");
    let graded = answer(&["grade"], &format!("{line}\n"));
    assert!(graded["mark"].is_string(), "{graded}");
}

/// Every unit that a card asks for, and its siblings on the keypad, has a name.
#[test]
fn every_unit_on_the_keypad_has_a_name() {
    let content = support::content();
    let texts = content.texts("en");
    for unit in Unit::ALL.into_iter().filter(|unit| !unit.symbol().is_empty()) {
        let key = format!("app.unit.{}", unit.symbol());
        assert!(texts.find(&key).is_some(), "{key}");
    }
}

/// A picture of an instrument is a PNG of its size (ISO/IEC 15948: signature, then width and height of the header), and what
/// cannot be drawn is refused with what is allowed.
#[test]
fn an_instrument_is_drawn_into_a_file() {
    const SIGNATURE: &[u8] = b"\x89PNG\r\n\x1a\n";
    let path = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("lute.png");
    let out = format!("out={}", path.display());
    let told = ["picture", "shape=lute", "wood=mahogany", "colour=amber", "clear_um=80", "scale=4", &out];
    let said = json(&told);
    let bytes = std::fs::read(&path).expect("the picture is written");
    assert!(bytes.starts_with(SIGNATURE), "{:?}", &bytes[..8]);
    let number = |at: usize| bytes[at..at + 4].iter().fold(0, |sum, byte| 256 * sum + u64::from(*byte));
    assert_eq!((said["width_px"].as_u64(), said["height_px"].as_u64()), (Some(number(16)), Some(number(20))));
    for (wrong, says) in [
        (&["shape=lyra", "wood=mahogany"][..], &["`shape` is `lyra`", "lyre"][..]),
        (&["shape=lyre", "side=edge", "wood=mahogany"], &["`side` is `edge`", "front, back"]),
        (&["shape=lute"], &["`wood` is needed", "mahogany"]),
        (&["shape=lute", "wood=mahogany", "colour=amber", "opaque=ffffff"], &["`colour` and `opaque`"]),
        (&["shape=lute", "wood=mahogany", "scale=9"], &["`scale` is `9`", "0.2 to 4"]),
    ] {
        let words: Vec<&str> = [&["picture"], wrong, &[out.as_str()]].concat();
        refused(&words, "", says);
    }
}
