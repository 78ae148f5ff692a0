//! `report`: what the results of several tablets say of people, card families and sets.

use crate::Output;
use crate::args::Args;
use serde_json::{Value, json};
use stepboard::content::Content;
use stepboard::exchange::Results;
use stepboard::learn::items::{self, FamilyReport, Reliability, SetReport};
use stepboard::record::{Journal, merge};
use stepboard::rules::sheet::Sheet;
use stepboard::rules::term::Term;

pub(crate) fn run(content: &Content, args: Args) -> Output {
    args.nothing_left(&["FILE ..."])?;
    if args.names.is_empty() {
        return Err(vec!["at least one file of results is needed, as the app saves it".to_owned()]);
    }
    let (mut files, mut wrong) = (Vec::new(), Vec::new());
    for file in &args.names {
        match read(file) {
            Ok(results) => files.push(results),
            Err(line) => wrong.push(line),
        }
    }
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let own = files.iter().flat_map(|results| &results.sheets);
    // A sheet that cannot be had here leaves its cards undealt; their answers count all the same.
    let own: Vec<Sheet> = own.filter_map(|sheet| sheet.sheet(content).ok()).collect();
    let content = &content.with_sheets(own);
    let journals: Vec<Journal> = files.into_iter().map(|results| Journal::new(results.events)).collect();
    let events = merge(&journals).map_err(|clash| vec![clash.to_string()])?;
    let report = items::report(content, &events);
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
    Ok(json!({
        "files": args.names.len(), "answers": report.answers, "counted": report.counted,
        "people": people,
        "families": report.families.iter().map(family).collect::<Vec<_>>(),
        "sets": report.sets.iter().map(set).collect::<Vec<_>>(),
    })
    .to_string())
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

/// Results, every event of which must be readable: a report on half of it would be a wrong one.
fn read(file: &str) -> Result<Results, String> {
    let bytes = std::fs::read(file).map_err(|error| format!("{file}: {error}"))?;
    Results::read(&bytes).map_err(|refused| {
        format!("{file}: {refused}; a file of results or a list of events is needed, as the app saves it")
    })
}
