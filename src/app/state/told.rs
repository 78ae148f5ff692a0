//! The journal as it may be told to the person who works: without the answers of a check that wants more cards today.

use crate::content::{Competency, Content};
use crate::learn::Past;
use crate::learn::check::{Now, Sealed};
use crate::learn::evidence::{Evidence, of_all};
use crate::learn::memory::{Answered, Day, Remembered};
use crate::record::{Decided, Entry, Event, Journal, Walked};
use std::collections::BTreeMap;
use std::rc::Rc;

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Told {
    pub(in crate::app) journal: Rc<Journal>,
    pub(in crate::app) person: String,
    pub(in crate::app) now: Now,
    /// The days on which what is signed for competencies expires.
    pub(in crate::app) ends: BTreeMap<String, Day>,
    sealed: Sealed,
}

impl Told {
    pub(in crate::app) fn new(
        content: &Content,
        journal: Rc<Journal>,
        person: String,
        now: Now,
        ends: BTreeMap<String, Day>,
    ) -> Self {
        let sealed = Sealed::of(content, journal.events(), now);
        Self { journal, person, now, ends, sealed }
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

    pub(in crate::app) fn past(&self) -> Vec<Past> {
        self.entries().map(Past::of).collect()
    }

    /// Decisions of walks are no part of it: nothing was asked, so that none tells whether it was recalled.
    pub(in crate::app) fn remembered(&self) -> Remembered {
        let mut past = Remembered::default();
        self.entries().filter_map(Answered::of).for_each(|answer| past.take(&answer));
        past
    }
}
