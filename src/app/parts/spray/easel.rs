//! The face on its stand while it is sprayed: takes what the hand does, lays it, and draws what was touched, once a frame.

use super::paint::{Painter, Seen};
use super::turn::Turn;
use crate::device::pointer::Sample;
use crate::device::{NextFrame, canvas, clock};
use crate::spraying::hand::{Aim, Hand};
use crate::spraying::{Grid, NoPath, Path, Point, Setup, Sprayer};
use core::ops::Range;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::{Element, HtmlCanvasElement};
use yew::prelude::*;

/// A hand that tells nothing for so long holds still, ms: what leaves the gun meanwhile is laid all the same.
const STILL_MS: f64 = 100.0;
/// Bytes of a pixel.
const BYTES: usize = 4;

/// How the gun is held: by the second control, beside what the hand does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::app) struct Held {
    /// Distance, mm.
    pub(in crate::app) distance: f64,
    /// Direction of the fan as it is seen, degrees from level, downwards at the right.
    pub(in crate::app) fan: f64,
}

#[derive(Clone)]
pub(super) struct Easel(Rc<RefCell<State>>);

impl PartialEq for Easel {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

struct State {
    canvas: NodeRef,
    gun: NodeRef,
    sprayer: Sprayer,
    painter: Painter,
    hand: Hand,
    held: Held,
    turn: Turn,
    /// The pointer that has the trigger pulled, and where it was last.
    trigger: Option<(i32, Sample)>,
    /// Points that are taken and not laid yet, and the window of the last one that is.
    taken: Vec<Point>,
    before: Option<Window>,
    pixels: Vec<u8>,
    frame: Option<NextFrame>,
}

/// Columns and rows of cells.
type Window = (Range<usize>, Range<usize>);

impl Easel {
    pub(super) fn new([canvas, gun]: [NodeRef; 2], setup: &Setup, held: Held, turn: Turn) -> Self {
        let sprayer = Sprayer::new(setup.clone(), setup.grid());
        let grid = sprayer.film().grid();
        let painter = Painter::new(setup, grid, &grid.work(&setup.outline));
        Self(Rc::new(RefCell::new(State {
            canvas,
            gun,
            sprayer,
            painter,
            hand: Hand::default(),
            held,
            turn,
            trigger: None,
            taken: Vec::new(),
            before: None,
            pixels: Vec::with_capacity(BYTES * grid.count()),
            frame: None,
        })))
    }

    /// Holds the gun otherwise, or turns the work.
    pub(super) fn hold(&self, held: Held, turn: Turn) {
        let state = &mut *self.0.borrow_mut();
        let turned = state.turn != turn;
        (state.held, state.turn) = (held, turn);
        if turned {
            state.gun_away();
        }
        state.draw_all();
    }

    /// The trigger is pulled by a pointer; whether it was, since one hand sprays.
    pub(super) fn pull(&self, pointer: i32, sample: Sample) -> bool {
        let state = &mut *self.0.borrow_mut();
        if state.trigger.is_some() {
            return false;
        }
        let aim = state.aim(sample);
        let Some(point) = aim.and_then(|aim| state.hand.pull(sample.at, aim)) else { return false };
        state.taken.push(point);
        state.before = None;
        state.trigger = Some((pointer, sample));
        state.frame = self.next();
        true
    }

    /// A pointer moves: with the trigger pulled, or only to be seen.
    pub(super) fn go(&self, pointer: i32, sample: Sample) {
        let state = &mut *self.0.borrow_mut();
        let Some(aim) = state.aim(sample) else { return };
        if let Some((held, last)) = &mut state.trigger {
            if *held != pointer {
                return;
            }
            *last = sample;
            state.taken.extend(state.hand.go(sample.at, aim));
        } else {
            state.gun_at(aim);
        }
    }

    /// The trigger is let go; whether a stroke ended.
    pub(super) fn let_go(&self, pointer: i32, sample: Sample) -> bool {
        let state = &mut *self.0.borrow_mut();
        if state.trigger.take_if(|(held, _)| *held == pointer).is_none() {
            return false;
        }
        state.taken.extend(state.hand.let_go(sample.at).into_iter().flatten());
        state.frame = None;
        state.lay();
        state.draw_all();
        true
    }

    /// Waits with the trigger let go, s.
    pub(super) fn wait(&self, seconds: f64) {
        let state = &mut *self.0.borrow_mut();
        state.hand.wait(seconds);
        state.draw_all();
    }

    /// Whether nothing was sprayed yet, and whether no more fits.
    pub(super) fn filled(&self) -> (bool, bool) {
        let state = &*self.0.borrow();
        (state.hand.is_bare(), state.hand.is_full())
    }

    /// The path of the run, and the gun that laid it.
    pub(super) fn done(&self) -> Result<(Path, Sprayer), NoPath> {
        let state = &*self.0.borrow();
        Ok((state.hand.path()?, state.sprayer.clone()))
    }

    pub(super) fn stop(&self) {
        self.0.borrow_mut().frame = None;
    }

    fn next(&self) -> Option<NextFrame> {
        let easel = self.clone();
        NextFrame::ask(move || easel.frame())
    }

    fn frame(&self) {
        let state = &mut *self.0.borrow_mut();
        let Some((_, last)) = state.trigger else { return };
        let now = clock::ticks();
        if now - state.hand.seen() > STILL_MS
            && let Some(aim) = state.aim(last)
        {
            state.taken.extend(state.hand.go(now - STILL_MS / 2.0, aim));
        }
        if let Some(window) = state.lay() {
            state.draw(&window);
        }
        state.frame = self.next();
    }
}

impl State {
    fn grid(&self) -> Grid {
        self.sprayer.film().grid()
    }

    /// Where a pointer aims, and how.
    fn aim(&self, sample: Sample) -> Option<Aim> {
        let place = self.canvas.cast::<Element>()?.get_bounding_client_rect();
        let grid = self.grid();
        // The picture stands in the middle of its place, as large as it fits.
        let (across, down) = self.turn.cells(grid);
        let scale = (place.width() / across).min(place.height() / down).max(f64::MIN_POSITIVE);
        let share =
            |at: f64, from: f64, long: f64, cells: f64| (at - from - long / 2.0) / (cells * scale) + 0.5;
        let seen = (
            share(sample.x, place.left(), place.width(), across),
            share(sample.y, place.top(), place.height(), down),
        );
        let (x, y) = self.turn.place(grid, seen);
        Some(Aim { x, y, distance: self.held.distance, fan: self.held.fan - self.turn.degrees() })
    }

    /// Lays what was taken; gives the window that it touched.
    fn lay(&mut self) -> Option<Window> {
        // What is laid now begins where the last point was.
        let mut touched = if self.taken.is_empty() { None } else { self.before.take() };
        let mut last = None;
        for point in self.taken.drain(..) {
            self.sprayer.to(point);
            let held = self.sprayer.setup().held(point.distance, point.tilt);
            let reach = held.half_fan.max(held.half_thin);
            let here = self.sprayer.film().grid().around((point.x, point.y), reach);
            self.before = Some(here.clone());
            touched = Some(match touched {
                Some(all) => (joined(&all.0, &here.0), joined(&all.1, &here.1)),
                None => here,
            });
            last = Some(point);
        }
        if let Some(point) = last {
            let Point { x, y, distance, fan, .. } = point;
            self.gun_at(Aim { x, y, distance, fan });
        }
        touched
    }

    /// Draws the cells of a window.
    fn draw(&mut self, (columns, rows): &Window) {
        let Some(canvas) = self.canvas.cast::<HtmlCanvasElement>() else { return };
        let (Some(last_column), Some(last_row)) = (columns.clone().next_back(), rows.clone().next_back())
        else {
            return;
        };
        let (grid, turn) = (self.grid(), self.turn);
        let (one, other) =
            (turn.seen(grid, (columns.start, rows.start)), turn.seen(grid, (last_column, last_row)));
        let (left, right) = (one.0.min(other.0), one.0.max(other.0));
        let (top, bottom) = (one.1.min(other.1), one.1.max(other.1));
        let film = self.sprayer.film();
        let left_wet = film.left_at(self.hand.now());
        let runs_at = self.sprayer.setup().sag().unwrap_or(f64::INFINITY);
        let (wide, high) = (right - left + 1, bottom - top + 1);
        self.pixels.resize(BYTES * wide * high, 0);
        let at = |values: &[f32], cell: usize| values.get(cell).copied().unwrap_or_default();
        for (nth, slot) in self.pixels.chunks_exact_mut(BYTES).enumerate() {
            let (column, row) = turn.cell(grid, (left + nth % wide, top + nth / wide));
            let cell = row * grid.columns + column;
            let (laid, wettest) = (film.laid(), film.wettest());
            let seen = Seen {
                laid: at(laid, cell),
                wet: film.wet_in(cell, left_wet),
                dry: at(film.dry(), cell),
                slope: at(laid, cell + 1) - at(laid, cell.saturating_sub(1)) + at(laid, cell + grid.columns)
                    - at(laid, cell.saturating_sub(grid.columns)),
                runs: f64::from(at(wettest, cell)) >= runs_at,
            };
            self.painter.paint(cell, seen, slot);
        }
        let number = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
        canvas::show_part(&canvas, (number(left), number(top)), number(wide), &self.pixels);
    }

    fn draw_all(&mut self) {
        let grid = self.grid();
        let (wide, high) = self.turn.size(grid);
        let size = u32::try_from(wide).ok().zip(u32::try_from(high).ok());
        if let (Some((wide, high)), Some(canvas)) = (size, self.canvas.cast::<HtmlCanvasElement>()) {
            canvas::size(&canvas, wide, high);
        }
        self.draw(&(0..grid.columns, 0..grid.rows));
    }

    /// Draws the edge of the spot where the gun aims.
    fn gun_at(&self, aim: Aim) {
        let Some(gun) = self.gun.cast::<Element>() else { return };
        let held = self.sprayer.setup().held(aim.distance, 0.0);
        let Aim { x, y, fan, .. } = aim;
        let (a, b) = (held.half_fan, held.half_thin);
        let set = |name: &str, value: String| {
            // Plain attributes of our own: they take any number.
            let _ = gun.set_attribute(name, &value);
        };
        set("transform", format!("translate({x:.1} {y:.1}) rotate({fan:.1}) scale({a:.1} {b:.1})"));
        set("class", "spray-gun seen".to_owned());
    }

    fn gun_away(&self) {
        if let Some(gun) = self.gun.cast::<Element>() {
            // As above.
            let _ = gun.set_attribute("class", "spray-gun");
        }
    }
}

fn joined(one: &Range<usize>, other: &Range<usize>) -> Range<usize> {
    one.start.min(other.start)..one.end.max(other.end)
}
