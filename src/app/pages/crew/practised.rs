//! Kinds of card that have answers from practice alone: each leads to one of them, where it can be said that it is wrong.

use super::card_title::card_title;
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::{SetsContext, Shop};
use crate::exchange::crew::Practised;
use crate::record::Voids;
use yew::prelude::*;

pub(super) fn practised_section(
    shop: &Shop,
    sets: &SetsContext,
    all: &[Practised],
    voids: &Voids<'_>,
) -> Html {
    let row = |one: &Practised| {
        let family = one.kind.family.as_str();
        let title = card_title(shop, sets, family);
        let told = [("n", one.answers.to_string()), ("right", one.right.to_string())];
        let to = Route::CrewAnswer { device: one.example.device.clone(), sequence: one.example.sequence };
        let void = voids.of_cards(family, one.kind.version).is_some();
        html! {
            <li key={format!("{family}-{}", one.kind.version)}>
                <a href={to.address()} class="row-link">
                    <span class="words"><b>{ title }</b><span>{ shop.say_with("crew.items.practised-counts", &told) }</span>
                        <span class="struck-out" hidden={!void}>{ shop.say("record.void") }</span></span>
                    { icon(Picture::Go) }
                </a>
            </li>
        }
    };
    html! {
        <section key="practised" hidden={all.is_empty()}>
            <h2>{ shop.say("crew.items.practised") }</h2>
            <p class="note">{ shop.say("crew.items.practised-why") }</p>
            <details class="seen">
                <summary>{ shop.say_with("crew.items.practised-kinds", &[("n", all.len().to_string())]) }</summary>
                <ul class="rows links">{ for all.iter().map(row) }</ul>
            </details>
        </section>
    }
}
