//! The panels of a card that is looked at.

use super::panel::{Panel, Place, Seen, Shown, Tried};
use crate::app::state::Shop;
use crate::card::{Card, Kind, Place as Pointed, Slate, scene};
use crate::content::View;
use crate::picture::Probe;
use std::rc::Rc;
use yew::prelude::*;

/// Id of the panels, which take the focus where a place on one is what an answer wants still.
pub(in crate::app) const PANELS: &str = "card-panels";

/// The panels of a card, the first one first, before it is answered; nothing on a card that is read. Where a card asks for a
/// place, a tap on its panel is one. What stands in `below` lies under them.
pub(in crate::app) fn card_panels(
    shop: &Shop,
    card: &Rc<Card>,
    slate: &Slate,
    on_slate: &Callback<Slate>,
    below: Html,
) -> Html {
    let place = slate.place.filter(|_| !slate.not_enough);
    let tried = slate.named.shown.as_ref().map(|test| Tried {
        test: test.clone().into(),
        view: shop.content().fact(test).and_then(|fact| fact.view),
    });
    panels(shop, card, place, &pointing(card, slate, on_slate), Now::Tested(tried, below))
}

/// The panels of a card that was answered: named, the fault with a line round it, the place that was tapped marked.
pub(in crate::app) fn answered_panels(
    shop: &Shop,
    card: &Rc<Card>,
    place: Option<Pointed>,
    on_place: &Callback<Place>,
) -> Html {
    panels(shop, card, place, on_place, Now::Answered)
}

/// What a tap on the panel makes of the answer.
pub(in crate::app) fn pointing(card: &Card, slate: &Slate, on_slate: &Callback<Slate>) -> Callback<Place> {
    let (point, slate) = (card.kind == Kind::Point, slate.clone());
    on_slate.reform(move |at: Place| {
        if point { slate.clone().pointed(Pointed { x_mm: at.x, y_mm: at.y }) } else { slate.clone() }
    })
}

/// How far a card has come: the test that is looked at and what stands below the panels, or the answer is given.
enum Now {
    Tested(Option<Tried>, Html),
    Answered,
}

fn panels(
    shop: &Shop,
    card: &Rc<Card>,
    place: Option<Pointed>,
    on_place: &Callback<Place>,
    now: Now,
) -> Html {
    let (tried, below, answered) = match now {
        Now::Tested(tried, below) => (tried, below, false),
        Now::Answered => (None, Html::default(), true),
    };
    let mut recipes = scene::panels(card, shop.content());
    let view = tried.as_ref().and_then(|tried| tried.view);
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
        let side = if number == 0 { "panel.first" } else { "panel.second" };
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
        <div key="panels" id={PANELS} tabindex="-1" class={classes!("card-panels", several.then_some("two"))}>
            <Panel {faces} {words} {place} on_place={on_place.clone()} {tried} {answered} {below} />
        </div>
    }
}
