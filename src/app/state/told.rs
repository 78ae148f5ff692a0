//! The journal as it may be told to the person who works: without the answers of a check that wants more cards today.

use super::Shared;
use crate::content::{Competency, Content};
use crate::learn::check::{Now, Sealed};
use crate::learn::evidence::{Evidence, of_all};
use crate::learn::memory::Day;
use crate::learn::{Followed, Known};
use crate::record::{Decided, Entry, Event, Journal, Walked};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Worked out anew where anything in it is another: two of them are the same where they are one.
#[derive(Debug, Clone)]
pub(in crate::app) struct Told {
    pub(in crate::app) journal: Shared<Journal>,
    pub(in crate::app) person: String,
    pub(in crate::app) now: Now,
    /// The days on which what is signed for competencies expires.
    pub(in crate::app) ends: BTreeMap<String, Day>,
    /// What this person's answers leave, of those that may be told.
    pub(in crate::app) known: Arc<Known>,
    /// This person's answers, those that must not be told yet among them.
    pub(in crate::app) answers: u32,
    sealed: Sealed,
}

impl PartialEq for Told {
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self, other)
    }
}

impl Told {
    /// `followed` goes on to what the journal has by now.
    pub(in crate::app) fn new(
        content: &Content,
        journal: Shared<Journal>,
        person: String,
        (now, ends): (Now, BTreeMap<String, Day>),
        followed: &mut Followed,
    ) -> Self {
        let sealed = Sealed::of(content, journal.events(), now);
        *followed = std::mem::take(followed).on(journal.events(), &person, &sealed);
        let (known, answers) = (Arc::clone(followed.known()), followed.answers());
        Self { journal, person, now, ends, known, answers, sealed }
    }

    /// The events that may be told, whoever they are about, oldest first.
    pub(in crate::app) fn events(&self) -> impl DoubleEndedIterator<Item = &Event> {
        self.sealed.told(self.journal.events())
    }

    /// This person's answers that may be told, oldest first.
    pub(in crate::app) fn entries(&self) -> impl DoubleEndedIterator<Item = &Entry> {
        self.sealed.told_of(self.journal.events(), &self.person)
    }

    /// This person's decisions on walks that may be told, oldest first.
    pub(in crate::app) fn decisions(&self) -> impl DoubleEndedIterator<Item = (&Walked, &Decided)> {
        let theirs = self.events().filter_map(Event::walked).filter(|one| one.stamp.person == self.person);
        theirs.filter_map(|walked| Some((walked, walked.decided()?)))
    }

    /// What happened on a walk, by its number.
    pub(in crate::app) fn walked(&self, sequence: u64) -> Option<&Walked> {
        let mut walked = self.journal.events().iter().filter_map(Event::walked);
        walked.find(|one| one.stamp.sequence == sequence)
    }

    /// Whether what was decided on a walk must not be told yet.
    pub(in crate::app) fn hides_walked(&self, walked: &Walked) -> bool {
        self.sealed.hides_walked(walked)
    }

    /// Whether an answer must not be told yet.
    pub(in crate::app) fn hides(&self, entry: &Entry) -> bool {
        self.sealed.hides(entry)
    }

    /// What may be told of the evidence for each competency, in the order of content.
    pub(in crate::app) fn evidence(&self, content: &Content) -> Vec<(Competency, Evidence)> {
        let events: Vec<&Event> = self.events().collect();
        let found = of_all(content, &events, &self.person, self.journal.unreadable());
        found.into_iter().map(|(competency, evidence)| (competency.clone(), evidence)).collect()
    }
}
