//! A card that is sprayed: the way to its stand, and the stand in the place of the card.

use crate::app::pages::spray::CardStand;
use crate::app::parts::{Picture, icon};
use crate::app::state::Shop;
use crate::card::{Card, Kind, Slate};
use crate::spraying::{Run, Setup};
use std::rc::Rc;
use yew::prelude::*;

/// The stand of a card that is sprayed, in the place of the card; what is sprayed there is its answer.
pub(in crate::app::pages) fn stand(
    setup: Rc<Setup>,
    cautions: Vec<AttrValue>,
    slate: &Slate,
    on_slate: &Callback<Slate>,
    at_stand: &UseStateHandle<bool>,
) -> Html {
    let leave = {
        let set = at_stand.setter();
        Callback::from(move |()| set.set(false))
    };
    let on_run = {
        let (slate, on_slate, leave) = (slate.clone(), on_slate.clone(), leave.clone());
        Callback::from(move |run: Run| {
            on_slate.emit(slate.clone().sprayed(run));
            leave.emit(());
        })
    };
    html! { <CardStand key="stand" {setup} {cautions} {on_run} on_leave={leave} /> }
}

/// The way to the stand of a card that is sprayed.
pub(in crate::app::pages) fn to_stand(
    shop: &Shop,
    card: &Card,
    slate: &Slate,
    at_stand: &UseStateHandle<bool>,
) -> Html {
    if card.kind != Kind::Spray {
        return Html::default();
    }
    let go = {
        let set = at_stand.setter();
        Callback::from(move |_: MouseEvent| set.set(true))
    };
    let key = if slate.run.is_some() { "card.spray-anew" } else { "card.to-stand" };
    html! { <button key="to-stand" type="button" class="control" onclick={go}>{ shop.say(key) }{ icon(Picture::Go) }</button> }
}
