//! The cards on the desk, one of practice and one of a check: they stay there when the screen is left or the page is loaded
//! again.

use crate::device::Spot;
use crate::record::Draft;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Desk {
    pub(in crate::app) practice: Option<Rc<Draft>>,
    pub(in crate::app) check: Option<Rc<Draft>>,
}

/// What an event leaves on the desk.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) enum OnDesk {
    /// What lay there.
    Same,
    /// The card of practice that was answered.
    Handed(Draft),
    /// No card of a check: the next one is dealt.
    NextOfCheck,
}

impl OnDesk {
    /// The card that it changes, and into what.
    pub(in crate::app) const fn after(&self) -> Option<(Spot, Option<&Draft>)> {
        match self {
            Self::Same => None,
            Self::Handed(draft) => Some((Spot::Practice, Some(draft))),
            Self::NextOfCheck => Some((Spot::Check, None)),
        }
    }
}

/// What happens on the desk.
#[derive(Debug)]
pub(in crate::app) enum DeskChange {
    /// Another card, the same with more of its answer, or none.
    Put(Spot, Option<Draft>),
    /// Nothing of that person.
    Forget(String),
    /// The entry of the card got another number.
    Renumbered {
        /// Its number so far.
        from: u64,
        /// Its number now.
        to: u64,
    },
}

impl Reducible for Desk {
    type Action = DeskChange;

    fn reduce(self: Rc<Self>, change: DeskChange) -> Rc<Self> {
        match (change, &self.practice) {
            (DeskChange::Put(Spot::Practice, draft), _) => {
                Rc::new(Self { practice: draft.map(Rc::new), ..(*self).clone() })
            }
            (DeskChange::Forget(person), _) => {
                let others = |draft: &Option<Rc<Draft>>| draft.clone().filter(|one| one.person != person);
                Rc::new(Self { practice: others(&self.practice), check: others(&self.check) })
            }
            (DeskChange::Put(Spot::Check, draft), _) => {
                Rc::new(Self { check: draft.map(Rc::new), ..(*self).clone() })
            }
            (DeskChange::Renumbered { from, to }, Some(draft)) if draft.handed == Some(from) => {
                let draft = Draft { handed: Some(to), ..(**draft).clone() };
                Rc::new(Self { practice: Some(Rc::new(draft)), ..(*self).clone() })
            }
            (DeskChange::Renumbered { .. }, _) => self,
        }
    }
}

/// The desk as the screens see it.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct DeskContext {
    /// The card being practised.
    pub(in crate::app) draft: Option<Rc<Draft>>,
    /// The card of a check.
    pub(in crate::app) check: Option<Rc<Draft>>,
    /// Puts a card of practice on the desk, or the same card with more of its answer.
    pub(in crate::app) put: Callback<Option<Draft>>,
    /// The same for a card of a check.
    pub(in crate::app) put_check: Callback<Option<Draft>>,
}
