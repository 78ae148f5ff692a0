//! `judge`: a job as it was told, judged.

mod schema;

use crate::Output;
use crate::args::Args;
use serde_json::{Map, Value, json};
use stepboard::card::Voice;
use stepboard::content::{Caution, CautionStage, Content, ENGLISH, Units};
use stepboard::judge::coming::Coming;
use stepboard::judge::{self, Account, Found, Judgement};
use stepboard::rules::sequence::duty::Due;
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::term::{Stage, Term};
use stepboard::rules::verdict::RuleId;

const EXAMPLE: &str = include_str!("../../../../content/schema/judge.example.json");
/// The closing line that every answer carries.
const DEFER: &str = "c30";

pub(crate) fn run(content: &Content, args: Args) -> Output {
    args.nothing_left(&["FILE", "-", "--schema", "--example"])?;
    let voice = Voice::new(content, ENGLISH, Units::METRIC);
    let asked = |switch: &str| args.switches.iter().any(|given| given == switch);
    if asked("schema") {
        return schema::filled(&voice);
    }
    if asked("example") {
        return Ok(EXAMPLE.trim_end().to_owned());
    }
    let text = args.text()?;
    let document: Value = serde_json::from_str(&text).map_err(|error| vec![format!("no JSON: {error}")])?;
    let account = judge::read(&document, content)?;
    Ok(answer(&voice, &account, &judge::judge(&account, content)).to_string())
}

fn answer(voice: &Voice<'_>, account: &Account, judged: &Judgement) -> Value {
    let mut out = Map::new();
    out.insert("format".into(), json!("stepboard-judge"));
    out.insert("format_version".into(), json!(1));
    match judged.accepted {
        Some(accepted) => out.insert("accepted".into(), json!(accepted)),
        None => out.insert("verdict".into(), json!("cannot-be-judged")),
    };
    out.insert("sheet".into(), json!(account.sheet.slug));
    out.insert("ticket".into(), json!(account.ticket));
    out.insert("missing".into(), json!(judged.missing));
    let findings: Vec<Value> = judged.found.iter().map(|found| finding(voice, account, found)).collect();
    out.insert("findings".into(), json!(findings));
    let excused = judged.excused.iter().map(|one| {
        json!({
            "index": one.index, "operation": operation(account, one.index), "variant": one.variant.slug(),
            "sentence": sentence(voice, RuleId(one.variant.slug())), "excuses": one.error.slug(),
        })
    });
    out.insert("excused".into(), excused.collect());
    out.insert("tasks".into(), judged.duties.iter().map(|due| task(voice, account, due)).collect());
    out.insert("now_h".into(), json!(judged.now));
    out.insert("next".into(), judged.coming.iter().map(|one| next(account, one)).collect());
    out.insert("cautions".into(), cautions(voice, account, judged));
    out.insert("defer".into(), json!(voice.texts.get(&format!("caution.{DEFER}"))));
    Value::Object(out)
}

fn operation(account: &Account, index: usize) -> Option<&'static str> {
    account.plan.steps.get(index).map(|step| step.operation.slug())
}

fn part(account: &Account, index: usize) -> Option<&str> {
    let place = account.plan.steps.get(index).and_then(|step| step.part)?;
    account.parts.get(place).map(String::as_str)
}

fn sentence<'a>(voice: &'a Voice<'_>, rule: RuleId) -> &'a str {
    let key = format!("rule.{}", rule.0);
    voice.texts.find(&key).unwrap_or_default()
}

fn finding(voice: &Voice<'_>, account: &Account, found: &Found) -> Value {
    let info = voice.content.rule(found.rule.0);
    let faults: Vec<Value> = found
        .faults
        .iter()
        .map(|fault| {
            json!({
                "id": fault, "name": voice.texts.get(&format!("fault.{fault}")),
                "fix": voice.texts.get(&format!("fault.{fault}.fix")),
            })
        })
        .collect();
    let operation = found.left_out.map(Operation::slug).or_else(|| operation(account, found.index));
    json!({
        "index": found.index, "operation": operation, "part": part(account, found.index),
        "rule": found.rule.0, "sentence": sentence(voice, found.rule),
        "kind": info.map(|info| info.kind), "source": info.map(|info| info.source.as_str()),
        "severity": found.severity, "faults": faults,
        "made": found.made, "shows": found.shows.map_or("later", Stage::slug),
        "correction": found.mend.slug(), "correction_words": voice.term("", found.mend.slug()),
        "hours_lost": found.cost.hours(), "rework_h": found.cost.rework_h, "wait_h": found.cost.wait_h,
    })
}

fn task(voice: &Voice<'_>, account: &Account, due: &Due) -> Value {
    json!({
        "index": due.step, "operation": operation(account, due.step), "rule": due.rule().0,
        "sentence": sentence(voice, due.rule()), "severity": due.duty.severity(), "done": due.done,
    })
}

fn next(account: &Account, coming: &Coming) -> Value {
    let part = coming.part.and_then(|place| account.parts.get(place));
    let at = coming.at.map(|(day, hour)| json!({ "day": day, "hour": hour }));
    let tests: Vec<&str> = coming.tests.iter().map(|test| test.slug()).collect();
    let spoils: Vec<&str> = coming.spoils.iter().map(|rule| rule.0).collect();
    json!({
        "operation": coming.operation.slug(), "part": part, "may": coming.may(),
        "not_before_h": coming.not_before, "at": at, "waits_for": coming.waits_for.map(Term::slug),
        "tests": tests, "spoils": spoils,
    })
}

/// The cautions of what was done and of what may come next, and those that every screen shows.
fn cautions(voice: &Voice<'_>, account: &Account, judged: &Judgement) -> Value {
    let mut done = judge::verdict::operations(&account.plan);
    done.extend(judged.coming.iter().filter(|one| one.may()).map(|one| one.operation));
    let shown = |caution: &&Caution| {
        caution.is_everywhere() || done.iter().any(|operation| caution.is_of(stages(*operation)))
    };
    let cautions = voice.content.cautions.iter().filter(shown);
    cautions
        .map(|one| json!({ "id": one.id, "text": voice.texts.get(&format!("caution.{}", one.id)) }))
        .collect()
}

/// The stages whose cautions an operation shows.
const fn stages(operation: Operation) -> &'static [CautionStage] {
    use CautionStage::{Buff, Cure, Inspect, Mix, Prep, Rub, Spray, Stain, Waste};
    match operation {
        Operation::Stain => &[Stain, Mix, Spray, Cure, Waste],
        Operation::Fill | Operation::WipeFiller => &[Prep, Cure, Waste],
        Operation::Washcoat
        | Operation::Seal
        | Operation::Colour
        | Operation::Shade
        | Operation::Protect
        | Operation::Clear => &[Mix, Spray, Cure],
        Operation::Level | Operation::PlugHoles => &[Rub],
        Operation::Buff | Operation::Polish => &[Buff],
        Operation::Inspect | Operation::Scrape => &[Inspect],
        Operation::RagsAway => &[Waste],
        Operation::Pack => &[Cure],
        _ => &[Prep],
    }
}
