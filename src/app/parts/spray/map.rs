//! The film map: what lies where by a scale that falls in lightness, with lines where it passes a limit and patterns for
//! what lies outside of it, so that no colour is needed to read it.

use crate::device::canvas;
use crate::spraying::{Setup, Sprayer};
use std::rc::Rc;
use web_sys::HtmlCanvasElement;
use yew::prelude::*;

/// Red, green and blue of the scale from no film to its end: each darker than the one before.
const SCALE: [[f32; 3]; 6] = [
    [252.0, 251.0, 247.0],
    [243.0, 226.0, 180.0],
    [224.0, 180.0, 104.0],
    [188.0, 124.0, 56.0],
    [124.0, 70.0, 30.0],
    [48.0, 24.0, 12.0],
];
const INK: [f32; 3] = [27.0, 29.0, 31.0];
const PAPER: [f32; 3] = [251.0, 250.0, 247.0];
/// What is no work.
const BESIDE: [f32; 3] = [214.0, 216.0, 214.0];
/// Pixels of a cell each way.
const FINE: usize = 2;
/// Pixels from one line of a pattern to the next, and of a dot.
const APART: usize = 9;
const DOT: usize = 3;
const BYTES: usize = 4;
/// Size of the strip of the scale.
const STRIP: (usize, usize) = (480, 24);
/// The scale ends at so many times the thickest film that is wanted.
const BEYOND: f64 = 1.6;
/// A fade is told by lines at parts of its deepest film.
const PARTS: f64 = 4.0;

/// Where the scale ends and where its lines run, µm of wet film.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Marks {
    pub(in crate::app) end: f64,
    pub(in crate::app) lines: Vec<f64>,
    /// Thinnest and thickest film that is wanted: what lies outside of them has a pattern.
    window: Option<(f64, f64)>,
}

/// What a place of the map is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Class {
    Missed,
    Thin,
    Heavy,
    /// Within the limits, or between which lines.
    Between(usize),
}

impl Marks {
    /// Those of a task.
    pub(in crate::app) fn of(setup: &Setup) -> Self {
        if let Some((from, to)) = setup.window() {
            return Self { end: to * BEYOND, lines: vec![from, to], window: Some((from, to)) };
        }
        let deepest = setup.task.shade.map_or(0.0, |shade| shade.depth * setup.coat());
        let lines = (1_u8..).map(|nth| f64::from(nth) * deepest / PARTS).take_while(|line| *line <= deepest);
        Self { end: deepest * BEYOND, lines: lines.collect(), window: None }
    }

    fn class(&self, film: f64) -> Class {
        match self.window {
            Some((from, _)) if film < crate::spraying::reading::places::MISSED * from => Class::Missed,
            Some((from, _)) if film < from => Class::Thin,
            Some((_, to)) if film > to => Class::Heavy,
            _ => Class::Between(self.lines.iter().filter(|line| **line <= film).count()),
        }
    }

    /// The colour of a film at a pixel, with its pattern.
    fn colour(&self, film: f64, (x, y): (usize, usize)) -> [f32; 3] {
        let down = (x + y).is_multiple_of(APART);
        let up = (x + APART - y % APART).is_multiple_of(APART);
        let dot = x % APART < DOT && y % APART < DOT;
        match self.class(film) {
            Class::Missed if down || up => INK,
            Class::Thin if down => INK,
            Class::Heavy if dot => PAPER,
            _ => shade(film / self.end),
        }
    }
}

/// The colour of the scale at a share of it.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a share of 0 to 1 of few colours"
)]
fn shade(share: f64) -> [f32; 3] {
    /// Steps between the colours of the scale.
    const STEPS: f64 = 5.0;
    let at = share.clamp(0.0, 1.0) * STEPS;
    let nth = (at as usize).min(SCALE.len() - 2);
    let pair = SCALE.get(nth).copied().zip(SCALE.get(nth + 1).copied());
    let (from, to) = pair.unwrap_or((INK, INK));
    let part = (at - at.floor()) as f32;
    let part = if at >= STEPS { 1.0 } else { part };
    let mut colour = from;
    for (slot, to) in colour.iter_mut().zip(to) {
        *slot += (to - *slot) * part;
    }
    colour
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a colour of 0 to 255")]
fn write(slot: &mut [u8], colour: [f32; 3]) {
    for (slot, value) in slot.iter_mut().zip(colour.into_iter().chain([255.0])) {
        *slot = value as u8;
    }
}

/// The pixels of a map.
fn pixels(sprayer: &Sprayer, marks: &Marks) -> (usize, usize, Vec<u8>) {
    let film = sprayer.film();
    let grid = film.grid();
    let work = grid.work(&sprayer.setup().outline);
    let at = |cell: usize| f64::from(film.laid().get(cell).copied().unwrap_or_default());
    let is_work = |cell: usize| work.get(cell) == Some(&true);
    let (wide, high) = (grid.columns * FINE, grid.rows * FINE);
    let mut pixels = vec![0; BYTES * wide * high];
    for (nth, slot) in pixels.chunks_exact_mut(BYTES).enumerate() {
        let (x, y) = (nth % wide, nth / wide);
        let cell = y / FINE * grid.columns + x / FINE;
        let passes = |other: usize| is_work(other) && marks.class(at(other)) != marks.class(at(cell));
        // A limit is passed to the next cell on the right, or on the one below.
        let line = (x % FINE + 1 == FINE && passes(cell + 1))
            || (y % FINE + 1 == FINE && passes(cell + grid.columns));
        write(
            slot,
            match (is_work(cell), line) {
                (false, _) => BESIDE,
                (true, true) => INK,
                (true, false) => marks.colour(at(cell), (x, y)),
            },
        );
    }
    (wide, high, pixels)
}

#[allow(clippy::cast_precision_loss, reason = "a strip of some hundred pixels")]
fn strip(marks: &Marks) -> (usize, usize, Vec<u8>) {
    let (wide, high) = STRIP;
    let mut pixels = vec![0; BYTES * wide * high];
    for (nth, slot) in pixels.chunks_exact_mut(BYTES).enumerate() {
        let (x, y) = (nth % wide, nth / wide);
        write(slot, marks.colour(x as f64 / wide as f64 * marks.end, (x, y)));
    }
    (wide, high, pixels)
}

fn show(canvas: &NodeRef, (wide, high, pixels): &(usize, usize, Vec<u8>)) {
    let size = u32::try_from(*wide).ok().zip(u32::try_from(*high).ok());
    if let (Some((wide, high)), Some(canvas)) = (size, canvas.cast::<HtmlCanvasElement>()) {
        canvas::show(&canvas, wide, high, pixels);
    }
}

#[derive(Properties)]
pub(in crate::app) struct FilmMapProps {
    pub(in crate::app) sprayer: Rc<Sprayer>,
    /// What the map shows, in words.
    pub(in crate::app) alt: AttrValue,
    /// Lines and figures over it, in mm of the work.
    pub(in crate::app) children: Html,
}

impl PartialEq for FilmMapProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.sprayer, &other.sprayer) && self.alt == other.alt && self.children == other.children
    }
}

#[component]
pub(in crate::app) fn FilmMap(props: &FilmMapProps) -> Html {
    let canvas = use_node_ref();
    let setup = props.sprayer.setup();
    use_effect_with((), {
        let (canvas, sprayer) = (canvas.clone(), Rc::clone(&props.sprayer));
        move |()| show(&canvas, &pixels(&sprayer, &Marks::of(sprayer.setup())))
    });
    let (view, turned) = super::Turn::default().drawn(props.sprayer.film().grid());
    html! {
        <div class="spray-map">
            <canvas key="map" ref={canvas} role="img" aria-label={props.alt.clone()}></canvas>
            <svg key="over" viewBox={view} aria-hidden="true" focusable="false">
                <g transform={turned}>
                    <path key="outline" class="spray-outline" d={super::outline(setup)} />
                    { props.children.clone() }
                </g>
            </svg>
        </div>
    }
}

#[derive(Properties, PartialEq)]
pub(in crate::app) struct FilmScaleProps {
    pub(in crate::app) marks: Marks,
}

/// The strip of the scale alone; figures and words stand beside it.
#[component]
pub(in crate::app) fn FilmScale(props: &FilmScaleProps) -> Html {
    let canvas = use_node_ref();
    use_effect_with(props.marks.clone(), {
        let canvas = canvas.clone();
        move |marks| show(&canvas, &strip(marks))
    });
    html! { <canvas key="strip" class="spray-strip" ref={canvas} aria-hidden="true"></canvas> }
}
