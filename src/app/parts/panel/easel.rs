//! Draws a panel some rows at a time and lights it, beside what the page does.
//!
//! A turn of drawing lasts some milliseconds, then the browser may answer what was touched. The first picture is coarse and
//! soon there; the fine one takes its place. The lamp only relights what is drawn, once a frame.

use super::place::{HEIGHT, WIDTH, shares};
use crate::device::{NextFrame, canvas, clock};
use crate::picture::{Grid, Lamp, Panel, Recipe, Work};
use gloo::timers::callback::Timeout;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::HtmlCanvasElement;
use yew::prelude::*;

/// Millimetres a pixel: of the first picture, 240 by 180, and of the fine one, 480 by 360.
const SCALES: [f32; 2] = [0.5, 0.25];
/// How long a turn lasts, and how much is drawn between two looks at the clock.
const TURN_MS: f64 = 8.0;
const ROWS: usize = 2;

/// Share of each cell that the fault takes.
pub(super) type Shares = Rc<Vec<f32>>;

#[derive(Clone)]
pub(super) struct Easel(Rc<RefCell<State>>);

struct State {
    picture: NodeRef,
    on_drawn: Callback<Shares>,
    lamp: Lamp,
    recipe: Option<Recipe>,
    /// Scales still to be drawn.
    scales: Vec<f32>,
    work: Option<(Work, Grid)>,
    panel: Option<Panel>,
    pixels: Vec<u8>,
    turn: Option<Timeout>,
    frame: Option<NextFrame>,
}

impl Easel {
    pub(super) fn new(picture: NodeRef, lamp: Lamp, on_drawn: Callback<Shares>) -> Self {
        Self(Rc::new(RefCell::new(State {
            picture,
            on_drawn,
            lamp,
            recipe: None,
            scales: Vec::new(),
            work: None,
            panel: None,
            pixels: Vec::new(),
            turn: None,
            frame: None,
        })))
    }

    /// Begins a picture; the one before stays until there is something of it to see.
    pub(super) fn draw(&self, recipe: Recipe) {
        let mut state = self.0.borrow_mut();
        state.recipe = Some(recipe);
        state.scales = SCALES.into_iter().rev().collect();
        state.work = None;
        drop(state);
        self.wait();
    }

    /// Sets the lamp; the picture follows with the next frame.
    pub(super) fn light(&self, lamp: Lamp) {
        self.0.borrow_mut().lamp = lamp;
        self.show();
    }

    /// Ends all that goes on.
    pub(super) fn stop(&self) {
        let mut state = self.0.borrow_mut();
        state.turn = None;
        state.frame = None;
    }

    /// Goes on with the drawing once the browser has had its turn.
    fn wait(&self) {
        let easel = self.clone();
        self.0.borrow_mut().turn = Some(Timeout::new(0, move || easel.turn()));
    }

    fn turn(&self) {
        let drawn = {
            let state = &mut *self.0.borrow_mut();
            state.turn = None;
            state.step()
        };
        if let Some(panel) = drawn {
            self.drawn(panel);
        }
        if self.0.borrow().has_more() {
            self.wait();
        }
    }

    fn drawn(&self, panel: Panel) {
        let told = Rc::new(shares(panel.grid(), panel.mask()));
        let mut state = self.0.borrow_mut();
        state.panel = Some(panel);
        let on_drawn = state.on_drawn.clone();
        drop(state);
        on_drawn.emit(told);
        self.show();
    }

    /// Lights the panel with the next frame, however often it is asked before.
    fn show(&self) {
        let mut state = self.0.borrow_mut();
        if state.panel.is_some() && state.frame.is_none() {
            let easel = self.clone();
            state.frame = NextFrame::ask(move || {
                let state = &mut *easel.0.borrow_mut();
                state.paint();
                state.frame = None;
            });
        }
    }
}

impl State {
    const fn has_more(&self) -> bool {
        self.work.is_some() || !self.scales.is_empty()
    }

    /// One turn of drawing; a panel that it finished.
    fn step(&mut self) -> Option<Panel> {
        let start = clock::ticks();
        let Some((mut work, grid)) = self.work.take() else {
            // What is set up for a picture takes a turn of its own.
            let grid = Grid::covering(WIDTH, HEIGHT, self.scales.pop()?);
            self.work = Some((Work::begin(self.recipe.clone()?, grid), grid));
            return None;
        };
        while !work.step(ROWS) {
            if clock::ticks() - start >= TURN_MS {
                self.work = Some((work, grid));
                return None;
            }
        }
        Some(work.finish())
    }

    fn paint(&mut self) {
        let (Some(panel), Some(picture)) = (&self.panel, self.picture.cast::<HtmlCanvasElement>()) else {
            return;
        };
        panel.light(self.lamp, &mut self.pixels);
        let grid = panel.grid();
        if let (Ok(width), Ok(height)) = (u32::try_from(grid.columns), u32::try_from(grid.rows)) {
            canvas::show(&picture, width, height, &self.pixels);
        }
    }
}
