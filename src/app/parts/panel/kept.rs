//! Panels that are drawn and wait for the screen that shows them: those of the next card, drawn while nobody waits, and those
//! that were just put down.

use super::easel::whole;
use crate::device::clock;
use crate::picture::{Panel, Recipe, Work};
use gloo::timers::callback::Timeout;
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// So many are kept, as many as one card shows: each takes some 15 MB.
const MOST: usize = 2;
/// What is drawn ahead waits until the screen stands, then takes short turns with room between them, milliseconds.
const FIRST_MS: u32 = 400;
const TURN_MS: f64 = 4.0;
const BETWEEN_MS: u32 = 12;
/// How much is drawn between two looks at the clock, rows.
const ROWS: usize = 2;

thread_local!(static KEPT: RefCell<Vec<(Recipe, Panel)>> = const { RefCell::new(Vec::new()) });

/// Keeps a panel that is put down, where there is room beside what was drawn ahead.
pub(super) fn put_down(recipe: Recipe, panel: Panel) {
    KEPT.with_borrow_mut(|kept| {
        if kept.len() < MOST {
            kept.insert(0, (recipe, panel));
        }
    });
}

/// Keeps a panel that was drawn ahead, the oldest one making room.
fn keep(recipe: Recipe, panel: Panel) {
    KEPT.with_borrow_mut(|kept| {
        if kept.len() >= MOST {
            kept.remove(0);
        }
        kept.push((recipe, panel));
    });
}

/// The panel of a recipe, if it is there.
pub(super) fn take(recipe: &Recipe) -> Option<Panel> {
    KEPT.with_borrow_mut(|kept| {
        let place = kept.iter().position(|(other, _)| other == recipe)?;
        Some(kept.remove(place).1)
    })
}

/// Goes on with a drawing for some milliseconds; whether it is done.
pub(super) fn step_for(work: &mut Work, ms: f64) -> bool {
    let start = clock::ticks();
    while !work.step(ROWS) {
        if clock::ticks() - start >= ms {
            return false;
        }
    }
    true
}

/// Draws panels ahead while the screen is idle.
#[hook]
pub(in crate::app) fn use_ahead(recipes: Vec<Recipe>) {
    use_effect_with(recipes, |recipes| {
        let ahead = Ahead(Rc::new(RefCell::new(Drawing { to_do: recipes.clone(), work: None, turn: None })));
        ahead.wait(FIRST_MS);
        move || ahead.0.borrow_mut().turn = None
    });
}

#[derive(Clone)]
struct Ahead(Rc<RefCell<Drawing>>);

struct Drawing {
    to_do: Vec<Recipe>,
    work: Option<(Recipe, Work)>,
    turn: Option<Timeout>,
}

impl Ahead {
    fn wait(&self, ms: u32) {
        let ahead = self.clone();
        self.0.borrow_mut().turn = Some(Timeout::new(ms, move || ahead.turn()));
    }

    fn turn(&self) {
        if self.0.borrow_mut().step() {
            self.wait(BETWEEN_MS);
        }
    }
}

impl Drawing {
    /// One turn of drawing; whether there is more to do.
    fn step(&mut self) -> bool {
        let Some((recipe, mut work)) = self.work.take() else {
            let Some(recipe) = self.to_do.pop() else { return false };
            // What is there already is only made the newest.
            match take(&recipe) {
                Some(panel) => keep(recipe, panel),
                None => self.work = Some((recipe.clone(), Work::begin(recipe, whole()))),
            }
            return true;
        };
        if step_for(&mut work, TURN_MS) {
            keep(recipe, work.finish());
        } else {
            self.work = Some((recipe, work));
        }
        true
    }
}
