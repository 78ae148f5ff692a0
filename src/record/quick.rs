//! Reads an answer at once, where nothing about it is unusual: nearly all events are such answers, and read so they take a
//! fraction of the time. What is refused here is read again in full, which says what is wrong with it.

use super::{Certainty, Entry, FORMAT, Help, LocalDate, SheetName, Stamp, Within};
use crate::card::{Answer, Mark};
use serde::Deserialize;

/// The first format that tells the kind of its events.
const KIND_TOLD: u32 = 2;

/// An answer as it is stored, with no member more and none twice.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Stored {
    event: Kind,
    format: u32,
    sequence: u64,
    device: String,
    at: String,
    #[serde(default)]
    date: Option<LocalDate>,
    person: String,
    family: String,
    version: u32,
    seed: u32,
    sheet: StoredSheet,
    answer: Answer,
    certainty: Certainty,
    mark: Mark,
    #[serde(default)]
    guess: Option<f64>,
    #[serde(default)]
    active_seconds: Option<u32>,
    help: Help,
    within: Within,
}

#[derive(Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Kind {
    Answered,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredSheet {
    slug: String,
    hash: String,
}

/// The answer that a text tells; `None` where it is anything else.
pub(super) fn answered(text: &str) -> Option<Entry> {
    let one: Stored = serde_json::from_str(text).ok()?;
    let Kind::Answered = one.event;
    let known = (KIND_TOLD..=FORMAT).contains(&one.format);
    let stamp = Stamp {
        format: one.format,
        sequence: one.sequence,
        device: one.device,
        at: one.at,
        date: one.date,
        person: one.person,
    };
    known.then_some(Entry {
        stamp,
        family: one.family,
        version: one.version,
        seed: one.seed,
        sheet: SheetName { slug: one.sheet.slug, hash: one.sheet.hash },
        answer: one.answer,
        certainty: one.certainty,
        mark: one.mark,
        guess: one.guess,
        active_seconds: one.active_seconds,
        help: one.help,
        within: one.within,
    })
}
