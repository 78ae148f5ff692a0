//! Cards of many answers dealt again, each answer to a card once: what everybody is asked alike, many answer alike.

use super::{Dealt, dealt};
use crate::card::{Answer, Mark};
use crate::content::Content;
use crate::record::{Entry, SheetName};
use std::collections::BTreeMap;

/// A card by name: family, version, seed and sheet.
type Name = (String, u32, u32, SheetName);

/// What cards told so far.
#[derive(Debug)]
pub struct Redealt<'a> {
    content: &'a Content,
    known: BTreeMap<Name, Vec<(Answer, Mark, Option<Dealt>)>>,
}

impl<'a> Redealt<'a> {
    /// Of no card yet.
    #[must_use]
    pub const fn new(content: &'a Content) -> Self {
        Self { content, known: BTreeMap::new() }
    }

    /// What the card of an answer tells; `None` where it cannot be had. See [`dealt`].
    pub fn of(&mut self, entry: &Entry) -> Option<&Dealt> {
        let name = (entry.family.clone(), entry.version, entry.seed, entry.sheet.clone());
        let answers = self.known.entry(name).or_default();
        // Another edition of the rules may have given the same answer another mark.
        let same = |(answer, mark, _): &(Answer, Mark, _)| *answer == entry.answer && *mark == entry.mark;
        let place = answers.iter().position(same).unwrap_or_else(|| {
            answers.push((entry.answer.clone(), entry.mark, dealt(self.content, entry)));
            answers.len() - 1
        });
        answers.get(place)?.2.as_ref()
    }
}
