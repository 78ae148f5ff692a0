//! A panel as a still picture for paper: drawn once, in turns, under the tubes; ruled into cells where a place is asked for.

use super::easel::face;
use super::kept;
use super::place::{HEIGHT, WIDTH};
use crate::card::cell::{CELL_MM, CELLS};
use crate::device::canvas;
use crate::picture::{Lamp, Recipe, Work};
use gloo::timers::callback::Timeout;
use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::rc::Rc;
use web_sys::HtmlCanvasElement;
use yew::prelude::*;

/// Millimetres of the panel a pixel: 800 by 600 of them, on paper 80 mm wide 254 to the inch. From memory: printers ask for
/// 200 to 300.
const FOR_PRINT: f32 = 0.15;
/// How long a turn of drawing lasts.
const TURN_MS: f64 = 12.0;
/// Room for letters and figures along the edges, mm of the panel.
const RULER: f32 = 7.0;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct StillProps {
    pub(in crate::app) recipe: Recipe,
    /// What the picture shows, for those who do not see it.
    pub(in crate::app) alt: AttrValue,
    /// Whether it is ruled into cells.
    pub(in crate::app) ruled: bool,
    /// Millimetres of the panel a pixel; as fine as print takes it where nothing is said.
    #[prop_or(FOR_PRINT)]
    pub(in crate::app) mm: f32,
    /// Told once it is drawn.
    pub(in crate::app) on_drawn: Callback<()>,
}

#[component]
pub(in crate::app) fn Still(props: &StillProps) -> Html {
    let place = use_node_ref();
    use_effect_with(props.recipe.clone(), {
        let (place, on_drawn, mm) = (place.clone(), props.on_drawn.clone(), props.mm);
        move |recipe| {
            let wanted = Rc::new(Cell::new(true));
            let job = Job { recipe: recipe.clone(), mm, place, on_drawn, wanted: Rc::clone(&wanted) };
            let idle = QUEUE.with_borrow_mut(|queue| {
                queue.jobs.push_back(job);
                !std::mem::replace(&mut queue.busy, true)
            });
            if idle {
                next();
            }
            move || wanted.set(false)
        }
    });
    let ruler = props.ruled.then(ruler).unwrap_or_default();
    html! {
        <div class={classes!("still", props.ruled.then_some("ruled"))}>
            <canvas ref={place} role="img" aria-label={props.alt.clone()} />
            { ruler }
        </div>
    }
}

/// A picture that waits to be drawn.
struct Job {
    recipe: Recipe,
    mm: f32,
    place: NodeRef,
    on_drawn: Callback<()>,
    /// Whether its screen is still there.
    wanted: Rc<Cell<bool>>,
}

/// One picture is drawn at a time: while it is drawn each takes some 40 MB.
#[derive(Default)]
struct Queue {
    jobs: VecDeque<Job>,
    busy: bool,
}

thread_local!(static QUEUE: RefCell<Queue> = RefCell::default());

/// Begins the next picture that is still wanted.
fn next() {
    let job = QUEUE.with_borrow_mut(|queue| {
        let job = std::iter::from_fn(|| queue.jobs.pop_front()).find(|job| job.wanted.get());
        queue.busy = job.is_some();
        job
    });
    if let Some(job) = job {
        go_on(Work::begin(job.recipe.clone(), face(job.mm)), job);
    }
}

/// Draws on with the next turn of the browser, until the picture is there.
fn go_on(mut work: Work, job: Job) {
    let turn = Timeout::new(0, move || {
        if !job.wanted.get() {
            return next();
        }
        if !kept::step_for(&mut work, TURN_MS) {
            return go_on(work, job);
        }
        let panel = work.finish();
        let (grid, mut pixels) = (panel.grid(), Vec::new());
        panel.light(Lamp::OVERHEAD, &mut pixels);
        let size = u32::try_from(grid.columns).ok().zip(u32::try_from(grid.rows).ok());
        if let (Some((width, height)), Some(canvas)) = (size, job.place.cast::<HtmlCanvasElement>()) {
            canvas::show(&canvas, width, height, &pixels);
        }
        job.on_drawn.emit(());
        next();
    });
    turn.forget();
}

/// The letter of a column, from 0.
pub(in crate::app) fn column_letter(column: usize) -> char {
    u8::try_from(column).map_or(' ', |column| char::from(b'A'.saturating_add(column)))
}

/// Lines between the cells, letters of the columns above and figures of the rows at the left.
fn ruler() -> Html {
    let at = |nth: usize| (0..nth).fold(RULER, |at, _| at + CELL_MM);
    let (right, bottom) = (RULER + WIDTH, RULER + HEIGHT);
    let mut lines = String::new();
    for column in 0..=CELLS.0 {
        lines.push_str(&format!("M{} {RULER}V{bottom}", at(column)));
    }
    for row in 0..=CELLS.1 {
        lines.push_str(&format!("M{RULER} {}H{right}", at(row)));
    }
    let middle = |nth: usize| (at(nth) + CELL_MM / 2.0).to_string();
    let column = |nth: usize| html! { <text key={format!("c{nth}")} x={middle(nth)} y="5">{ column_letter(nth) }</text> };
    let row = |nth: usize| html! { <text key={format!("r{nth}")} x="3" y={(at(nth) + 6.5).to_string()}>{ nth + 1 }</text> };
    html! {
        <svg class="ruler" viewBox={format!("0 0 {right} {bottom}")} aria-hidden="true" focusable="false">
            <path class="light" d={lines.clone()} /><path class="dark" d={lines} />
            { for (0..CELLS.0).map(column) }
            { for (0..CELLS.1).map(row) }
        </svg>
    }
}
