//! The bench on which panels lie: the lamp over it, what is looked at closer or in words, and what the panels tell of themselves.

use super::lamp::LampAt;
use super::place::{Cell, Place};
use super::told::Told;
use super::tried::{Tried, use_tried};
use super::words::Walked;
use super::{rail, ring};
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

pub(super) struct Bench {
    /// Sets the ids apart from those of another bench on the page.
    pub(super) number: u32,
    pub(super) lamp: UseStateHandle<LampAt>,
    /// The cell that was come to last, and its panel.
    pub(super) cell: UseStateHandle<Option<(usize, Cell)>>,
    pub(super) in_words: UseStateHandle<bool>,
    /// Whether a line is drawn round the fault, once it may be.
    pub(super) lined: UseStateHandle<bool>,
    /// Where the loupe lies; none where it does not.
    pub(super) eye: UseStateHandle<Option<Place>>,
    pub(super) held: Rc<Held>,
    told: Rc<RefCell<Vec<Option<Rc<Told>>>>>,
    drawn: UseForceUpdateHandle,
}

/// What a finger holds of each rail and of the loupe.
#[derive(Debug, Default)]
pub(super) struct Held {
    pub(super) along: rail::Hold,
    pub(super) across: rail::Hold,
    pub(super) ring: ring::Hold,
}

/// The bench as it was left, or as the test that is done wants it.
#[hook]
pub(super) fn use_bench(tried: Option<&Tried>) -> Bench {
    let bench = Bench {
        number: *use_memo((), |()| own_number()),
        lamp: use_state_eq(LampAt::default),
        cell: use_state_eq(|| None),
        in_words: use_state_eq(|| false),
        lined: use_state_eq(|| true),
        told: use_mut_ref(Vec::new),
        drawn: use_force_update(),
        held: use_memo((), |()| Held::default()),
        eye: use_state_eq(|| None),
    };
    use_tried(tried, bench.told_of(0), &bench.lamp, &bench.eye);
    bench
}

impl Bench {
    /// What a panel tells of itself, once it is drawn.
    pub(super) fn told_of(&self, panel: usize) -> Option<Rc<Told>> {
        self.told.borrow().get(panel).cloned().flatten()
    }

    /// Whether a fault takes most of its panel, so that the rest of it is hatched.
    pub(super) fn is_hatched(&self) -> bool {
        self.told.borrow().iter().flatten().any(|told| told.hatched)
    }

    /// Keeps what a panel tells of itself.
    pub(super) fn on_drawn(&self, panel: usize) -> Callback<Rc<Told>> {
        let (told, drawn) = (Rc::clone(&self.told), self.drawn.clone());
        Callback::from(move |new: Rc<Told>| {
            let told = &mut *told.borrow_mut();
            told.resize_with(told.len().max(panel + 1), || None);
            if let Some(slot) = told.get_mut(panel) {
                *slot = Some(new);
            }
            drawn.force_update();
        })
    }

    /// Goes to a cell of a panel; by keys it is told in words from then on.
    pub(super) fn on_cell(&self, panel: usize) -> Callback<Walked> {
        let (set, in_words, on_eye) = (self.cell.setter(), self.in_words.setter(), self.on_eye());
        Callback::from(move |walked: Walked| {
            set.set(Some((panel, walked.cell)));
            on_eye.emit(walked.to);
            if walked.by_key {
                in_words.set(true);
            }
        })
    }

    pub(super) fn on_lamp(&self) -> Callback<LampAt> {
        let set = self.lamp.setter();
        Callback::from(move |to: LampAt| set.set(to))
    }

    /// Moves the loupe, where it lies on a panel.
    pub(super) fn on_eye(&self) -> Callback<Place> {
        let (set, looks) = (self.eye.setter(), self.eye.is_some());
        Callback::from(move |to: Place| set.set(looks.then_some(to)))
    }

    /// Lays the loupe on a place, or takes it away.
    pub(super) fn toggle_loupe(&self, first: Place) -> Callback<MouseEvent> {
        let (set, looks) = (self.eye.setter(), self.eye.is_some());
        Callback::from(move |_: MouseEvent| set.set((!looks).then_some(first)))
    }
}

/// A number for each bench: several may stand on one page.
fn own_number() -> u32 {
    thread_local!(static LAST: std::cell::Cell<u32> = const { std::cell::Cell::new(0) });
    LAST.with(|last| {
        last.set(last.get() + 1);
        last.get()
    })
}
