//! The place for an answer, in the form that the card asks for.

use super::choices::Choices;
use super::number::NumberField;
use super::order::OrderField;
use crate::app::state::use_shop;
use crate::card::{Card, Kind, Slate};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct AnswerFieldProps {
    pub(in crate::app) card: Rc<Card>,
    pub(in crate::app) slate: Slate,
    pub(in crate::app) on_slate: Callback<Slate>,
    /// Keeps two answers on one screen apart.
    pub(in crate::app) group: &'static str,
}

#[component]
pub(in crate::app) fn AnswerField(props: &AnswerFieldProps) -> Html {
    let shop = use_shop();
    let voice = shop.voice();
    let (card, slate, group) = (&props.card, &props.slate, props.group);
    let labels: Vec<AttrValue> =
        card.options.iter().map(|option| voice.answer(&card.family, option).into()).collect();
    let kind = card.kind;
    let on_pick = use_callback((slate.clone(), props.on_slate.clone()), move |option: usize, (slate, on)| {
        on.emit(slate.clone().pick(kind, option));
    });
    let on_move = use_callback((slate.clone(), props.on_slate.clone()), |(place, down), (slate, on)| {
        on.emit(slate.clone().moved(place, down));
    });
    let label = voice.ask(card);
    match kind {
        Kind::ChooseOne | Kind::ChooseAll => html! {
            <Choices {labels} {label} {group} picked={marks(slate)} many={kind == Kind::ChooseAll} {on_pick} />
        },
        Kind::Order => html! {
            <OrderField {labels} {label} {group} places={slate.marks.clone()} {on_move} />
        },
        Kind::Number => html! {
            <NumberField {label} {group} slate={slate.clone()} asked={card.unit} on_slate={props.on_slate.clone()} />
        },
    }
}

/// What shows as picked: nothing while "not enough is told" is the answer.
fn marks(slate: &Slate) -> Vec<usize> {
    if slate.not_enough { Vec::new() } else { slate.marks.clone() }
}
