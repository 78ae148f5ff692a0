//! Draws a panel some rows at a time and lights it, beside what the page does.
//!
//! A turn of drawing lasts some milliseconds, then the browser may answer what was touched. The first picture is coarse and
//! soon there; the fine one takes its place; what lies under the loupe is drawn finer still once the loupe is at rest. The
//! lamp only relights what is drawn, once a frame. A panel that was drawn before its screen came stands at once.

use super::place::{HEIGHT, Place, WIDTH};
use super::told::Told;
use super::{kept, loupe};
use crate::device::{NextFrame, canvas};
use crate::picture::{Grid, Lamp, Outline, Panel, Recipe, Work};
use gloo::timers::callback::Timeout;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::HtmlCanvasElement;
use yew::prelude::*;

/// Millimetres a pixel: of the first picture, 240 by 180, and of the fine one, 480 by 360.
const COARSE: f32 = 0.5;
const FINE: f32 = 0.25;
/// How long a turn lasts.
const TURN_MS: f64 = 8.0;
/// A loupe that has not moved for so long is at rest.
const REST_MS: u32 = 120;

#[derive(Clone)]
pub(super) struct Easel(Rc<RefCell<State>>);

/// What is drawn.
#[derive(Clone, Copy)]
enum Job {
    Face(Grid),
    Loupe(Place),
}

/// A panel, and the line round its fault once that was asked for.
struct Drawn {
    panel: Panel,
    outline: Option<Outline>,
}

struct State {
    picture: NodeRef,
    glass: NodeRef,
    on_drawn: Callback<Rc<Told>>,
    lamp: Lamp,
    recipe: Option<Recipe>,
    /// What is still to be drawn, the next one last.
    jobs: Vec<Job>,
    work: Option<(Work, Job)>,
    panel: Option<Drawn>,
    pixels: Vec<u8>,
    /// Whether the fault has a line round it.
    outlined: bool,
    /// Where the loupe is, and the panel under it, where it is drawn.
    eye: Option<Place>,
    near: Option<Drawn>,
    near_pixels: Vec<u8>,
    turn: Option<Timeout>,
    rest: Option<Timeout>,
    frame: Option<NextFrame>,
}

impl Easel {
    pub(super) fn new([picture, glass]: [NodeRef; 2], lamp: Lamp, on_drawn: Callback<Rc<Told>>) -> Self {
        Self(Rc::new(RefCell::new(State {
            picture,
            glass,
            on_drawn,
            lamp,
            recipe: None,
            jobs: Vec::new(),
            work: None,
            panel: None,
            pixels: Vec::new(),
            outlined: false,
            eye: None,
            near: None,
            near_pixels: Vec::new(),
            turn: None,
            rest: None,
            frame: None,
        })))
    }

    /// Begins a picture; the one before stays until there is something of it to see.
    pub(super) fn draw(&self, recipe: Recipe) {
        let ready = kept::take(&recipe);
        let told = {
            let state = &mut *self.0.borrow_mut();
            state.recipe = Some(recipe);
            state.work = None;
            state.near = None;
            state.jobs = state.eye.map(Job::Loupe).into_iter().collect();
            if ready.is_none() {
                state.jobs.extend([FINE, COARSE].map(|scale| Job::Face(face(scale))));
            }
            state.turn = Some(self.wait());
            ready
                .and_then(|panel| state.take(panel, Job::Face(face(FINE))))
                .map(|told| (state.on_drawn.clone(), told))
        };
        if let Some((on_drawn, told)) = told {
            on_drawn.emit(Rc::new(told));
            self.show();
        }
    }

    /// Draws a line round the fault, or takes it away.
    pub(super) fn outline(&self, outlined: bool) {
        self.0.borrow_mut().outlined = outlined;
        self.show();
    }

    /// Sets the lamp; the picture follows with the next frame.
    pub(super) fn light(&self, lamp: Lamp) {
        self.0.borrow_mut().lamp = lamp;
        self.show();
    }

    /// Lays the loupe over a place, or takes it away. It enlarges at once what is there, and is drawn finer at rest.
    pub(super) fn look(&self, eye: Option<Place>) {
        {
            let state = &mut *self.0.borrow_mut();
            state.eye = eye;
            state.near = None;
            state.jobs.retain(|job| matches!(job, Job::Face(_)));
            state.work.take_if(|(_, job)| matches!(job, Job::Loupe(_)));
            let easel = self.clone();
            state.rest = eye.map(|eye| {
                Timeout::new(REST_MS, move || {
                    let state = &mut *easel.0.borrow_mut();
                    state.jobs.insert(0, Job::Loupe(eye));
                    state.turn = Some(easel.wait());
                })
            });
        }
        self.show();
    }

    /// Ends all that goes on. A panel that is ready is kept for the next screen that shows it.
    pub(super) fn stop(&self) {
        let state = &mut *self.0.borrow_mut();
        (state.turn, state.rest, state.frame) = (None, None, None);
        let unfinished = state.jobs.iter().chain(state.work.as_ref().map(|(_, job)| job));
        if !unfinished.into_iter().any(|job| matches!(job, Job::Face(_)))
            && let (Some(recipe), Some(drawn)) = (state.recipe.take(), state.panel.take())
        {
            kept::put_down(recipe, drawn.panel);
        }
    }

    /// Goes on with the drawing once the browser has had its turn.
    fn wait(&self) -> Timeout {
        let easel = self.clone();
        Timeout::new(0, move || easel.turn())
    }

    fn turn(&self) {
        let told = {
            let state = &mut *self.0.borrow_mut();
            let drawn = state.step();
            state.turn = state.has_more().then(|| self.wait());
            drawn.map(|(panel, job)| (state.on_drawn.clone(), state.take(panel, job)))
        };
        if let Some((on_drawn, told)) = told {
            if let Some(told) = told {
                on_drawn.emit(Rc::new(told));
            }
            self.show();
        }
    }

    /// Lights the panel with the next frame, however often it is asked before.
    fn show(&self) {
        let state = &mut *self.0.borrow_mut();
        if state.panel.is_some() && state.frame.is_none() {
            let easel = self.clone();
            state.frame = NextFrame::ask(move || {
                let state = &mut *easel.0.borrow_mut();
                state.frame = None;
                state.paint();
            });
        }
    }
}

impl State {
    const fn has_more(&self) -> bool {
        self.work.is_some() || !self.jobs.is_empty()
    }

    /// One turn of drawing; what it finished.
    fn step(&mut self) -> Option<(Panel, Job)> {
        let Some((mut work, job)) = self.work.take() else {
            // To set a picture up takes a turn of its own.
            let job = self.jobs.pop()?;
            let grid = match job {
                Job::Face(grid) => grid,
                Job::Loupe(eye) => loupe::window(face(FINE), eye),
            };
            self.work = Some((Work::begin(self.recipe.clone()?, grid), job));
            return None;
        };
        if kept::step_for(&mut work, TURN_MS) {
            return Some((work.finish(), job));
        }
        self.work = Some((work, job));
        None
    }

    /// Takes what is drawn; what a whole panel tells.
    fn take(&mut self, panel: Panel, job: Job) -> Option<Told> {
        match job {
            Job::Face(_) => {
                let outline = self.outlined.then(|| panel.outline());
                let told = Told::of(&panel, outline.as_ref());
                self.panel = Some(Drawn { panel, outline });
                Some(told)
            }
            Job::Loupe(_) => {
                self.near = Some(Drawn { panel, outline: None });
                None
            }
        }
    }

    fn paint(&mut self) {
        let (Some(drawn), Some(picture)) = (&mut self.panel, canvas_of(&self.picture)) else { return };
        drawn.light(self.lamp, self.outlined, &mut self.pixels);
        let grid = drawn.panel.grid();
        if let (Ok(width), Ok(height)) = (u32::try_from(grid.columns), u32::try_from(grid.rows)) {
            canvas::show(&picture, width, height, &self.pixels);
        }
        let (Some(eye), Some(glass)) = (self.eye, canvas_of(&self.glass)) else { return };
        match &mut self.near {
            Some(near) => near.light(self.lamp, self.outlined, &mut self.near_pixels),
            None => loupe::enlarge(grid, &self.pixels, eye, &mut self.near_pixels),
        }
        loupe::cut_round(eye, &mut self.near_pixels);
        canvas::show_piece(&glass, loupe::CANVAS, loupe::corner(eye), loupe::side(), &self.near_pixels);
    }
}

impl Drawn {
    fn light(&mut self, lamp: Lamp, outlined: bool, pixels: &mut Vec<u8>) {
        self.panel.light(lamp, pixels);
        if outlined {
            self.outline.get_or_insert_with(|| self.panel.outline()).draw(pixels);
        }
    }
}

/// A whole panel, cut as finely as it is shown at last.
pub(super) fn whole() -> Grid {
    face(FINE)
}

pub(super) fn face(scale: f32) -> Grid {
    Grid::covering(WIDTH, HEIGHT, scale)
}

fn canvas_of(place: &NodeRef) -> Option<HtmlCanvasElement> {
    place.cast()
}
