//! The face on its stand while it is sprayed: takes what the hand does, lays it, and draws what was touched, once a frame.

use super::face::Face;
use super::mark::Mark;
use super::turn::Turn;
use crate::device::pointer::Sample;
use crate::device::{NextFrame, clock};
use crate::spraying::grid::Window;
use crate::spraying::hand::{Aim, Hand};
use crate::spraying::{NoPath, Path, Point, Setup, Sprayer};
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// A hand that tells nothing for so long holds still, ms: what leaves the gun meanwhile is laid all the same.
const STILL_MS: f64 = 100.0;

/// How the gun is held: by the second control, beside what the hand does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::app) struct Held {
    /// Distance, mm.
    pub(in crate::app) distance: f64,
    /// Direction of the fan as it is seen, degrees from level, downwards at the right.
    pub(in crate::app) fan: f64,
    /// How wide the fan is set, over how wide the task sets it.
    pub(in crate::app) wide: f64,
}

#[derive(Clone)]
pub(super) struct Easel(Rc<RefCell<State>>);

impl PartialEq for Easel {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

struct State {
    face: Face,
    gun: Mark,
    hand: Hand,
    held: Held,
    /// The pointer that has the trigger pulled, and where it was last.
    trigger: Option<(i32, Sample)>,
    /// Points that are taken and not laid yet.
    taken: Vec<Point>,
    frame: Option<NextFrame>,
}

impl Easel {
    pub(super) fn new([canvas, gun]: [NodeRef; 2], setup: &Setup, held: Held, turn: Turn) -> Self {
        Self(Rc::new(RefCell::new(State {
            face: Face::new(canvas, setup, turn),
            gun: Mark::of(gun),
            hand: Hand::default(),
            held,
            trigger: None,
            taken: Vec::new(),
            frame: None,
        })))
    }

    /// Holds the gun otherwise, or turns the work.
    pub(super) fn hold(&self, held: Held, turn: Turn) {
        let state = &mut *self.0.borrow_mut();
        let turned = state.face.turn != turn;
        (state.held, state.face.turn) = (held, turn);
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
        Ok((state.hand.path()?, state.face.sprayer.clone()))
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
        // The page may have moved since the last frame.
        state.face.forget();
        let now = clock::ticks();
        if now - state.hand.seen() > STILL_MS
            && let Some(aim) = state.aim(last)
        {
            state.taken.extend(state.hand.go(now - STILL_MS / 2.0, aim));
        }
        let touched = state.lay();
        state.face.draw(&touched, state.hand.now());
        state.frame = self.next();
    }
}

impl State {
    /// Where a pointer aims, and how.
    fn aim(&mut self, sample: Sample) -> Option<Aim> {
        if self.trigger.is_none() {
            self.face.forget();
        }
        let (x, y) = self.face.place(sample)?;
        let Held { distance, fan, wide } = self.held;
        Some(Aim { x, y, distance, fan: fan - self.face.turn.degrees(), wide })
    }

    /// Lays what was taken; gives the cells that it touched.
    fn lay(&mut self) -> Window {
        let mut touched = Window::default();
        let last = self.taken.last().copied();
        for point in self.taken.drain(..) {
            touched = touched.with(&self.face.sprayer.to(point));
        }
        if let Some(Point { x, y, distance, fan, wide, .. }) = last {
            self.gun_at(Aim { x, y, distance, fan, wide });
        }
        touched
    }

    /// Marks the edge of the spot where the gun aims.
    fn gun_at(&mut self, aim: Aim) {
        let held = self.face.sprayer.setup().opened(aim.distance, 0.0, aim.wide);
        self.gun.at(aim, (held.half_fan, held.half_thin));
    }

    fn draw_all(&mut self) {
        self.face.draw_all(self.hand.now());
    }
}
