//! Draws the views of the work in turns beside what the page does: the wood once, the finish again whenever it changes.

use super::layout::{DENSITY, HEIGHT, Layout, PICTURE};
use crate::device::{canvas, clock};
use crate::picture::Turns;
use crate::picture::instrument::{Drawing, PartLook, PartWood, View};
use gloo::timers::callback::Timeout;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::HtmlCanvasElement;
use yew::prelude::*;

/// How long a turn lasts.
const TURN_MS: f64 = 8.0;
/// Rows of pixels that are drawn before the clock is looked at.
const ROWS: usize = 4;

#[derive(Clone)]
pub(super) struct Easel(Rc<RefCell<State>>);

impl PartialEq for Easel {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

/// One view.
struct Slot {
    view: View,
    drawing: Option<Drawing>,
    /// Whether it was painted in the looks as they are now.
    painted: bool,
}

struct State {
    place: NodeRef,
    layout: Layout,
    slots: Vec<Slot>,
    woods: Vec<PartWood>,
    looks: Vec<PartLook>,
    /// What is being drawn: which view, and whether the finish is being painted.
    work: Option<(usize, bool, Turns<Drawing>)>,
    pixels: Vec<u8>,
    turn: Option<Timeout>,
}

impl Easel {
    pub(super) fn new(place: NodeRef, views: &[View], woods: &[PartWood]) -> Self {
        let slot = |view: &View| Slot { view: view.clone(), drawing: None, painted: false };
        let (columns, rows) = size();
        Self(Rc::new(RefCell::new(State {
            place,
            layout: Layout::of(views),
            slots: views.iter().map(slot).collect(),
            woods: woods.to_vec(),
            looks: Vec::new(),
            work: None,
            pixels: vec![0; 4 * columns * rows],
            turn: None,
        })))
    }

    /// Paints the work in other looks.
    pub(super) fn paint(&self, looks: &[PartLook]) {
        let state = &mut *self.0.borrow_mut();
        state.looks = looks.to_vec();
        for slot in &mut state.slots {
            slot.painted = false;
        }
        state.turn = Some(self.wait());
    }

    pub(super) fn stop(&self) {
        let state = &mut *self.0.borrow_mut();
        (state.turn, state.work) = (None, None);
    }

    fn wait(&self) -> Timeout {
        let easel = self.clone();
        Timeout::new(0, move || {
            let state = &mut *easel.0.borrow_mut();
            state.turn = state.step().then(|| easel.wait());
        })
    }
}

impl State {
    /// One turn; whether there is more to be drawn.
    fn step(&mut self) -> bool {
        let Some((place, painting, mut work)) = self.work.take() else {
            return self.begin();
        };
        let end = clock::ticks() + TURN_MS;
        let mut done = false;
        while !done && clock::ticks() < end {
            done = work.step(ROWS);
        }
        if !done {
            self.work = Some((place, painting, work));
            return true;
        }
        let drawing = work.finish();
        if painting {
            self.show(place, &drawing);
        }
        if let Some(slot) = self.slots.get_mut(place) {
            slot.drawing = Some(drawing);
        }
        true
    }

    /// Begins what comes next.
    fn begin(&mut self) -> bool {
        let Some(place) = self.slots.iter().position(|slot| !slot.painted) else { return false };
        let scale = 1.0 / (self.layout.scale * DENSITY);
        let (woods, looks) = (self.woods.clone(), self.looks.clone());
        let Some(slot) = self.slots.get_mut(place) else { return false };
        self.work = Some(match slot.drawing.take() {
            None => (place, false, Drawing::begin(slot.view.clone(), woods, scale)),
            Some(drawing) => {
                slot.painted = true;
                (place, true, drawing.paint(looks))
            }
        });
        true
    }

    /// Puts a view in its place and shows all.
    fn show(&mut self, place: usize, drawing: &Drawing) {
        let (columns, rows) = size();
        let (left, top) = self.layout.corners.get(place).copied().unwrap_or_default();
        let (left, top) = (whole(left * DENSITY), whole(top * DENSITY));
        let wide = drawing.size().0.min(columns.saturating_sub(left));
        for (nth, row) in drawing.pixels().chunks_exact(4 * drawing.size().0.max(1)).enumerate() {
            let from = 4 * ((top + nth) * columns + left);
            let slots = self.pixels.get_mut(from..from + 4 * wide);
            if let (Some(slots), Some(row)) = (slots, row.get(..4 * wide)) {
                slots.copy_from_slice(row);
            }
        }
        let size = u32::try_from(columns).ok().zip(u32::try_from(rows).ok());
        if let (Some((width, height)), Some(canvas)) = (size, self.place.cast::<HtmlCanvasElement>()) {
            canvas::show(&canvas, width, height, &self.pixels);
        }
    }
}

/// Columns and rows of the picture.
fn size() -> (usize, usize) {
    (whole(PICTURE * DENSITY), whole(HEIGHT * DENSITY))
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small and not negative")]
fn whole(value: f32) -> usize {
    value.max(0.0).round() as usize
}
