//! Cards and answers as they travel in JSON: options under letters, answers by letter.

use crate::{show, workup};
use serde::Deserialize;
use serde_json::{Value, json};
use stepboard::card::scene::PANEL_MM;
use stepboard::card::{Answer, Card, Kind, Place, Solution, Voice};
use stepboard::content::{CautionStage, Units};
use stepboard::quantity::{Measure, Unit};
use stepboard::spraying::Run;

/// The letters of the options.
pub(crate) const LETTERS: [&str; 6] = ["A", "B", "C", "D", "E", "F"];

/// Reads the units asked for.
pub(crate) fn units(name: Option<&str>) -> Result<Units, Vec<String>> {
    match name {
        None | Some("metric") => Ok(Units::METRIC),
        Some("us") => Ok(Units::US),
        Some(other) => Err(vec![format!("`units` is `{other}`; metric or us is allowed")]),
    }
}

/// A card without its answer.
pub(crate) fn card(voice: &Voice<'_>, sheet: &str, card: &Card) -> Value {
    let info = voice.content.family(&card.family);
    let draws = info.map(|info| info.facts.as_slice()).unwrap_or_default();
    let on_panel = draws.iter().filter(|draw| draw.on_panel).flat_map(|draw| voice.content.drawn(draw));
    let on_panel: Vec<&str> = on_panel.collect();
    let told = |key: &str| !on_panel.contains(&key);
    let facts: Vec<Value> = card
        .facts
        .0
        .iter()
        .filter(|(key, _)| told(key))
        .map(|(key, value)| {
            json!({
                "key": key, "label": voice.fact_name(key), "value": value,
                "unit": voice.content.fact(key).and_then(|fact| fact.unit),
                "text": voice.fact(&card.family, key, value),
            })
        })
        .collect();
    let options: Vec<Value> = card
        .options
        .iter()
        .zip(LETTERS)
        .map(|(option, letter)| json!({ "letter": letter, "text": voice.answer(&card.family, option) }))
        .collect();
    // All of its stages: who asks here can ask for the answer too. Screens keep those back that answer the card.
    let shown = |stages: &[CautionStage]| {
        let cautions = voice.content.cautions.iter();
        cautions.filter(|one| one.is_of(stages)).map(|one| one.id.clone()).collect()
    };
    let cautions: Vec<String> = info.map(|info| shown(&info.cautions)).unwrap_or_default();
    let mut told = json!({
        "family": card.family, "version": card.version, "seed": card.seed,
        "sheet": sheet, "sheet_hash": card.sheet,
        "stage": info.map(|info| info.stage), "topic": info.map(|info| info.topic),
        "severity": info.map(|info| info.severity), "kind": card.kind,
        "story": voice.story(card), "ask": voice.ask(card), "facts": facts, "options": options,
        "units": card.unit.map(Unit::siblings).unwrap_or_default(), "cautions": cautions,
    });
    if let Some(offered) = &card.offered {
        told["offered"] = workup::offered(voice, card, offered);
    }
    told
}

/// An answer as people send it.
#[derive(Debug, Clone, Deserialize)]
#[serde(untagged)]
pub(crate) enum Sent {
    /// `"not-enough"`
    Word(String),
    /// `{"pick":"B"}`
    Pick(Pick),
    /// `{"picks":["A","C"]}`
    Picks(Picks),
    /// `{"order":["B","A"]}`
    Order(Order),
    /// `{"value":12.5,"unit":"h"}`
    Number(Number),
    /// `{"x_mm":40,"y_mm":25}`
    Place(Place),
    /// `{"tests":["B"],"fault":"A","cause":"C","remedy":"A"}`
    Diagnosis(workup::Sent),
    /// `{"passes":[…]}` or `{"hand":[…]}`
    #[serde(skip)]
    Run(Run),
}

#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Pick {
    pick: String,
}

#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Picks {
    picks: Vec<String>,
}

#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Order {
    order: Vec<String>,
}

#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Number {
    value: f64,
    unit: String,
}

/// Every kind of card.
const KINDS: [Kind; 7] =
    [Kind::ChooseOne, Kind::ChooseAll, Kind::Order, Kind::Number, Kind::Point, Kind::Diagnose, Kind::Spray];

/// Reads an answer in any of its forms.
pub(crate) fn sent(value: Value) -> Result<Sent, String> {
    // What is wrong in a run is told with its place.
    if ["passes", "hand"].iter().any(|key| value.get(key).is_some()) {
        return Run::try_from(value).map(Sent::Run).map_err(|no| format!("`answer`: {no}"));
    }
    serde_json::from_value(value.clone()).map_err(|_| {
        let forms: Vec<&str> = KINDS.map(form).to_vec();
        format!("`answer` is {value}; allowed: {}, \"not-enough\"", forms.join(", "))
    })
}

/// Turns a sent answer into one that can be graded on this card.
pub(crate) fn answer(card: &Card, sent: &Sent) -> Result<Answer, String> {
    let slugs = |letters: &[String]| -> Result<Vec<String>, String> {
        let mut found = Vec::new();
        for letter in letters {
            match option(card, letter)? {
                Answer::Term(slug) if found.contains(slug) => {
                    return Err(format!("`{letter}` is given twice"));
                }
                Answer::Term(slug) => found.push(slug.clone()),
                _ => return Err(format!("`{letter}` cannot be listed")),
            }
        }
        Ok(found)
    };
    match (card.kind, sent) {
        (_, Sent::Word(word)) if word == "not-enough" => Ok(Answer::NotEnough),
        (Kind::ChooseOne, Sent::Pick(pick)) => option(card, &pick.pick).cloned(),
        (Kind::ChooseAll, Sent::Picks(picks)) => slugs(&picks.picks).map(Answer::Terms),
        (Kind::Order, Sent::Order(order)) => {
            let slugs = slugs(&order.order)?;
            let wanted = card.options.len();
            if slugs.len() == wanted {
                Ok(Answer::Order(slugs))
            } else {
                Err(format!("an order needs all {wanted} letters"))
            }
        }
        (Kind::Number, Sent::Number(number)) => {
            let wanted = card.unit.unwrap_or(Unit::Count);
            let unit = Unit::parse(&number.unit, wanted.dimension()).ok_or_else(|| {
                let allowed: Vec<&str> = wanted.siblings().into_iter().map(Unit::symbol).collect();
                format!("unit `{}` is not allowed here; allowed: {}", number.unit, allowed.join(", "))
            })?;
            Ok(Answer::Number(Measure::new(number.value, unit, 2)))
        }
        (Kind::Point, Sent::Place(place)) if on_panel(*place) => Ok(Answer::Place(*place)),
        (Kind::Point, Sent::Place(_)) => {
            let (width, height) = PANEL_MM;
            Err(format!(
                "a place lies from 0 to {width} mm from the left and from 0 to {height} mm from the top"
            ))
        }
        (Kind::Diagnose, Sent::Diagnosis(sent)) => workup::read(card, sent).map(Answer::Diagnosis),
        (Kind::Spray, Sent::Run(run)) => Ok(Answer::Run(run.clone())),
        (kind, _) => Err(format!("a {kind:?} card takes {}, or \"not-enough\"", form(kind))),
    }
}

/// Whether a place lies on a panel.
fn on_panel(place: Place) -> bool {
    (0.0..=PANEL_MM.0).contains(&place.x_mm) && (0.0..=PANEL_MM.1).contains(&place.y_mm)
}

const fn form(kind: Kind) -> &'static str {
    match kind {
        Kind::ChooseOne => "{\"pick\":\"A\"}",
        Kind::ChooseAll => "{\"picks\":[\"A\"]}",
        Kind::Order => "{\"order\":[\"A\",\"B\",\"C\"]}",
        Kind::Number => "{\"value\":1.5,\"unit\":\"h\"}",
        Kind::Point => "{\"x_mm\":40,\"y_mm\":25}",
        Kind::Diagnose => "{\"tests\":[\"A\"],\"fault\":\"A\",\"cause\":\"B\",\"remedy\":\"C\"}",
        Kind::Spray => "{\"passes\":[…]}, {\"hand\":[…]}",
    }
}

fn option<'a>(card: &'a Card, letter: &str) -> Result<&'a Answer, String> {
    let place = LETTERS.iter().position(|known| *known == letter);
    place.and_then(|place| card.options.get(place)).ok_or_else(|| {
        let allowed = LETTERS.get(..card.options.len()).unwrap_or_default();
        format!("`{letter}` is no option; allowed: {}", allowed.join(", "))
    })
}

/// What the model answers.
pub(crate) fn solution(voice: &Voice<'_>, card: &Card, solution: &Solution) -> Value {
    let letter = |slug: &str| {
        let place = card.options.iter().position(|option| *option == Answer::term(slug));
        place.and_then(|place| LETTERS.get(place).copied()).unwrap_or("")
    };
    let letters = |slugs: &[String]| slugs.iter().map(|slug| letter(slug)).collect::<Vec<_>>();
    let right = match &solution.right {
        Answer::NotEnough => json!("not-enough"),
        Answer::OnTheFault => json!("on-the-fault"),
        Answer::GoodRun => json!("good-run"),
        Answer::Run(run) => run.told(),
        Answer::Diagnosis(right) => workup::told(card, right),
        Answer::Terms(slugs) => json!({ "picks": letters(slugs) }),
        Answer::Order(slugs) => json!({ "order": letters(slugs) }),
        Answer::Number(measure) if card.kind == Kind::Number => {
            json!({ "value": measure.value, "unit": measure.unit })
        }
        one => {
            let place = card.options.iter().position(|option| option == one);
            json!({ "pick": place.and_then(|place| LETTERS.get(place).copied()) })
        }
    };
    json!({
        "answer": right,
        "text": voice.answer(&card.family, &solution.right),
        "missing": solution.missing,
        "rules": show::rules(voice, &solution.rules),
        "working": show::working(voice, &solution.working),
        "guess": solution.guess,
    })
}
