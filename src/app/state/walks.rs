//! The walks of this tablet as the screens see them.

use super::Keep;
use crate::walk::Kept;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct WalksContext {
    /// Whether the shelf was read.
    pub(in crate::app) loaded: bool,
    /// All walks, the one that was worked on last first.
    pub(in crate::app) all: Rc<Vec<Rc<Kept>>>,
    /// Keeps a walk, in the place of what was kept of it.
    pub(in crate::app) keep: Callback<Keep<Kept>>,
    /// Lets go of a walk, by its id.
    pub(in crate::app) let_go: Callback<Keep<String>>,
}

impl WalksContext {
    pub(in crate::app) fn find(&self, id: &str) -> Option<&Rc<Kept>> {
        self.all.iter().find(|one| one.id == id)
    }

    /// Those of somebody, handed over or under way.
    pub(in crate::app) fn of(&self, person: &str, over: bool) -> Vec<Rc<Kept>> {
        let theirs = |one: &&Rc<Kept>| one.person == person && one.is_over() == over;
        self.all.iter().filter(theirs).cloned().collect()
    }
}
