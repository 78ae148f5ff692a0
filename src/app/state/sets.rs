//! The scenario sets of this tablet as the screens see them: those that ship, made here and taken.

use super::Keep;
use crate::content::Content;
use crate::exchange::set::{OWN_CARD, OwnCard, Set, Validity, Withdrawal};
use crate::record::{Entry, LocalDate};
use crate::terms;
use std::rc::Rc;
use yew::prelude::*;

terms! {
    /// Where a set came from. Text: `app.sets.origin.<slug>`.
    Origin {
        /// It was made on this tablet.
        Made = "made",
        /// It was made elsewhere, and taken.
        Taken = "taken",
        /// It ships.
        Ready = "ready",
    }
}

/// Begins the name of the file of a set that was made here.
const MADE: &str = "made-";

impl Origin {
    /// What the file of a set is called on the shelf, by the name of its content.
    pub(in crate::app) fn file(self, name: String) -> String {
        if self == Self::Made { format!("{MADE}{name}") } else { name }
    }

    /// Where the set of a file of the shelf came from, and the name of its content.
    pub(in crate::app) fn of_file(file: &str) -> (Self, &str) {
        file.strip_prefix(MADE).map_or((Self::Taken, file), |name| (Self::Made, name))
    }
}

/// A set of this tablet.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct KeptSet {
    pub(in crate::app) id: String,
    pub(in crate::app) set: Rc<Set>,
    pub(in crate::app) origin: Origin,
    /// Its withdrawal by who made it.
    pub(in crate::app) withdrawn: Option<Rc<Withdrawal>>,
}

impl KeptSet {
    pub(in crate::app) fn validity(&self, today: Option<LocalDate>) -> Validity {
        Validity::of(&self.set, self.withdrawn.is_some(), today)
    }

    /// The sets that ship.
    pub(in crate::app) fn ready(content: &Content) -> Vec<Self> {
        let ready = |ships: &crate::content::ScenarioSet| {
            let set = Rc::new(Set::ready(content, ships)?);
            Some(Self { id: ships.slug.clone(), set, origin: Origin::Ready, withdrawn: None })
        };
        content.sets.iter().filter_map(ready).collect()
    }
}

/// A file of the shelf of sets.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) enum SetFile {
    /// A set, and whether it was made here. Its own sheet is kept with the shop's sheets.
    Set(Rc<Set>, Origin),
    Withdrawal(Rc<Withdrawal>),
}

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct SetsContext {
    /// Whether the shelf was read; until then only those that ship are here.
    pub(in crate::app) loaded: bool,
    /// All sets, those made and taken last first, those that ship at the end.
    pub(in crate::app) all: Rc<Vec<KeptSet>>,
    /// Stored files that this program cannot use; they stay.
    pub(in crate::app) unread: usize,
    /// The set that is being built.
    pub(in crate::app) draft: Option<Rc<Set>>,
    /// Keeps a set or a withdrawal.
    pub(in crate::app) keep: Callback<Keep<SetFile>>,
    /// Keeps the set that is being built.
    pub(in crate::app) edit: Callback<Option<Set>>,
}

impl SetsContext {
    /// The set of that id.
    pub(in crate::app) fn find(&self, id: &str) -> Option<&KeptSet> {
        self.all.iter().find(|one| one.id == id)
    }

    /// The card of the shop's own that an answer is to, where its set is here.
    pub(in crate::app) fn own_card(&self, entry: &Entry) -> Option<&OwnCard> {
        let set = entry.within.set().filter(|_| entry.family.starts_with(OWN_CARD))?;
        let kept = self.find(set)?;
        kept.set.own_cards.iter().find(|card| card.id() == entry.family)
    }

    /// The card of the shop's own with that id, of whichever set that is here.
    pub(in crate::app) fn own_card_of(&self, id: &str) -> Option<&OwnCard> {
        self.all.iter().flat_map(|kept| &kept.set.own_cards).find(|card| card.id() == id)
    }
}
