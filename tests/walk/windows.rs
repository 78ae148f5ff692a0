//! Two windows on one walk: what one has stored the other does not overwrite, however quickly it decides.

use crate::kept::of;
use crate::steps::begin;
use crate::support::content;
use std::rc::Rc;
use stepboard::walk::Kept;
use stepboard::walk::window::{Became, Then, Window, Write};

/// What is stored, changed by compare and swap.
struct Stored(Option<Rc<Kept>>);

impl Stored {
    fn swap(&mut self, write: &Write) -> Became {
        if self.0 != write.from {
            return Became::Elsewhere(self.0.clone());
        }
        self.0 = Some(Rc::clone(&write.to));
        Became::Stored
    }
}

/// The walk as it is after one decision more.
fn at(changed: &str) -> Kept {
    Kept { changed: changed.to_owned(), ..of(begin(&content(), "plain-plate").saved()) }
}

fn opened() -> (Stored, Window) {
    let first = Some(Rc::new(at("first")));
    let mut window = Window::default();
    window.open(first.clone());
    (Stored(first), window)
}

#[test]
fn of_two_quick_decisions_in_a_window_that_is_behind_none_is_stored() {
    let (mut stored, mut behind) = opened();
    let mut ahead = Window::default();
    ahead.open(stored.0.clone());
    let write = ahead.write(at("ahead"));
    let became = stored.swap(&write);
    assert_eq!(ahead.became(&write, became), Then::Stored);
    // Both are on their way before it is known what became of the first.
    let (one, two) = (behind.write(at("one")), behind.write(at("two")));
    let (of_one, of_two) = (stored.swap(&one), stored.swap(&two));
    let theirs = Some(Rc::new(at("ahead")));
    assert_eq!(behind.became(&one, of_one), Then::Overtaken(theirs.clone()));
    assert_eq!(behind.became(&two, of_two), Then::Dropped);
    assert_eq!(stored.0, theirs);
    // From there on it goes on with what is stored.
    let on = behind.write(at("on"));
    assert_eq!(on.from, theirs);
    let became = stored.swap(&on);
    assert_eq!(behind.became(&on, became), Then::Stored);
}

#[test]
fn what_the_tablet_did_not_store_is_stored_with_the_next_decision() {
    let (mut stored, mut window) = opened();
    let (one, two) = (window.write(at("one")), window.write(at("two")));
    assert_eq!(window.became(&one, Became::NotStored), Then::Waits);
    let became = stored.swap(&two);
    let Then::Again(again) = window.became(&two, became) else { panic!("nobody else has gone on") };
    let became = stored.swap(&again);
    assert_eq!(window.became(&again, became), Then::Stored);
    assert_eq!(stored.0, Some(Rc::new(at("two"))));
}

#[test]
fn a_walk_that_was_left_out_does_not_come_back() {
    let (mut stored, mut window) = opened();
    stored.0 = None;
    let (one, two) = (window.write(at("one")), window.write(at("two")));
    let (of_one, of_two) = (stored.swap(&one), stored.swap(&two));
    assert_eq!(window.became(&one, of_one), Then::Overtaken(None));
    assert_eq!(window.became(&two, of_two), Then::Dropped);
    assert_eq!(stored.0, None);
}
