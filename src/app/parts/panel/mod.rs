//! A panel of finished wood that is looked at: under a lamp that one moves, closer, and in words.
//!
//! ```text
//! <Panel recipe={recipe} alt={"Maple, cleared"} words={told} on_place={picked} place={Some(place)} />
//! ```
//! The picture is drawn from the recipe and nothing else. `words` tells a cell in words and never names the fault;
//! `on_place` gets the place, in mm, that was tapped or chosen by keys, and `place` is what is marked.

mod easel;
mod lamp;
mod loupe;
mod place;
mod rail;
mod ring;
mod words;

pub(in crate::app) use place::Place;

use super::{Picture, icon};
use crate::app::state::use_shop;
use crate::picture::{LampKind, Recipe};
use easel::{Easel, Shares};
use lamp::{LampAt, lamp_choice, steps};
use place::{Cell, HEIGHT, MIDDLE, WIDTH, percent};
use rail::{Rail, Way};
use std::rc::Rc;
use words::Walked;
use yew::prelude::*;

/// A cell of the panel, as it is to be told in words.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::app) struct Seen {
    pub(in crate::app) cell: Cell,
    /// Share of it that the fault takes, 0 to 1.
    pub(in crate::app) share: f32,
}

#[derive(Properties, PartialEq)]
pub(in crate::app) struct PanelProps {
    /// What is drawn; another recipe is drawn anew.
    pub(in crate::app) recipe: Recipe,
    /// What the picture shows, for those who do not see it.
    pub(in crate::app) alt: AttrValue,
    /// Tells a cell in words.
    pub(in crate::app) words: Callback<Seen, AttrValue>,
    /// The place that is marked.
    #[prop_or_default]
    pub(in crate::app) place: Option<Place>,
    /// Gets the place that was pointed at.
    pub(in crate::app) on_place: Callback<Place>,
}

#[component]
pub(in crate::app) fn Panel(props: &PanelProps) -> Html {
    let shop = use_shop();
    let number = use_memo((), |()| own_number());
    let lamp = use_state_eq(LampAt::default);
    let cell = use_state_eq(|| None::<Cell>);
    let in_words = use_state_eq(|| false);
    let shares = use_state(Shares::default);
    let tracks = [use_node_ref(), use_node_ref()];
    let held = use_mut_ref(Held::default);
    let eye = use_state_eq(|| None::<Place>);
    let (picture, glass) = (use_node_ref(), use_node_ref());
    let easel = use_memo((), {
        let (canvases, set) = ([picture.clone(), glass.clone()], shares.setter());
        let lamp = lamp.shone();
        move |()| Easel::new(canvases, lamp, Callback::from(move |shares| set.set(shares)))
    });
    use_effect_with(props.recipe.clone(), {
        let easel = Rc::clone(&easel);
        move |recipe| easel.draw(recipe.clone())
    });
    use_effect_with(*lamp, {
        let easel = Rc::clone(&easel);
        move |lamp| easel.light(lamp.shone())
    });
    use_effect_with(*eye, {
        let easel = Rc::clone(&easel);
        move |eye| easel.look(*eye)
    });
    use_effect_with((), {
        let easel = Rc::clone(&easel);
        move |()| move || easel.stop()
    });
    let on_lamp = {
        let set = lamp.setter();
        Callback::from(move |to: LampAt| set.set(to))
    };
    let [along, across] = tracks;
    let held = held.borrow();
    let rail = |way: Way| {
        let at = *lamp;
        let (value, end, track, held) = match way {
            Way::Along => (at.x, WIDTH, &along, &held.along),
            Way::Across => (at.y, HEIGHT, &across, &held.across),
        };
        let rail = Rail {
            way,
            label: shop.say(if way == Way::Along { "panel.lamp" } else { "panel.lamp-far" }),
            said: at.said(&shop, way),
            kind: at.kind,
            value,
            end,
            still: at.kind == LampKind::Raking,
            track: track.clone(),
            held: Rc::clone(held),
            on_value: on_lamp.reform(move |value| at.moved(way, value)),
        };
        rail.draw()
    };
    let tell = {
        let (words, shares) = (props.words.clone(), Rc::clone(&shares));
        move |cell: Cell| {
            let share = shares.get(cell.number()).copied().unwrap_or(0.0);
            words.emit(Seen { cell, share })
        }
    };
    let on_eye = {
        let (set, looks) = (eye.setter(), eye.is_some());
        Callback::from(move |to: Place| set.set(looks.then_some(to)))
    };
    let on_cell = {
        let (set, in_words, on_eye) = (cell.setter(), in_words.setter(), on_eye.clone());
        Callback::from(move |walked: Walked| {
            set.set(Some(walked.cell));
            on_eye.emit(walked.to);
            if walked.by_key {
                in_words.set(true);
            }
        })
    };
    let toggle_words = {
        let (set, now) = (in_words.setter(), *in_words);
        Callback::from(move |_: MouseEvent| set.set(!now))
    };
    let toggle_loupe = {
        let (set, now, first) = (eye.setter(), *eye, props.place.unwrap_or(MIDDLE));
        Callback::from(move |_: MouseEvent| set.set(if now.is_some() { None } else { Some(first) }))
    };
    let told = match *cell {
        Some(cell) => words::told(&shop, cell, &tell(cell)),
        None => shop.say("panel.words-how"),
    };
    html! {
        <div class={classes!("panel", in_words.then_some("worded"))}>
            <div class="panel-bench">
                { rail(Way::Along) }
                <div key="face" class="panel-face">
                    <canvas key="picture" class="panel-picture" ref={picture} role="img" aria-label={props.alt.clone()}></canvas>
                    { words::cells(&shop, *number, (*cell).unwrap_or_default(), *in_words, &tell, &on_cell, &props.on_place) }
                    <canvas key="glass" class="panel-glass" ref={glass} aria-hidden="true" hidden={eye.is_none()}></canvas>
                    { ring::ring(*eye, &held.ring, &on_eye, &props.on_place) }
                    { mark(props.place.and_then(|place| loupe::seen_at(place, *eye))) }
                </div>
                { rail(Way::Across) }
            </div>
            <div class="panel-tools">
                { lamp_choice(&shop, *number, *lamp, &on_lamp) }
                { steps(&shop, *lamp, &on_lamp) }
                <button key="closer" type="button" class={classes!("control", "wide", eye.is_some().then_some("picked"))} aria-pressed={eye.is_some().to_string()} onclick={toggle_loupe}>
                    { icon(Picture::Loupe) }{ shop.say("panel.closer") }
                </button>
                <button key="words" type="button" class={classes!("control", "wide", in_words.then_some("picked"))} aria-pressed={in_words.to_string()} onclick={toggle_words}>
                    { icon(Picture::Words) }{ shop.say("panel.words") }
                </button>
            </div>
            <p class="panel-told kraft" aria-live="polite" hidden={!*in_words}>{ told }</p>
        </div>
    }
}

/// A number for each panel: several may lie on one page.
fn own_number() -> u32 {
    thread_local!(static LAST: std::cell::Cell<u32> = const { std::cell::Cell::new(0) });
    LAST.with(|last| {
        last.set(last.get() + 1);
        last.get()
    })
}

/// What a finger holds of each rail and of the loupe.
#[derive(Debug, Default)]
struct Held {
    along: rail::Hold,
    across: rail::Hold,
    ring: ring::Hold,
}

/// The mark on the place that was pointed at.
fn mark(place: Option<Place>) -> Html {
    let hidden = place.is_none();
    let Place { x, y } = place.unwrap_or(MIDDLE);
    html! {
        <svg key="mark" class="panel-mark" aria-hidden="true" focusable="false" {hidden}>
            <svg x={percent(x, WIDTH)} y={percent(y, HEIGHT)} class="at">
                <circle class="under" r="16" /><circle class="over" r="16" />
                <path class="under" d="M-24 0h14M10 0h14M0-24v14M0 10v14" /><path class="over" d="M-24 0h14M10 0h14M0-24v14M0 10v14" />
            </svg>
        </svg>
    }
}
