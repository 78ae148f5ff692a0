//! `report`: what the results of several tablets say of people, card families and sets.

use crate::Output;
use crate::args::Args;
use crate::results::{Read, read_all};
use serde_json::{Value, json};
use stepboard::content::Content;
use stepboard::learn::items::{self, FamilyReport, Reliability, SetReport};
use stepboard::rules::term::Term;

pub(crate) fn run(content: &Content, args: Args) -> Output {
    args.nothing_left(&["FILE ..."])?;
    let Read { content, events, .. } = read_all(content, &args.names)?;
    let report = items::report(&content, &events);
    let texts = content.texts("en");
    let people: Vec<Value> = report
        .people
        .iter()
        .map(|one| {
            json!({
                "person": one.person, "answers": one.answers, "right": one.right,
                "sure_and_wrong": one.sure_and_wrong,
            })
        })
        .collect();
    let family = |one: &FamilyReport| {
        let titles = [format!("card.{}.title", one.family), format!("card.{}.ask", one.family)];
        json!({
            "family": one.family, "version": one.version,
            "words": texts.first(&[&titles[0], &titles[1]]),
            "asked": one.item.asked, "right": one.item.right, "difficulty": one.item.difficulty,
            "luck": one.luck, "known": one.luck.and_then(|luck| one.item.known(luck)),
            "with_rest": one.item.with_rest,
            "with_rest_95": one.item.range.map(|range| [range.from, range.to]),
            "upper_less_lower": one.item.upper_less_lower,
            "sure_and_wrong": one.sure_and_wrong, "slips": one.slips,
            "look": one.flags.iter().map(|flag| json!({
                "flag": flag.slug(), "words": texts.get(&format!("items.{}", flag.slug())),
            })).collect::<Vec<_>>(),
        })
    };
    Ok(shown(json!({
        "files": args.names.len(), "answers": report.answers, "counted": report.counted,
        "people": people,
        "families": report.families.iter().map(family).collect::<Vec<_>>(),
        "sets": report.sets.iter().map(set).collect::<Vec<_>>(),
    }))
    .to_string())
}

/// Decimals of what is no count: more than any answer of people can tell.
const DECIMALS: usize = 6;

/// The same with all numbers rounded to what is shown.
fn shown(value: Value) -> Value {
    match value {
        Value::Number(number) if number.is_f64() => {
            let rounded =
                number.as_f64().and_then(|number| format!("{number:.DECIMALS$}").parse::<f64>().ok());
            json!(rounded)
        }
        Value::Array(all) => all.into_iter().map(shown).collect(),
        Value::Object(all) => all.into_iter().map(|(name, value)| (name, shown(value))).collect(),
        other => other,
    }
}

fn set(one: &SetReport) -> Value {
    let told = |of: &Reliability| {
        json!({
            "people": of.people, "families": of.items, "mean_right": of.mean, "variance": of.variance,
            "kr20": of.kr20, "kr21": of.kr21, "standard_error": of.standard_error,
            "split_half": of.split_half, "lengthen_to_0.80": of.lengthen, "livingston": of.livingston,
            "brennan": of.brennan,
        })
    };
    json!({ "set": one.set, "reliability": one.reliability.as_ref().map(told) })
}
