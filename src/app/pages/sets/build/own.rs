//! Cards of the shop's own: those in the set, and writing another.

use super::Building;
use super::own_card::NewOwnCard;
use crate::app::parts::{Picture, icon};
use crate::app::state::{Shop, use_shop};
use crate::exchange::set::{OWN_CARDS_MOST, OwnCard};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct OwnCardsProps {
    pub(super) building: Building,
}

#[component]
pub(super) fn OwnCards(props: &OwnCardsProps) -> Html {
    let shop = use_shop();
    let building = &props.building;
    let writing = use_state(|| false);
    let cards = &building.set.own_cards;
    let full = cards.len() >= OWN_CARDS_MOST;
    let add = {
        let writing = writing.setter();
        Callback::from(move |_: MouseEvent| writing.set(true))
    };
    let on_end = {
        let writing = writing.setter();
        Callback::from(move |()| writing.set(false))
    };
    html! {
        <section class="own-cards">
            <h3>{ shop.say("sets.build.own.head") }</h3>
            <p key="lead" class="note">{ shop.say("sets.build.own.lead") }</p>
            <ul key="rows" class="rows" hidden={cards.is_empty()}>{ for cards.iter().enumerate().map(|card| row(&shop, building, card)) }</ul>
            <div key="form">
                if *writing { <NewOwnCard building={building.clone()} {on_end} /> }
            </div>
            <button key="add" type="button" class="control" hidden={*writing || full} onclick={add}>{ icon(Picture::Pencil) }{ shop.say("sets.build.own.add") }</button>
            <p key="full" class="note" hidden={!full}>{ shop.say_with("sets.build.own.full", &[("most", OWN_CARDS_MOST.to_string())]) }</p>
        </section>
    }
}

/// A card that is in the set, and taken out of it.
fn row(shop: &Shop, building: &Building, (nth, card): (usize, &OwnCard)) -> Html {
    let onclick = building.change(move |set, _: MouseEvent| drop(set.own_cards.remove(nth)));
    let named = [("question", card.question.clone())];
    html! {
        <li key={card.id()}><span class="words"><b>{ &card.question }</b><span class="note">{ card.options.join(", ") }</span></span>
            <button type="button" class="control square" aria-label={shop.say_with("sets.build.own.remove", &named)} {onclick}>{ icon(Picture::Cross) }</button></li>
    }
}
