//! The walks of this tablet as the screens see them.

use super::Keep;
use crate::walk::Kept;
use crate::walk::window::Became;
use std::rc::Rc;
use yew::prelude::*;

/// A walk to be stored in the place of the one that it was made from.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Onward {
    /// What it was made from; none for one that is begun.
    pub(in crate::app) from: Option<Rc<Kept>>,
    /// The walk.
    pub(in crate::app) to: Rc<Kept>,
    /// Told what became of it.
    pub(in crate::app) done: Callback<Became>,
}

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct WalksContext {
    /// Whether the shelf was read.
    pub(in crate::app) loaded: bool,
    /// All walks, the one that was worked on last first.
    pub(in crate::app) all: Rc<Vec<Rc<Kept>>>,
    /// Stored ones that this program cannot read; they stay.
    pub(in crate::app) unread: usize,
    /// Keeps a walk in the place of what it was made from.
    pub(in crate::app) keep: Callback<Onward>,
    /// Reads anew what is stored, as another window may have gone on, and tells when it has been read.
    pub(in crate::app) reread: Callback<Callback<()>>,
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
