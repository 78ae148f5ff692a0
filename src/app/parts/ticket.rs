//! The job ticket: the situation, with every figure that the question depends on in its place.

use crate::app::state::Shop;
use crate::card::Card;
use yew::prelude::*;

pub(in crate::app) fn card_ticket(shop: &Shop, card: &Card) -> Html {
    let voice = shop.voice();
    let facts = voice.facts(card);
    let cell = |(name, value): &(&str, String)| {
        let (figure, unit) = figure_and_unit(value);
        html! {
            <div key={(*name).to_owned()} class={classes!("fact", unit.is_none().then_some("words"))}>
                <dt>{ *name }</dt>
                <dd>{ figure }<small>{ unit.unwrap_or_default() }</small></dd>
            </div>
        }
    };
    html! {
        <section key="ticket" class="ticket" aria-label={shop.say("card.situation")}>
            <span class="hole" aria-hidden="true"></span>
            <p class="story">{ voice.story(card) }</p>
            <dl class="facts" hidden={facts.is_empty()}>{ for facts.iter().map(cell) }</dl>
        </section>
    }
}

/// The card that was answered, to be opened and looked at again.
pub(in crate::app) fn seen_card(shop: &Shop, card: &Card) -> Html {
    html! {
        <details key="card" class="seen">
            <summary>{ shop.say("verdict.card") }</summary>
            { card_ticket(shop, card) }
            <p class="asked">{ shop.voice().ask(card) }</p>
        </details>
    }
}

/// Parts `12.5 °C` into figure and unit; words stay whole, whatever they begin with.
fn figure_and_unit(value: &str) -> (String, Option<String>) {
    let bare = value.strip_prefix(['-', 'P']).unwrap_or(value);
    let number = bare.starts_with(|first: char| first.is_ascii_digit());
    match value.split_once(' ') {
        Some((figure, unit)) if number => (figure.to_owned(), Some(format!(" {unit}"))),
        None if number => (value.to_owned(), Some(String::new())),
        _ => (value.to_owned(), None),
    }
}
