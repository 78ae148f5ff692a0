//! Panels of finished wood that are looked at: under one lamp that one moves, closer, and in words.
//!
//! ```text
//! <Panel faces={vec![Shown { recipe, alt, name }]} words={told} on_place={picked} place={Some(place)} />
//! ```
//! The pictures are drawn from the recipes and nothing else. Two of them lie side by side under the same lamp and loupe.
//! `words` tells a cell in words and never names the fault; `on_place` gets the place, in mm, that was tapped or chosen by
//! keys, and `place` is what is marked. `tried` is the test that is done on them. `answered` draws a line round the fault.
//! What stands in `below` lies under the tools.

mod easel;
mod face;
mod kept;
mod lamp;
mod loupe;
mod place;
mod rail;
mod ring;
mod still;
mod told;
mod tried;
mod words;

pub(in crate::app) use kept::use_ahead;
pub(in crate::app) use place::Place;
pub(in crate::app) use still::{Still, column_letter};
pub(in crate::app) use tried::Tried;

use super::{Picture, icon};
use crate::app::state::{Shop, use_shop};
use crate::picture::{LampKind, Recipe};
use face::Face;
use lamp::{LampAt, lamp_choice, steps};
use place::{Cell, MIDDLE};
use rail::{DEGREES, MILLIMETRES, Rail, Way};
use std::rc::Rc;
use told::Told;
use tried::use_tried;
use words::Walked;
use yew::prelude::*;

/// A panel that is shown.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Shown {
    /// What is drawn; another recipe is drawn anew.
    pub(in crate::app) recipe: Recipe,
    /// What the picture shows, for those who do not see it.
    pub(in crate::app) alt: AttrValue,
    /// What stands over it; nothing where it is empty.
    pub(in crate::app) name: AttrValue,
}

/// A cell of a panel, as it is to be told in words.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::app) struct Seen {
    /// The panel, counted from the left, the first as 0.
    pub(in crate::app) panel: usize,
    pub(in crate::app) cell: Cell,
    /// Share of it that the fault takes, 0 to 1.
    pub(in crate::app) share: f32,
}

#[derive(Properties, PartialEq)]
pub(in crate::app) struct PanelProps {
    /// From left to right.
    pub(in crate::app) faces: Vec<Shown>,
    /// Tells a cell in words.
    pub(in crate::app) words: Callback<Seen, AttrValue>,
    /// The place that is marked.
    #[prop_or_default]
    pub(in crate::app) place: Option<Place>,
    /// Gets the place that was pointed at.
    pub(in crate::app) on_place: Callback<Place>,
    /// A test that is done: it turns the lamp that it needs on, or lays the loupe on.
    #[prop_or_default]
    pub(in crate::app) tried: Option<Tried>,
    /// The answer is given: where the fault is may be shown.
    #[prop_or_default]
    pub(in crate::app) answered: bool,
    #[prop_or_default]
    pub(in crate::app) below: Html,
}

#[component]
pub(in crate::app) fn Panel(props: &PanelProps) -> Html {
    let shop = use_shop();
    let number = use_memo((), |()| own_number());
    let lamp = use_state_eq(LampAt::default);
    let cell = use_state_eq(|| None::<(usize, Cell)>);
    let in_words = use_state_eq(|| false);
    let lined = use_state_eq(|| true);
    let told = use_mut_ref(Vec::<Option<Rc<Told>>>::new);
    let drawn = use_force_update();
    let held = use_mut_ref(Held::default);
    let eye = use_state_eq(|| None::<Place>);
    let first = told.borrow().first().cloned().flatten();
    use_tried(props.tried.as_ref(), first, &lamp, &eye);
    let on_lamp = {
        let set = lamp.setter();
        Callback::from(move |to: LampAt| set.set(to))
    };
    let held = held.borrow();
    let rail = |way: Way| rail(&shop, *lamp, way, props.faces.len(), &held, &on_lamp);
    let on_eye = {
        let (set, looks) = (eye.setter(), eye.is_some());
        Callback::from(move |to: Place| set.set(looks.then_some(to)))
    };
    let told_of = |panel: usize| told.borrow().get(panel).cloned().flatten();
    let face = |(panel, shown): (usize, &Shown)| {
        let on_drawn = {
            let (told, drawn) = (Rc::clone(&told), drawn.clone());
            Callback::from(move |new: Rc<Told>| {
                let told = &mut *told.borrow_mut();
                told.resize_with(told.len().max(panel + 1), || None);
                if let Some(slot) = told.get_mut(panel) {
                    *slot = Some(new);
                }
                drawn.force_update();
            })
        };
        let on_cell = {
            let (set, in_words, on_eye) = (cell.setter(), in_words.setter(), on_eye.clone());
            Callback::from(move |walked: Walked| {
                set.set(Some((panel, walked.cell)));
                on_eye.emit(walked.to);
                if walked.by_key {
                    in_words.set(true);
                }
            })
        };
        html! {
            <div key={panel} class="panel-one">
                <h3 hidden={shown.name.is_empty()}>{ &shown.name }</h3>
                <Face recipe={shown.recipe.clone()} alt={shown.alt.clone()} id={format!("panel-{number}-{panel}")} number={panel}
                    told={told_of(panel)} lamp={*lamp} eye={*eye} ring={Rc::clone(&held.ring)} outlined={props.answered && *lined}
                    cell={cell.filter(|(on, _)| *on == panel).map(|(_, cell)| cell)} in_words={*in_words} place={props.place}
                    words={props.words.clone()} {on_drawn} {on_cell} on_eye={on_eye.clone()} on_place={props.on_place.clone()} />
            </div>
        }
    };
    let tool = |key: &'static str, picture: Picture, on: bool, act: Callback<MouseEvent>| {
        html! {
            <button {key} type="button" class={classes!("control", "wide", on.then_some("picked"))} aria-pressed={on.to_string()} onclick={act}>
                { icon(picture) }{ shop.say(&format!("panel.{key}")) }
            </button>
        }
    };
    let toggle = |state: &UseStateHandle<bool>| {
        let (set, now) = (state.setter(), **state);
        Callback::from(move |_: MouseEvent| set.set(!now))
    };
    let toggle_loupe = {
        let (set, now, first) = (eye.setter(), *eye, props.place.unwrap_or(MIDDLE));
        Callback::from(move |_: MouseEvent| set.set(if now.is_some() { None } else { Some(first) }))
    };
    let in_cell = match *cell {
        Some((panel, cell)) => {
            let share = told_of(panel).map_or(0.0, |told| told.part(cell).share);
            html! { words::told(&shop, cell, &props.words.emit(Seen { panel, cell, share })) }
        }
        None => {
            html! { <>{ shop.say("panel.words-how") }{ " " }<span class="by-keys">{ shop.say("panel.words-by-keys") }</span></> }
        }
    };
    let hatched = props.answered && *lined && told.borrow().iter().flatten().any(|told| told.hatched);
    let several = (props.faces.len() > 1).then_some("two");
    html! {
        <div class={classes!("panel", several, in_words.then_some("worded"))}>
            <div key="bench" class="panel-bench">
                { rail(Way::Along) }
                <div key="faces" class="panel-faces">{ for props.faces.iter().enumerate().map(face) }</div>
                { rail(Way::Across) }
            </div>
            <div key="tools" class="panel-tools">
                { lamp_choice(&shop, *number, *lamp, &on_lamp) }
                { steps(&shop, *lamp, &on_lamp) }
                <div key="looks" class="panel-looks">
                    { tool("closer", Picture::Loupe, eye.is_some(), toggle_loupe) }
                    { tool("words", Picture::Words, *in_words, toggle(&in_words)) }
                    { if props.answered { tool("where", Picture::Outline, *lined, toggle(&lined)) } else { Html::default() } }
                </div>
            </div>
            <p key="hatched" class="panel-hatched note" hidden={!hatched}>{ shop.say("panel.hatched") }</p>
            { props.below.clone() }
            <p key="told" class="panel-told kraft" aria-live="polite" hidden={!*in_words}>{ in_cell }</p>
        </div>
    }
}

/// A rail of the lamp.
fn rail(shop: &Shop, lamp: LampAt, way: Way, panels: usize, held: &Held, on_lamp: &Callback<LampAt>) -> Html {
    let (value, end) = lamp.on(way);
    let rakes = lamp.kind == LampKind::Raking;
    let round = rakes && way == Way::Along;
    let (name, held) = match way {
        Way::Along if round => ("panel.lamp-round", &held.along),
        Way::Along => ("panel.lamp", &held.along),
        Way::Across => ("panel.lamp-far", &held.across),
    };
    let rail = Rail {
        way,
        label: shop.say(name),
        said: lamp.said(shop, way),
        kind: lamp.kind,
        value,
        end,
        steps: if round { DEGREES } else { MILLIMETRES },
        round,
        still: rakes && way == Way::Across,
        panels,
        held: Rc::clone(held),
        on_value: on_lamp.reform(move |value| lamp.moved(way, value)),
    };
    rail.draw()
}

/// A number for each bench: several may stand on one page.
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
