//! `work`: the model as a calculator.

use crate::args::{Args, base_sheet, sheet};
use crate::{Output, show};
use serde_json::{Map, Value, json};
use stepboard::bench::{self, Calculation, Facts, Gives, Outcome, Row};
use stepboard::card::Voice;
use stepboard::content::{CLOSING_CAUTION, Content, ENGLISH, Units, World};
use stepboard::quantity::Unit;
use stepboard::rules::term::Severity;
use stepboard::rules::verdict::{RuleId, Ruling};

pub(crate) fn run(content: &Content, mut args: Args) -> Output {
    let voice = Voice::new(content, ENGLISH, Units::METRIC);
    if args.switches.iter().any(|switch| switch == "list") {
        args.nothing_left(&["nothing beside --list"])?;
        return Ok(list(&voice).to_string());
    }
    let named = args.take_sheet();
    let name = match args.names.as_slice() {
        [name] => name.clone(),
        _ => return Err(vec!["one NAME is needed; `stepboard work --list` gives them".to_owned()]),
    };
    let Some(calculation) = bench::calculations().into_iter().find(|one| one.name == name) else {
        let names: Vec<&str> = bench::calculations().iter().map(|one| one.name).collect();
        return Err(vec![format!("`{name}` is not known; allowed: {}", names.join(", "))]);
    };
    let mut facts = Facts::default();
    let takes = calculation.takes(content);
    let mut allowed: Vec<&str> = takes.iter().map(|need| need.key).collect();
    for key in &allowed {
        if let Some(given) = args.take(key) {
            facts.read(content, key, &given).map_err(|error| vec![error.to_string()])?;
        }
    }
    allowed.push("sheet");
    args.nothing_left(&allowed)?;
    // A ticket brings the sheet that it is finished on.
    let ticket = facts.maybe_slug("ticket").and_then(|slug| content.ticket(slug));
    let named = named.or_else(|| ticket.map(|ticket| ticket.sheet.clone()));
    let sheet = sheet(content, &named.map_or_else(|| base_sheet(content), Ok)?)?;
    let mut out = Map::new();
    out.insert("name".into(), json!(calculation.name));
    out.insert("sheet".into(), json!(sheet.slug));
    match (calculation.run)(&facts, &World { content, sheet: &sheet }) {
        Ok(ruling) => outcome(&mut out, &voice, &ruling),
        Err(cannot) if cannot.contradicting => {
            return Err(vec![format!("`{}` contradict each other", cannot.missing.join("`, `"))]);
        }
        Err(cannot) => {
            out.insert("verdict".into(), json!("cannot-be-judged"));
            let needed = takes.iter().filter(|need| !need.optional).map(|need| need.key);
            let told = |key: &str| facts.0.contains_key(key);
            let mut missing: Vec<&str> = needed.filter(|key| !told(key)).collect();
            // What the rule names may be told, and yet lie outside what the rule covers.
            let (outside, more): (Vec<&str>, Vec<&str>) =
                cannot.missing.iter().map(String::as_str).partition(|key| told(key));
            for key in more {
                if !missing.contains(&key) {
                    missing.push(key);
                }
            }
            out.insert("missing".into(), json!(missing));
            if !outside.is_empty() {
                out.insert("outside".into(), json!(outside));
            }
        }
    }
    Ok(Value::Object(out).to_string())
}

fn outcome(out: &mut Map<String, Value>, voice: &Voice<'_>, ruling: &Ruling<Outcome>) {
    for (key, slug) in &ruling.answer.terms {
        out.insert((*key).into(), json!(slug));
    }
    for (key, slugs) in &ruling.answer.lists {
        out.insert((*key).into(), json!(slugs));
    }
    for (key, measure) in &ruling.answer.numbers {
        if *key == "value" {
            out.insert("value".into(), json!(measure.value));
            out.insert("unit".into(), json!(measure.unit));
            out.insert("text".into(), json!(measure.text()));
        } else {
            out.insert((*key).into(), show::measure(*measure));
        }
    }
    let safety =
        |rule: &RuleId| voice.content.rule(rule.0).is_some_and(|rule| rule.severity == Severity::Safety);
    if ruling.rules.iter().any(safety) {
        out.insert("defer".into(), json!(voice.texts.get(&format!("caution.{CLOSING_CAUTION}"))));
    }
    for (key, rows) in &ruling.answer.rows {
        out.insert((*key).into(), rows.iter().map(|one| row(voice, one)).collect());
    }
    for (key, message) in &ruling.answer.words {
        out.insert((*key).into(), json!(voice.texts.get(message)));
    }
    out.insert("rules".into(), show::rules(voice, &ruling.rules));
    out.insert("working".into(), show::working(voice, &ruling.working));
}

/// A row: slugs, the first one with its words; bare numbers as numbers, others with their unit.
fn row(voice: &Voice<'_>, row: &Row) -> Value {
    let mut out = Map::new();
    for (nth, (key, slug)) in row.terms.iter().enumerate() {
        out.insert((*key).into(), json!(slug));
        if nth == 0 {
            out.insert("words".into(), json!(voice.term("", slug)));
        }
    }
    for (key, number) in &row.numbers {
        let bare = matches!(number.unit, Unit::Ratio | Unit::Count);
        out.insert((*key).into(), if bare { json!(number.value) } else { show::measure(*number) });
    }
    Value::Object(out)
}

fn list(voice: &Voice<'_>) -> Value {
    let sheets: Vec<&str> = voice.content.sheets.iter().map(|sheet| sheet.slug.as_str()).collect();
    let all: Vec<Value> = bench::calculations().into_iter().map(|one| entry(voice, one)).collect();
    json!({ "sheets": sheets, "calculations": all })
}

fn entry(voice: &Voice<'_>, one: &Calculation) -> Value {
    let keys: Vec<Value> = one
        .takes(voice.content)
        .iter()
        .map(|need| {
            let label = voice.fact_name(need.key);
            let Some(info) = voice.content.fact(need.key) else {
                return json!({ "key": need.key, "optional": need.optional });
            };
            match info.written() {
                Some(number) => json!({
                    "key": need.key, "label": label, "optional": need.optional,
                    "unit": number.unit, "symbol": number.unit.symbol(), "min": number.min, "max": number.max,
                    "percent_sign": info.unit == Some(Unit::Percent),
                }),
                None => json!({
                    "key": need.key, "label": label, "optional": need.optional, "terms": info.slugs(voice.content),
                }),
            }
        })
        .collect();
    let gives: Vec<Value> = one
        .gives
        .iter()
        .map(|gives| match gives {
            Gives::Number { key, unit } => json!({ "key": key, "unit": unit }),
            Gives::List { key } => json!({ "key": key, "list": true }),
            Gives::Rows { key, of } => json!({ "key": key, "rows_of": of }),
            Gives::Words { key } => json!({ "key": key, "words": true }),
            Gives::Term { key, among } => {
                let mut among: Vec<&str> = among.iter().flat_map(|term| voice.content.listed(term)).collect();
                if *key == "verdict" {
                    among.push("cannot-be-judged");
                }
                json!({ "key": key, "terms": among })
            }
        })
        .collect();
    json!({
        "name": one.name,
        "title": voice.texts.get(&format!("bench.{}", one.name)),
        "keys": keys,
        "gives": gives,
        "without_a_needed_fact": { "verdict": "cannot-be-judged", "missing": ["key"] },
        "beyond_what_the_rule_covers": { "verdict": "cannot-be-judged", "outside": ["key"] },
    })
}
