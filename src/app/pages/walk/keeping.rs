//! One walk kept while it is worked on in a window: each write names what it builds on, so that no window overwrites what
//! another one has stored.

use crate::app::hooks::use_walks;
use crate::app::state::{Became, Onward};
use crate::walk::Kept;
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// What became of the last write, where it is not simply stored.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Trouble {
    /// It waits to be stored again.
    Waits(Rc<Kept>),
    /// Another window had gone on with the walk, or had left it out: that stands, and what was done here was not carried out.
    Overtaken(Option<Rc<Kept>>),
}

/// What a window knows of the store.
#[derive(Debug, Default)]
struct Known {
    /// What is stored for sure.
    sure: Option<Rc<Kept>>,
    /// What was handed in last, stored or not yet.
    latest: Option<Rc<Kept>>,
}

/// Stores the walk anew after each decision; the second is what went wrong with the last one.
#[hook]
pub(super) fn use_keeping(kept: Option<Rc<Kept>>) -> (Callback<Kept>, Option<Trouble>) {
    let keep = use_walks().keep;
    let trouble = use_state(|| None::<Trouble>);
    let known = use_mut_ref(Known::default);
    if known.borrow().sure.is_none() {
        let first = kept;
        *known.borrow_mut() = Known { sure: first.clone(), latest: first };
    }
    let store = use_callback(keep, {
        let trouble = trouble.setter();
        move |to: Kept, keep| {
            let to = Rc::new(to);
            let from = known.borrow_mut().latest.replace(Rc::clone(&to));
            Write { keep: keep.clone(), known: Rc::clone(&known), trouble: trouble.clone(), to }.onto(from);
        }
    });
    (store, (*trouble).clone())
}

/// A write under way.
#[derive(Clone)]
struct Write {
    keep: Callback<Onward>,
    known: Rc<RefCell<Known>>,
    trouble: UseStateSetter<Option<Trouble>>,
    to: Rc<Kept>,
}

impl Write {
    /// Stores the walk in the place of that one.
    fn onto(self, from: Option<Rc<Kept>>) {
        let (keep, to) = (self.keep.clone(), Rc::clone(&self.to));
        let done = Callback::from(move |became: Became| self.done(became));
        keep.emit(Onward { from, to, done });
    }

    fn done(&self, became: Became) {
        match became {
            Became::Stored => {
                self.known.borrow_mut().sure = Some(Rc::clone(&self.to));
                self.trouble.set(None);
            }
            Became::NotStored => self.trouble.set(Some(Trouble::Waits(Rc::clone(&self.to)))),
            // A write of this window before it was not stored: nobody else has gone on.
            Became::Elsewhere(stored) if stored.is_some() && stored == self.known.borrow().sure => {
                self.clone().onto(stored);
            }
            Became::Elsewhere(stored) => {
                *self.known.borrow_mut() = Known { sure: stored.clone(), latest: stored.clone() };
                self.trouble.set(Some(Trouble::Overtaken(stored)));
            }
        }
    }
}
