//! The card on the desk: it stays there when the screen is left or the page is loaded again.

use crate::record::Draft;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Desk(pub(in crate::app) Option<Rc<Draft>>);

/// What happens on the desk.
#[derive(Debug)]
pub(in crate::app) enum DeskChange {
    /// Another card, the same with more of its answer, or none.
    Put(Option<Draft>),
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
        match (change, &self.0) {
            (DeskChange::Put(draft), _) => Rc::new(Self(draft.map(Rc::new))),
            (DeskChange::Renumbered { from, to }, Some(draft)) if draft.handed == Some(from) => {
                Rc::new(Self(Some(Rc::new(Draft { handed: Some(to), ..(**draft).clone() }))))
            }
            (DeskChange::Renumbered { .. }, _) => self,
        }
    }
}

/// The desk as the screens see it.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct DeskContext {
    /// The card being answered.
    pub(in crate::app) draft: Option<Rc<Draft>>,
    /// Puts a card on the desk, or the same card with more of its answer.
    pub(in crate::app) put: Callback<Option<Draft>>,
}
