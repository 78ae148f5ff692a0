//! The panels of a card that is looked at.

use super::panel::{Panel, Place, Seen, Shown};
use crate::app::state::Shop;
use crate::card::{Card, Kind, Place as Pointed, Slate, scene};
use crate::content::View;
use crate::picture::Probe;
use std::rc::Rc;
use yew::prelude::*;

/// The panels of a card, from left to right, before it is answered; nothing on a card that is read. Where a card asks for a
/// place, a tap on its panel is one.
pub(in crate::app) fn card_panels(
    shop: &Shop,
    card: &Rc<Card>,
    slate: &Slate,
    on_slate: &Callback<Slate>,
) -> Html {
    let place = slate.place.filter(|_| !slate.not_enough);
    let shown = slate.named.shown.as_deref().and_then(|test| shop.content().fact(test));
    panels(shop, card, place, &pointing(card, slate, on_slate), shown.and_then(|test| test.view), false)
}

/// The panels of a card that was answered: named, the fault with a line round it, the place that was tapped marked.
pub(in crate::app) fn answered_panels(
    shop: &Shop,
    card: &Rc<Card>,
    place: Option<Pointed>,
    on_place: &Callback<Place>,
) -> Html {
    panels(shop, card, place, on_place, None, true)
}

/// What a tap on the panel makes of the answer.
pub(in crate::app) fn pointing(card: &Card, slate: &Slate, on_slate: &Callback<Slate>) -> Callback<Place> {
    let (point, slate) = (card.kind == Kind::Point, slate.clone());
    on_slate.reform(move |at: Place| {
        if point { slate.clone().pointed(Pointed { x_mm: at.x, y_mm: at.y }) } else { slate.clone() }
    })
}

fn panels(
    shop: &Shop,
    card: &Rc<Card>,
    place: Option<Pointed>,
    on_place: &Callback<Place>,
    view: Option<View>,
    answered: bool,
) -> Html {
    let mut recipes = scene::panels(card, shop.content());
    if let Some(probe) = view.map(View::probe).filter(|probe| *probe != Probe::None) {
        recipes.iter_mut().for_each(|recipe| recipe.probe = probe);
    }
    if recipes.is_empty() {
        return Html::default();
    }
    let several = recipes.len() > 1;
    let place = place.filter(|_| card.kind == Kind::Point).map(|at| Place { x: at.x_mm, y: at.y_mm });
    let named = |number: usize| shop.voice().panel_name(card, number);
    let shown = |(number, recipe)| {
        let side = if number == 0 { "panel.left" } else { "panel.right" };
        let side = if several { shop.say(side) } else { AttrValue::default() };
        let words = shop.voice().panel_words(card, number);
        let (alt, name) = match (answered, several) {
            (false, _) => (words, side),
            (true, false) => (format!("{} {words}", named(number)), named(number).into()),
            (true, true) => {
                (format!("{} {words}", named(number)), format!("{side}: {}", named(number)).into())
            }
        };
        Shown { recipe, alt: alt.into(), name }
    };
    let words = {
        let (shop, card) = (shop.clone(), Rc::clone(card));
        Callback::from(move |seen: Seen| {
            let words = shop.voice().cell_words(&card, seen.panel, seen.share);
            let fault =
                shop.voice().fault_name(&card, seen.panel).filter(|_| answered && scene::is_told(seen.share));
            AttrValue::from(match fault {
                Some(fault) => format!("{fault}. {words}"),
                None => words,
            })
        })
    };
    let faces: Vec<Shown> = recipes.into_iter().enumerate().map(shown).collect();
    html! {
        <div key="panels" class={classes!("card-panels", several.then_some("two"))}>
            <Panel {faces} {words} {place} on_place={on_place.clone()} {view} {answered} />
        </div>
    }
}
