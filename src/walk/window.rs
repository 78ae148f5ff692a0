//! A walk as a window keeps it while it is worked on: each write names what it builds on, so that no window overwrites what
//! another one has stored.

use super::kept::Kept;
use std::rc::Rc;

/// A walk to be stored in the place of the one that it was made from.
#[derive(Debug, Clone, PartialEq)]
pub struct Write {
    /// What it was made from; none for one that is begun.
    pub from: Option<Rc<Kept>>,
    /// The walk.
    pub to: Rc<Kept>,
    /// The round of the window in which it was made.
    round: u32,
}

/// What became of a write.
#[derive(Debug, Clone, PartialEq)]
pub enum Became {
    /// It is stored.
    Stored,
    /// The tablet did not store it.
    NotStored,
    /// Another window has stored something else of it, or has left it out; that stays.
    Elsewhere(Option<Rc<Kept>>),
}

/// What follows from what became of a write.
#[derive(Debug, Clone, PartialEq)]
pub enum Then {
    /// It is stored.
    Stored,
    /// It waits to be stored again.
    Waits,
    /// It is written once more, onto what is stored.
    Again(Write),
    /// Another window had gone on with the walk, or had left it out: that stands, and what was done here was not carried out.
    Overtaken(Option<Rc<Kept>>),
    /// Nothing: it was built on a write that was overtaken.
    Dropped,
}

/// What a window knows of the store.
#[derive(Debug, Default)]
pub struct Window {
    /// What is stored for sure.
    sure: Option<Rc<Kept>>,
    /// What was handed in last, stored or not yet.
    latest: Option<Rc<Kept>>,
    /// How often another window has gone on with the walk.
    round: u32,
}

impl Window {
    /// Takes what is stored, where the window knows of nothing yet.
    pub fn open(&mut self, stored: Option<Rc<Kept>>) {
        if self.sure.is_none() {
            self.sure.clone_from(&stored);
            self.latest = stored;
        }
    }

    /// A walk handed in: it was made from the one that was handed in before it.
    pub fn write(&mut self, to: Kept) -> Write {
        let to = Rc::new(to);
        let from = self.latest.replace(Rc::clone(&to));
        Write { from, to, round: self.round }
    }

    /// What follows from what became of a write.
    pub fn became(&mut self, write: &Write, became: Became) -> Then {
        if write.round != self.round {
            return Then::Dropped;
        }
        match became {
            Became::Stored => {
                self.sure = Some(Rc::clone(&write.to));
                Then::Stored
            }
            Became::NotStored => Then::Waits,
            // A write of this window before it was not stored: nobody else has gone on.
            Became::Elsewhere(stored) if stored.is_some() && stored == self.sure => {
                Then::Again(Write { from: stored, ..write.clone() })
            }
            Became::Elsewhere(stored) => {
                self.sure.clone_from(&stored);
                self.latest.clone_from(&stored);
                self.round += 1;
                Then::Overtaken(stored)
            }
        }
    }
}
