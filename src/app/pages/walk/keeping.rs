//! One walk stored anew after each decision, by the rules of [`Window`].

use crate::app::hooks::use_walks;
use crate::app::state::Onward;
use crate::walk::Kept;
use crate::walk::window::{Became, Then, Window, Write};
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

/// Stores the walk anew after each decision; the second is what went wrong with the last one.
#[hook]
pub(super) fn use_keeping(kept: Option<Rc<Kept>>) -> (Callback<Kept>, Option<Trouble>) {
    let keep = use_walks().keep;
    let trouble = use_state(|| None::<Trouble>);
    let window = use_mut_ref(Window::default);
    window.borrow_mut().open(kept);
    let store = use_callback(keep, {
        let trouble = trouble.setter();
        move |to: Kept, keep| {
            let write = window.borrow_mut().write(to);
            Keeper { keep: keep.clone(), window: Rc::clone(&window), trouble: trouble.clone() }.store(write);
        }
    });
    (store, (*trouble).clone())
}

/// Carries writes to the store.
#[derive(Clone)]
struct Keeper {
    keep: Callback<Onward>,
    window: Rc<RefCell<Window>>,
    trouble: UseStateSetter<Option<Trouble>>,
}

impl Keeper {
    fn store(self, write: Write) {
        let keep = self.keep.clone();
        let (from, to) = (write.from.clone(), Rc::clone(&write.to));
        let done = Callback::from(move |became: Became| self.done(&write, became));
        keep.emit(Onward { from, to, done });
    }

    fn done(&self, write: &Write, became: Became) {
        let then = self.window.borrow_mut().became(write, became);
        match then {
            Then::Stored => self.trouble.set(None),
            Then::Waits => self.trouble.set(Some(Trouble::Waits(Rc::clone(&write.to)))),
            Then::Again(write) => self.clone().store(write),
            Then::Overtaken(stored) => self.trouble.set(Some(Trouble::Overtaken(stored))),
            Then::Dropped => {}
        }
    }
}
