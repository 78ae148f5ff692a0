//! Diagnoses as they travel in JSON: tests, faults, causes and remedies under letters, each from its own list.

use crate::wire::LETTERS;
use serde::Deserialize;
use serde_json::{Value, json};
use stepboard::card::{Answer, Card, Diagnosis, Offered, Voice};

/// A diagnosis as people send it.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Sent {
    tests: Vec<String>,
    fault: String,
    cause: String,
    remedy: String,
}

/// What a card has at hand. Whoever reads JSON does the tests by reading what they show: `tests` of the answer tells
/// which were read.
pub(crate) fn offered(voice: &Voice<'_>, card: &Card, offered: &Offered) -> Value {
    let text = |slug: &String| voice.answer(&card.family, &Answer::term(slug));
    let list = |slugs: &[String]| -> Vec<Value> {
        let lettered = slugs.iter().zip(LETTERS);
        lettered.map(|(slug, letter)| json!({ "letter": letter, "text": text(slug) })).collect()
    };
    let tests = offered.tests.iter().zip(LETTERS).map(|(test, letter)| {
        let effort = voice.content.fact(test).and_then(|fact| fact.probe);
        json!({
            "letter": letter, "text": text(test), "shows": voice.shown_by(card, test),
            "minutes": effort.map(|effort| effort.minutes),
            "mend_minutes": effort.map(|effort| effort.mend_minutes),
        })
    });
    json!({
        "tests": tests.collect::<Vec<_>>(), "faults": list(&offered.faults),
        "causes": list(&offered.causes), "remedies": list(&offered.remedies),
    })
}

/// Turns a sent diagnosis into one that can be graded on this card.
pub(crate) fn read(card: &Card, sent: &Sent) -> Result<Diagnosis, String> {
    let offered = card.offered.as_ref().ok_or("this card offers nothing to name")?;
    if let Some(twice) = sent.tests.iter().enumerate().find(|(at, test)| sent.tests[..*at].contains(test)) {
        return Err(format!("`{}` is given twice", twice.1));
    }
    Ok(Diagnosis {
        tests: sent
            .tests
            .iter()
            .map(|letter| meant("tests", &offered.tests, letter))
            .collect::<Result<_, _>>()?,
        fault: meant("fault", &offered.faults, &sent.fault)?,
        cause: meant("cause", &offered.causes, &sent.cause)?,
        remedy: meant("remedy", &offered.remedies, &sent.remedy)?,
    })
}

fn meant(what: &str, offered: &[String], letter: &str) -> Result<String, String> {
    let place = LETTERS.iter().position(|known| *known == letter);
    place.and_then(|place| offered.get(place)).cloned().ok_or_else(|| {
        let allowed = LETTERS.get(..offered.len()).unwrap_or_default();
        format!("`{what}` is `{letter}`; allowed: {}", allowed.join(", "))
    })
}

/// A diagnosis by its letters.
pub(crate) fn told(card: &Card, right: &Diagnosis) -> Value {
    let Some(offered) = &card.offered else { return Value::Null };
    let letter = |list: &[String], slug: &String| {
        list.iter().position(|one| one == slug).and_then(|place| LETTERS.get(place).copied())
    };
    json!({
        "tests": right.tests.iter().map(|test| letter(&offered.tests, test)).collect::<Vec<_>>(),
        "fault": letter(&offered.faults, &right.fault),
        "cause": letter(&offered.causes, &right.cause),
        "remedy": letter(&offered.remedies, &right.remedy),
    })
}
