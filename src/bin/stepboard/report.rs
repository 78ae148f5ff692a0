//! `report`: what the results of several tablets say of people, card families and sets.

use crate::Output;
use crate::args::Args;
use crate::results::{Read, read_all};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use stepboard::card::solve;
use stepboard::content::{Content, ENGLISH};
use stepboard::learn::items::{self, FamilyReport, OptionUse, Reliability, SetReport};
use stepboard::record::{Entry, Event, EventName};
use stepboard::rules::term::Term;
use stepboard::rules::verdict::RuleId;

pub(crate) fn run(content: &Content, args: Args) -> Output {
    args.nothing_left(&["FILE ..."])?;
    let Read { content, events, .. } = read_all(content, &args.names)?;
    let report = items::report(&content, &events);
    // What they say of families is no item: no two people are asked alike on a walk.
    let decided = events.iter().filter_map(|event| event.walked()?.decided());
    let decisions: usize = decided.map(|decided| decided.exercised.len()).sum();
    let texts = content.texts(ENGLISH);
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
    let wanted: BTreeSet<&EventName> = report.families.iter().map(|one| &one.example).collect();
    let examples: BTreeMap<EventName, &Entry> = events
        .iter()
        .filter_map(Event::answer)
        .map(|entry| (entry.stamp.name(), entry))
        .filter(|(name, _)| wanted.contains(name))
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
            "sure_and_wrong": one.sure_and_wrong, "slips": one.slips, "undealt": one.undealt,
            "rules": rules(&content, examples.get(&one.example).copied()),
            "example": { "device": one.example.device, "sequence": one.example.sequence },
            "options": one.options.iter().map(option).collect::<Vec<_>>(),
            "look": one.flags.iter().map(|flag| json!({
                "flag": flag.slug(), "words": texts.get(&format!("items.{}", flag.slug())),
            })).collect::<Vec<_>>(),
        })
    };
    Ok(shown(json!({
        "files": args.names.len(), "answers": report.answers, "decisions": decisions, "counted": report.counted,
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

/// The rules that decide the card that stands as an example, with the source of each: the first thing to look at.
fn rules(content: &Content, entry: Option<&Entry>) -> Vec<Value> {
    let card = entry.and_then(|entry| items::card_of(content, entry));
    let solution = card.and_then(|(card, world)| solve(&card, &world));
    let rules = solution.map(|solution| solution.rules).unwrap_or_default();
    let told = |id: RuleId| {
        let source = content.rule(id.0).map(|info| info.source.as_str());
        json!({ "rule": id.0, "source": source })
    };
    rules.into_iter().map(told).collect()
}

fn option(one: &OptionUse) -> Value {
    json!({
        "option": one.option, "right": one.right, "offered": one.offered, "chosen": one.chosen,
        "upper": one.upper, "upper_of": one.upper_of, "lower": one.lower, "with_rest": one.with_rest,
    })
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
