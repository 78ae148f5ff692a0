//! One panel on the bench: its picture, its parts in words, the loupe over it.

use super::easel::Easel;
use super::lamp::{LampAt, low};
use super::place::{Cell, HEIGHT, MIDDLE, Place, WIDTH, percent};
use super::told::Told;
use super::words::{Cells, Walked};
use super::{Seen, loupe, ring};
use crate::app::state::use_shop;
use crate::card::scene;
use crate::picture::Recipe;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct FaceProps {
    pub(super) recipe: Recipe,
    pub(super) alt: AttrValue,
    /// Sets the ids of its cells apart.
    pub(super) id: AttrValue,
    /// Its place among the panels of the bench.
    pub(super) number: usize,
    /// What it tells, once it is drawn.
    pub(super) told: Option<Rc<Told>>,
    pub(super) lamp: LampAt,
    pub(super) eye: Option<Place>,
    pub(super) ring: ring::Hold,
    pub(super) outlined: bool,
    /// The cell that was come to, and whether cells are shown.
    pub(super) cell: Option<Cell>,
    pub(super) in_words: bool,
    pub(super) place: Option<Place>,
    pub(super) words: Callback<Seen, AttrValue>,
    pub(super) on_drawn: Callback<Rc<Told>>,
    pub(super) on_cell: Callback<Walked>,
    pub(super) on_eye: Callback<Place>,
    pub(super) on_place: Callback<Place>,
}

#[component]
pub(super) fn Face(props: &FaceProps) -> Html {
    let shop = use_shop();
    let (picture, glass) = (use_node_ref(), use_node_ref());
    let easel = use_memo((), {
        let canvases = [picture.clone(), glass.clone()];
        let (lamp, on_drawn) = (props.lamp.shone(), props.on_drawn.clone());
        move |()| Easel::new(canvases, lamp, on_drawn)
    });
    // Before it is drawn: a panel that stands ready tells at once how its fault is shown.
    use_effect_with(props.outlined, {
        let easel = Rc::clone(&easel);
        move |outlined| easel.outline(*outlined)
    });
    use_effect_with(props.recipe.clone(), {
        let easel = Rc::clone(&easel);
        move |recipe| easel.draw(recipe.clone())
    });
    use_effect_with(props.lamp, {
        let easel = Rc::clone(&easel);
        move |lamp| easel.light(lamp.shone())
    });
    use_effect_with(props.eye, {
        let easel = Rc::clone(&easel);
        move |eye| easel.look(*eye)
    });
    use_effect_with((), {
        let easel = Rc::clone(&easel);
        move |()| move || easel.stop()
    });
    let part = |cell: Cell| props.told.as_ref().map(|told| told.part(cell)).unwrap_or_default();
    let tell = |cell: Cell| {
        let share = part(cell).share;
        props.words.emit(Seen { panel: props.number, cell, share })
    };
    let now = props.cell.unwrap_or_default();
    let cells = Cells {
        id: &props.id,
        now,
        // What is told of a cell is what a key there points at.
        at: part(now).at.filter(|_| scene::is_told(part(now).share)),
        shown: props.in_words,
        on_cell: &props.on_cell,
        on_place: &props.on_place,
    };
    html! {
        <div class="panel-face">
            <canvas key="picture" class="panel-picture" ref={picture} role="img" aria-label={props.alt.clone()}></canvas>
            { low(props.lamp) }
            { cells.draw(&shop, tell) }
            <canvas key="glass" class="panel-glass" ref={glass} aria-hidden="true" hidden={props.eye.is_none()}></canvas>
            { ring::ring(props.eye, &props.ring, &props.on_eye, &props.on_place) }
            { mark(props.place.and_then(|place| loupe::seen_at(place, props.eye))) }
        </div>
    }
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
