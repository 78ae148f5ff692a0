//! The face on its stand while it is sprayed: takes what the hand does, lays it, and draws what was touched, once a frame.

use super::mark::Mark;
use super::turn::Turn;
use crate::content::Coat;
use crate::device::pointer::Sample;
use crate::device::{NextFrame, canvas, clock};
use crate::spraying::grid::Window;
use crate::spraying::hand::{Aim, Hand};
use crate::spraying::{Grid, NoPath, Path, Point, Setup, Sprayer};
use std::cell::RefCell;
use std::rc::Rc;
use stepboard_picture::{Coating, Look, Moment};
use web_sys::{DomRect, Element, HtmlCanvasElement};
use yew::prelude::*;

/// A hand that tells nothing for so long holds still, ms: what leaves the gun meanwhile is laid all the same.
const STILL_MS: f64 = 100.0;
/// What is laid in a cell is seen from so many cells beside it: the film's slope is.
const SEEN_FROM: usize = 1;

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
    gun: Mark,
    sprayer: Sprayer,
    look: Look,
    hand: Hand,
    held: Held,
    turn: Turn,
    /// The pointer that has the trigger pulled, and where it was last.
    trigger: Option<(i32, Sample)>,
    /// Points that are taken and not laid yet.
    taken: Vec<Point>,
    /// Where the canvas stands on the page: asked once a frame while it is sprayed.
    place: Option<DomRect>,
    pixels: Vec<u8>,
    frame: Option<NextFrame>,
}

impl Easel {
    pub(super) fn new([canvas, gun]: [NodeRef; 2], setup: &Setup, held: Held, turn: Turn) -> Self {
        let sprayer = Sprayer::new(setup.clone(), setup.grid());
        let grid = sprayer.film().grid();
        let look = Look::new(coating(setup), grid.columns, &grid.work(&setup.outline));
        Self(Rc::new(RefCell::new(State {
            canvas,
            gun: Mark::of(gun),
            sprayer,
            look,
            hand: Hand::default(),
            held,
            turn,
            trigger: None,
            taken: Vec::new(),
            place: None,
            pixels: Vec::new(),
            frame: None,
        })))
    }

    /// Holds the gun otherwise, or turns the work.
    pub(super) fn hold(&self, held: Held, turn: Turn) {
        let state = &mut *self.0.borrow_mut();
        let turned = state.turn != turn;
        (state.held, state.turn) = (held, turn);
        if turned {
            state.gun.away();
            state.draw_all();
        }
    }

    /// Draws all of it for the first time.
    pub(super) fn show(&self) {
        self.0.borrow_mut().draw_all();
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
        (state.frame, state.place) = (None, None);
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
        state.place = None;
        let now = clock::ticks();
        if now - state.hand.seen() > STILL_MS
            && let Some(aim) = state.aim(last)
        {
            state.taken.extend(state.hand.go(now - STILL_MS / 2.0, aim));
        }
        let touched = state.lay();
        state.draw(&touched);
        state.frame = self.next();
    }
}

impl State {
    fn grid(&self) -> Grid {
        self.sprayer.film().grid()
    }

    /// Where a pointer aims, and how.
    fn aim(&mut self, sample: Sample) -> Option<Aim> {
        let place = match self.place.take() {
            Some(place) => place,
            None => self.canvas.cast::<Element>()?.get_bounding_client_rect(),
        };
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
        self.place = self.trigger.map(|_| place);
        let (x, y) = self.turn.place(grid, seen);
        Some(Aim { x, y, distance: self.held.distance, fan: self.held.fan - self.turn.degrees() })
    }

    /// Lays what was taken; gives the cells that it touched.
    fn lay(&mut self) -> Window {
        let mut touched = Window::default();
        let last = self.taken.last().copied();
        for point in self.taken.drain(..) {
            touched = touched.with(&self.sprayer.to(point));
        }
        if let Some(Point { x, y, distance, fan, .. }) = last {
            self.gun_at(Aim { x, y, distance, fan });
        }
        touched
    }

    /// Draws cells, and those beside them that show what changed there.
    fn draw(&mut self, touched: &Window) {
        let Some(canvas) = self.canvas.cast::<HtmlCanvasElement>().filter(|_| !touched.is_empty()) else {
            return;
        };
        let (place, seen) = self.turn.window(self.grid(), &touched.wider(SEEN_FROM, self.grid()));
        let film = self.sprayer.film();
        let moment = Moment {
            left: film.left_at(self.hand.now()),
            runs_at: self.sprayer.setup().sag().map_or(f32::INFINITY, single),
        };
        self.look.paint(film.layers(), moment, seen, &mut self.pixels);
        let number = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
        canvas::show_part(&canvas, (number(place.0), number(place.1)), number(seen.wide), &self.pixels);
    }

    /// Marks the edge of the spot where the gun aims.
    fn gun_at(&mut self, aim: Aim) {
        let held = self.sprayer.setup().held(aim.distance, 0.0);
        self.gun.at(aim, (held.half_fan, held.half_thin));
    }

    fn draw_all(&mut self) {
        let grid = self.grid();
        let (wide, high) = self.turn.size(grid);
        let size = u32::try_from(wide).ok().zip(u32::try_from(high).ok());
        if let (Some((wide, high)), Some(canvas)) = (size, self.canvas.cast::<HtmlCanvasElement>()) {
            canvas::size(&canvas, wide, high);
        }
        self.draw(&Window { columns: 0..grid.columns, rows: 0..grid.rows });
    }
}

/// How what a task sprays takes light.
fn coating(setup: &Setup) -> Coating {
    match (setup.task.coat, setup.task.shade) {
        (_, Some(_)) => Coating::Shade,
        (Coat::Colour, None) => Coating::Solid,
        (Coat::Sealer | Coat::Clear, None) => Coating::Clear,
    }
}

#[allow(clippy::cast_possible_truncation, reason = "a film of some hundred µm")]
const fn single(film: f64) -> f32 {
    film as f32
}
