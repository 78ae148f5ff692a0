//! The work on its stand, sprayed by finger, pen or mouse: the trigger is pulled where it touches.
//!
//! ```text
//! <SprayStand setup={setup} held={held} turn={turn} alt={told} on_ready={stand} on_stroke={stroke} />
//! ```
//! `on_ready` gets a [`Stand`], by which the page waits and takes the run; `on_stroke` is told when a stroke begins and ends.

mod easel;
mod face;
mod map;
mod mark;
mod scale;
mod turn;

use crate::device::pointer;
use crate::spraying::{NoPath, Path, Setup, Sprayer};
use easel::Easel;
pub(in crate::app) use easel::Held;
pub(in crate::app) use map::{FilmMap, FilmScale};
pub(in crate::app) use scale::Marks;
use std::rc::Rc;
pub(in crate::app) use turn::Turn;
use web_sys::Element;
use yew::prelude::*;

/// What a page may ask of the stand.
#[derive(Clone, PartialEq)]
pub(in crate::app) struct Stand(Easel);

impl Stand {
    /// Waits with the trigger let go, s.
    pub(in crate::app) fn wait(&self, seconds: f64) {
        self.0.wait(seconds);
    }

    /// Whether nothing was sprayed yet.
    pub(in crate::app) fn is_bare(&self) -> bool {
        self.0.filled().0
    }

    /// Whether no further stroke fits.
    pub(in crate::app) fn is_full(&self) -> bool {
        self.0.filled().1
    }

    /// The path of the run, and the gun that laid it.
    pub(in crate::app) fn done(&self) -> Result<(Path, Sprayer), NoPath> {
        self.0.done()
    }
}

#[derive(Properties)]
pub(in crate::app) struct SprayStandProps {
    pub(in crate::app) setup: Rc<Setup>,
    pub(in crate::app) held: Held,
    pub(in crate::app) turn: Turn,
    /// What the picture shows, for those who do not see it.
    pub(in crate::app) alt: AttrValue,
    pub(in crate::app) on_ready: Callback<Stand>,
    /// A stroke begins (true) or ends.
    pub(in crate::app) on_stroke: Callback<bool>,
}

impl PartialEq for SprayStandProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.setup, &other.setup)
            && (self.held, self.turn, &self.alt) == (other.held, other.turn, &other.alt)
            && (&self.on_ready, &self.on_stroke) == (&other.on_ready, &other.on_stroke)
    }
}

#[component]
pub(in crate::app) fn SprayStand(props: &SprayStandProps) -> Html {
    let (canvas, gun) = (use_node_ref(), use_node_ref());
    let easel = use_memo((), {
        let nodes = [canvas.clone(), gun.clone()];
        let (setup, held, turn) = (Rc::clone(&props.setup), props.held, props.turn);
        move |()| Easel::new(nodes, &setup, held, turn)
    });
    use_effect_with((), {
        let (easel, on_ready) = (Rc::clone(&easel), props.on_ready.clone());
        move |()| {
            easel.show();
            on_ready.emit(Stand((*easel).clone()));
            move || easel.stop()
        }
    });
    use_effect_with((props.held, props.turn), {
        let easel = Rc::clone(&easel);
        move |(held, turn)| easel.hold(*held, *turn)
    });
    let onpointerdown = {
        let (easel, on_stroke) = (Rc::clone(&easel), props.on_stroke.clone());
        Callback::from(move |event: PointerEvent| {
            if event.button() != 0 || !easel.pull(event.pointer_id(), pointer::sample(&event)) {
                return;
            }
            if let Some(element) = event.target_dyn_into::<Element>() {
                pointer::capture(&element, &event);
            }
            on_stroke.emit(true);
        })
    };
    let onpointermove = {
        let easel = Rc::clone(&easel);
        Callback::from(move |event: PointerEvent| {
            pointer::each_sample(&event, |sample| easel.go(event.pointer_id(), sample));
        })
    };
    let onpointerup = {
        let (easel, on_stroke) = (Rc::clone(&easel), props.on_stroke.clone());
        Callback::from(move |event: PointerEvent| {
            if easel.let_go(event.pointer_id(), pointer::sample(&event)) {
                on_stroke.emit(false);
            }
        })
    };
    let onpointercancel = onpointerup.clone();
    let grid = props.setup.grid();
    let (view, turned) = props.turn.drawn(grid);
    html! {
        <div class="spray-stand">
            <canvas key="film" class="spray-film" ref={canvas} role="img" aria-label={props.alt.clone()}
                {onpointerdown} {onpointermove} {onpointerup} {onpointercancel}></canvas>
            <svg key="over" class="spray-over" viewBox={view} aria-hidden="true" focusable="false">
                <g transform={turned}>
                    <path key="outline" class="spray-outline" d={outline(&props.setup)} />
                    <circle key="gun" ref={gun} class="spray-gun" r="1" />
                </g>
            </svg>
        </div>
    }
}

/// The outline of the work as a path, mm.
fn outline(setup: &Setup) -> String {
    let places = setup.outline.places().iter().enumerate();
    let line: String =
        places.map(|(nth, (x, y))| format!("{}{x:.1} {y:.1}", if nth == 0 { "M" } else { "L" })).collect();
    line + "Z"
}
