//! Observations that are being made: they stay when the screen is left or the page is loaded again.

use crate::record::Begun;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Watching(pub(in crate::app) Rc<Vec<Begun>>);

/// What happens to them.
#[derive(Debug)]
pub(in crate::app) enum WatchingChange {
    /// One is begun, or goes on: it takes the place of the one of the same work by the same assessor.
    Keep(Begun),
    /// One is written down or given up.
    LetGo(Begun),
}

impl Reducible for Watching {
    type Action = WatchingChange;

    fn reduce(self: Rc<Self>, change: WatchingChange) -> Rc<Self> {
        let (WatchingChange::Keep(one) | WatchingChange::LetGo(one)) = &change;
        let others = self.0.iter().filter(|other| !other.is_of(&one.by, &one.subject, &one.competency));
        let mut all: Vec<Begun> = others.cloned().collect();
        if let WatchingChange::Keep(one) = change {
            all.push(one);
        }
        Rc::new(Self(Rc::new(all)))
    }
}

/// The observations as the screens see them.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct WatchingContext {
    pub(in crate::app) begun: Rc<Vec<Begun>>,
    pub(in crate::app) change: Callback<WatchingChange>,
}
