//! What a request says of work that was watched, taken from the journal.

use super::{Criterion, Demonstration, Told};
use crate::content::{Args, Competency, Texts};
use crate::learn::observation::{self, Shown};
use crate::record::{Filed, Judged};

/// The part of a [`super::Request`] that the journal tells.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Watched {
    /// Every criterion of the competency; met where it was at a demonstration that counts.
    pub criteria: Vec<Criterion>,
    /// The demonstrations that count.
    pub observed: Vec<Demonstration>,
    /// Demonstrations on which assessors disagree.
    pub unsettled: u32,
    /// Papers in force.
    pub on_file: Vec<Filed>,
}

impl Watched {
    /// What was shown, in the words of a language.
    #[must_use]
    pub fn of(shown: &Shown<'_>, competency: &Competency, texts: &Texts) -> Self {
        let criterion = |id: &String| Criterion {
            id: id.clone(),
            text: texts.get(&format!("criterion.{id}")).to_owned(),
            met: !shown.to_see.iter().any(|one| one.id == *id),
        };
        Self {
            criteria: competency.criteria.iter().map(|one| criterion(&one.id)).collect(),
            observed: shown.counting().map(|one| told(one, competency, texts)).collect(),
            unsettled: u32::try_from(shown.unsettled().count()).unwrap_or(u32::MAX),
            on_file: shown
                .papers
                .iter()
                .filter(|paper| paper.in_force)
                .map(|paper| paper.filing.filed)
                .collect(),
        }
    }
}

fn told(one: &observation::Demonstration<'_>, competency: &Competency, texts: &Texts) -> Demonstration {
    let last = || one.said.iter().map(|said| said.last);
    let met = competency.criteria.iter().filter(|it| one.judged(&it.id) == Judged::Met).count();
    let args = Args::from([
        ("met".to_owned(), met.to_string()),
        ("all".to_owned(), competency.criteria.len().to_string()),
        ("paper".to_owned(), usize::from(one.said.iter().any(|said| said.first.paper)).to_string()),
    ]);
    let by = |name: &str, number: &str, note: &str| {
        let args = [("name", name), ("number", number), ("note", note)];
        let args = args.map(|(key, value)| (key.to_owned(), value.to_owned())).into();
        texts.fill(if note.is_empty() { "observation.by" } else { "observation.by-with-note" }, &args)
    };
    let mut sentences = vec![texts.fill("observation.seen", &args)];
    sentences.extend(last().map(|said| by(&said.by.name, &said.by.number, &said.note)));
    let name = one.first().map(|first| first.work.clone()).unwrap_or_default();
    Demonstration { on: one.on, told: Told { name, narrative: sentences.join(" ") } }
}
