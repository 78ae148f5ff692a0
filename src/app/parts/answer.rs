//! The place for an answer, in the form that the card asks for.

use super::choices::{Choices, choices};
use super::diagnosis::diagnosis_field;
use super::number::number_field;
use super::order::OrderField;
use crate::app::state::Shop;
use crate::card::{Answer, Card, Kind, Slate};
use yew::prelude::*;

/// `group` keeps two answers on one screen apart.
pub(in crate::app) fn answer_field(
    shop: &Shop,
    card: &Card,
    slate: &Slate,
    on_slate: &Callback<Slate>,
    group: &'static str,
) -> Html {
    let voice = shop.voice();
    let labels: Vec<AttrValue> =
        card.options.iter().map(|option| voice.answer(&card.family, option).into()).collect();
    let kind = card.kind;
    let label = voice.ask(card);
    match kind {
        Kind::ChooseOne | Kind::ChooseAll => {
            let (picked, many, slate) = (marks(slate), kind == Kind::ChooseAll, slate.clone());
            let on_pick = on_slate.reform(move |option| slate.clone().pick(kind, option));
            choices(shop, &Choices { labels, label, group: group.into(), picked, many, on_pick })
        }
        Kind::Order => {
            let (places, slate) = (slate.marks.clone(), slate.clone());
            let on_move = on_slate.reform(move |(place, down)| slate.clone().moved(place, down));
            html! { <OrderField {labels} {label} {group} {places} {on_move} /> }
        }
        Kind::Point => {
            let said = if slate.place.is_some() { "card.place-marked" } else { "card.place-wanted" };
            html! { <p class="kraft pointed" role="status">{ shop.say(said) }</p> }
        }
        Kind::Spray => {
            let said = match &slate.run {
                Some(run) => voice.answer(&card.family, &Answer::Run((**run).clone())).into(),
                None => shop.say("card.run-wanted"),
            };
            html! { <p class="kraft pointed" role="status">{ said }</p> }
        }
        Kind::Diagnose => diagnosis_field(shop, card, slate, on_slate, group),
        Kind::Number => number_field(shop, label, group, slate, card.unit, on_slate),
    }
}

/// What shows as picked: nothing while "not enough is told" is the answer.
fn marks(slate: &Slate) -> Vec<usize> {
    if slate.not_enough { Vec::new() } else { slate.marks.clone() }
}
