//! The panels of a card that is looked at.

use super::panel::{Panel, Place, Seen};
use crate::app::state::Shop;
use crate::card::{Card, Kind, Place as Pointed, Slate, scene};
use crate::picture::Recipe;
use std::rc::Rc;
use yew::prelude::*;

/// The panels of a card, from left to right; nothing on a card that is read. Where a card asks for a place, a tap on its
/// panel is one.
pub(in crate::app) fn card_panels(
    shop: &Shop,
    card: &Rc<Card>,
    slate: &Slate,
    on_slate: &Callback<Slate>,
) -> Html {
    let panels = scene::panels(card, shop.content());
    if panels.is_empty() {
        return Html::default();
    }
    let point = card.kind == Kind::Point;
    let place = slate.place.filter(|_| point && !slate.not_enough).map(|at| Place { x: at.x_mm, y: at.y_mm });
    let on_place = on_slate.reform({
        let slate = slate.clone();
        move |at: Place| {
            if point { slate.clone().pointed(Pointed { x_mm: at.x, y_mm: at.y }) } else { slate.clone() }
        }
    });
    let several = panels.len() > 1;
    let face = |(number, recipe): (usize, Recipe)| {
        let words = {
            let (shop, card) = (shop.clone(), Rc::clone(card));
            Callback::from(move |seen: Seen| {
                AttrValue::from(shop.voice().cell_words(&card, number, seen.share))
            })
        };
        let alt = shop.voice().panel_words(card, number);
        let side = if number == 0 { "panel.left" } else { "panel.right" };
        html! {
            <div key={number} class="card-panel">
                <h3 hidden={!several}>{ shop.say(side) }</h3>
                <Panel {recipe} {alt} {words} {place} on_place={on_place.clone()} />
            </div>
        }
    };
    html! { <div key="panels" class={classes!("card-panels", several.then_some("two"))}>{ for panels.into_iter().enumerate().map(face) }</div> }
}
