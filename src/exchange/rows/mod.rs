//! One row an answer, and one for each family that a decision of a walk exercises, for programs that reckon over many shops: flat, with what a question about people, cards and sets needs.
//!
//! A row depends on its device's own events up to it, on the content and on the program's edition alone, so that exporting
//! again gives the same row. Which answer of a person is the first is no column: it depends on all the files that are read
//! together, and `sql/first.sql` finds it.

mod columns;

pub use columns::{COLUMNS, Column};

use crate::card::Mark;
use crate::content::{Content, FamilyInfo};
use crate::learn::evidence::LUCK_MOST;
use crate::learn::slip;
use crate::record::{Certainty, Decided, Entry, Event, Exercised, Help, Moment, Voids, Walked, Way, Within};
use crate::rules::term::Term;
use crate::terms;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

terms! {
    /// What an answer was part of, as rows tell it.
    RowKind {
        /// Practice.
        Practice = "practice",
        /// A check.
        Check = "check",
        /// A scenario set that is evidence for nothing.
        Set = "set",
        /// A worksheet, typed in afterwards.
        Paper = "paper",
        /// A job worked from beginning to end.
        Walk = "walk",
    }
}

/// One answer. What each field means is told by [`COLUMNS`], in the same order.
#[allow(missing_docs, reason = "told once, in COLUMNS, from which the documentation is made")]
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Row {
    pub device: String,
    pub sequence: u64,
    pub answered_at: String,
    pub moment: Option<i64>,
    pub day: Option<String>,
    pub person: String,
    pub family: String,
    pub version: u32,
    pub seed: u32,
    pub sheet: String,
    pub sheet_hash: String,
    pub kind: RowKind,
    pub set_name: Option<String>,
    pub attempt: Option<String>,
    pub guided: Option<u8>,
    pub mark: Mark,
    pub is_right: u8,
    pub certainty: String,
    pub sure_and_wrong: u8,
    pub guess: Option<f64>,
    pub seconds: Option<u32>,
    pub help: Help,
    pub slip: Option<String>,
    pub competencies: String,
    pub voided: u8,
    pub edition: String,
}

impl Row {
    /// Whether both can stand under one number: they tell of the same answer, or of two families of one decision.
    #[must_use]
    pub fn goes_with(&self, other: &Self) -> bool {
        let both_walked = self.kind == RowKind::Walk && other.kind == RowKind::Walk;
        let of_one = both_walked && self.attempt == other.attempt && self.family != other.family;
        of_one || self.is_of_same_answer(other)
    }

    /// Whether both tell of the same answer; the order, slips, competencies, what was voided since and
    /// the edition are what a program makes of it.
    #[must_use]
    pub fn is_of_same_answer(&self, other: &Self) -> bool {
        let told = |row: &Self| Self {
            slip: row.slip.clone().filter(|_| row.kind == RowKind::Walk),
            moment: None,
            competencies: String::new(),
            voided: 0,
            edition: String::new(),
            ..row.clone()
        };
        told(self) == told(other)
    }

    /// The same answer, marked by what is void.
    #[must_use]
    pub fn marked(self, voids: &Voids<'_>) -> Self {
        let by_set = self.set_name.as_deref().and_then(|set| voids.of_set(set));
        let by_rule =
            || voids.of_all(self.slip.as_deref().filter(|_| self.kind == RowKind::Walk)?.split(BETWEEN));
        let void = by_set.or_else(|| voids.of_cards(&self.family, self.version)).or_else(by_rule);
        Self { voided: u8::from(void.is_some()), ..self }
    }
}

/// Stands between the slugs of the competencies, and between the rules that a decision broke; neither holds it.
pub const BETWEEN: &str = " ";

/// The answers among events, those of several tablets as they were merged, each as a row; `edition` is the program's.
#[must_use]
pub fn rows(content: &Content, events: &[Event], edition: &str) -> Vec<Row> {
    // The latest moment so far of a device: a clock set back moves nothing before what came earlier, as in `merge`.
    let mut latest: BTreeMap<&str, Option<Moment>> = BTreeMap::new();
    let voids = Voids::of(events);
    let mut rows = Vec::new();
    for event in events {
        let stamp = event.stamp();
        let at = latest.entry(stamp.device.as_str()).or_default();
        *at = (*at).max(Moment::of(&stamp.at));
        if let Some(entry) = event.answer() {
            rows.push(row(content, entry, *at, edition).marked(&voids));
        }
        if let Some((walked, decided)) = event.walked().and_then(|one| Some((one, one.decided()?))) {
            let of = decided.exercised.iter().map(|one| walked_row(content, walked, decided, one));
            let timed =
                of.map(|row| Row { moment: at.map(Moment::seconds), edition: edition.to_owned(), ..row });
            rows.extend(timed.map(|row| row.marked(&voids)));
        }
    }
    rows
}

fn row(content: &Content, entry: &Entry, moment: Option<Moment>, edition: &str) -> Row {
    // A table knows no name from an empty one.
    let name = |name: &str| (!name.is_empty()).then(|| name.to_owned());
    let (kind, set_name, attempt, guided) = match &entry.within {
        Within::Practice => (RowKind::Practice, None, None, None),
        Within::Check { attempt, set } => (RowKind::Check, name(set), name(attempt), None),
        Within::Set { attempt, set } => (RowKind::Set, name(set), name(attempt), None),
        Within::Paper { set, code } => (RowKind::Paper, name(set), name(code), None),
        Within::Walk { walk, guided } => (RowKind::Walk, None, name(walk), Some(u8::from(*guided))),
    };
    let competencies = content.family(&entry.family).map(|family| family.competencies.join(BETWEEN));
    Row {
        device: entry.stamp.device.clone(),
        sequence: entry.stamp.sequence,
        answered_at: entry.stamp.at.clone(),
        moment: moment.map(Moment::seconds),
        day: entry.stamp.day().map(|day| day.to_string()),
        person: entry.stamp.person.clone(),
        family: entry.family.clone(),
        version: entry.version,
        seed: entry.seed,
        sheet: entry.sheet.slug.clone(),
        sheet_hash: entry.sheet.hash.clone(),
        kind,
        set_name,
        attempt,
        guided,
        mark: entry.mark,
        is_right: u8::from(entry.mark == Mark::Right),
        certainty: entry.certainty.slug().to_owned(),
        sure_and_wrong: u8::from(entry.sure_and_wrong()),
        guess: entry.guess,
        seconds: entry.active_seconds,
        help: entry.help,
        slip: slip(content, entry).map(str::to_owned),
        competencies: competencies.unwrap_or_default(),
        voided: 0,
        edition: edition.to_owned(),
    }
}

/// What a decision says of a family, but for what depends on other events.
fn walked_row(content: &Content, walked: &Walked, decided: &Decided, one: &Exercised) -> Row {
    let right = one.is_right();
    let guided = decided.way == Way::Guided;
    let certainty = if guided { Certainty::AskFirst } else { Certainty::OnTheJob };
    let competencies = content.family(&one.family).map(|family| family.competencies.join(BETWEEN));
    Row {
        device: walked.stamp.device.clone(),
        sequence: walked.stamp.sequence,
        answered_at: walked.stamp.at.clone(),
        moment: None,
        day: walked.stamp.day().map(|day| day.to_string()),
        person: walked.stamp.person.clone(),
        family: one.family.clone(),
        version: one.version,
        seed: 0,
        sheet: decided.sheet.slug.clone(),
        sheet_hash: decided.sheet.hash.clone(),
        kind: RowKind::Walk,
        set_name: None,
        attempt: Some(walked.walk.clone()),
        guided: Some(u8::from(guided)),
        mark: if right { Mark::Right } else { Mark::Wrong },
        is_right: u8::from(right),
        certainty: certainty.slug().to_owned(),
        sure_and_wrong: u8::from(!right && !guided),
        guess: Some(LUCK_MOST),
        seconds: None,
        help: if decided.again { Help::Hint } else { Help::None },
        slip: (!right).then(|| one.broke.join(BETWEEN)),
        competencies: competencies.unwrap_or_default(),
        voided: 0,
        edition: String::new(),
    }
}

/// Which competencies a family gives evidence for, a row each.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FamilyCompetency {
    /// The card family.
    pub family: String,
    /// Slug of the competency.
    pub competency: String,
}

/// All pairs of family and competency, in the order of the content.
#[must_use]
pub fn family_competencies(content: &Content) -> Vec<FamilyCompetency> {
    let of = |family: &FamilyInfo| {
        let id = family.id.clone();
        let pair = move |slug: &String| FamilyCompetency { family: id.clone(), competency: slug.clone() };
        family.competencies.iter().map(pair).collect::<Vec<_>>()
    };
    content.families.iter().flat_map(of).collect()
}
