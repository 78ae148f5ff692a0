//! Panels of finished wood that are looked at: under one lamp that one moves, closer, and in words.
//!
//! ```text
//! <Panel faces={vec![Shown { recipe, alt, name }]} words={told} on_place={picked} place={Some(place)} />
//! ```
//! The pictures are drawn from the recipes and nothing else. Two of them lie side by side under the same lamp and loupe.
//! `words` tells a cell in words and never names the fault; `on_place` gets the place, in mm, that was tapped or chosen by
//! keys, and `place` is what is marked. `tried` is the test that is done on them. `answered` draws a line round the fault.
//! What stands in `below` lies under the tools.

mod bench;
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
use bench::{Bench, use_bench};
use face::Face;
use lamp::{lamp_choice, steps};
use place::{Cell, MIDDLE};
use rail::{DEGREES, MILLIMETRES, Rail, Way};
use std::rc::Rc;
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
    let bench = use_bench(props.tried.as_ref());
    let panels = props.faces.len();
    let several = (panels > 1).then_some("two");
    let hatched = props.answered && *bench.lined && bench.is_hatched();
    html! {
        <div class={classes!("panel", several, bench.in_words.then_some("worded"))}>
            <div key="bench" class="panel-bench">
                { rail(&shop, &bench, Way::Along, panels) }
                <div key="faces" class="panel-faces">{ for (0..panels).filter_map(|panel| face(&bench, props, panel)) }</div>
                { rail(&shop, &bench, Way::Across, panels) }
            </div>
            <div key="tools" class="panel-tools">
                { lamp_choice(&shop, bench.number, *bench.lamp, &bench.on_lamp()) }
                { steps(&shop, *bench.lamp, &bench.on_lamp()) }
                { looks(&shop, &bench, props) }
            </div>
            <p key="hatched" class="panel-hatched note" hidden={!hatched}>{ shop.say("panel.hatched") }</p>
            { props.below.clone() }
            <p key="told" class="panel-told kraft" aria-live="polite" hidden={!*bench.in_words}>{ in_cell(&shop, &bench, &props.words) }</p>
        </div>
    }
}

/// A panel, with its name over it.
fn face(bench: &Bench, props: &PanelProps, panel: usize) -> Option<Html> {
    let shown = props.faces.get(panel)?;
    Some(html! {
        <div key={panel} class="panel-one">
            <h3 hidden={shown.name.is_empty()}>{ &shown.name }</h3>
            <Face recipe={shown.recipe.clone()} alt={shown.alt.clone()} id={format!("panel-{}-{panel}", bench.number)} number={panel}
                told={bench.told_of(panel)} lamp={*bench.lamp} eye={*bench.eye} ring={Rc::clone(&bench.held.ring)} outlined={props.answered && *bench.lined}
                cell={bench.cell.filter(|(on, _)| *on == panel).map(|(_, cell)| cell)} in_words={*bench.in_words} place={props.place}
                words={props.words.clone()} on_drawn={bench.on_drawn(panel)} on_cell={bench.on_cell(panel)} on_eye={bench.on_eye()} on_place={props.on_place.clone()} />
        </div>
    })
}

/// The ways of looking: closer, in words, at where the fault is.
fn looks(shop: &Shop, bench: &Bench, props: &PanelProps) -> Html {
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
    let toggle_loupe = bench.toggle_loupe(props.place.unwrap_or(MIDDLE));
    html! {
        <div key="looks" class="panel-looks">
            { tool("closer", Picture::Loupe, bench.eye.is_some(), toggle_loupe) }
            { tool("words", Picture::Words, *bench.in_words, toggle(&bench.in_words)) }
            { if props.answered { tool("where", Picture::Outline, *bench.lined, toggle(&bench.lined)) } else { Html::default() } }
        </div>
    }
}

/// The cell that was come to, in words; before one was, how that is done.
fn in_cell(shop: &Shop, bench: &Bench, words: &Callback<Seen, AttrValue>) -> Html {
    let Some((panel, cell)) = *bench.cell else {
        return html! { <>{ shop.say("panel.words-how") }{ " " }<span class="by-keys">{ shop.say("panel.words-by-keys") }</span></> };
    };
    let share = bench.told_of(panel).map_or(0.0, |told| told.part(cell).share);
    html! { words::told(shop, cell, &words.emit(Seen { panel, cell, share })) }
}

/// A rail of the lamp.
fn rail(shop: &Shop, bench: &Bench, way: Way, panels: usize) -> Html {
    let lamp = *bench.lamp;
    let (value, end) = lamp.on(way);
    let rakes = lamp.kind == LampKind::Raking;
    let round = rakes && way == Way::Along;
    let (name, held) = match way {
        Way::Along if round => ("panel.lamp-round", &bench.held.along),
        Way::Along => ("panel.lamp", &bench.held.along),
        Way::Across => ("panel.lamp-far", &bench.held.across),
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
        on_value: bench.on_lamp().reform(move |value| lamp.moved(way, value)),
    };
    rail.draw()
}
