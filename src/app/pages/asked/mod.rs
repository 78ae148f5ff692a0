//! What this shop asks for before somebody is signed off: every competency, what came with the program, what the shop adds.

mod edit;
mod own;

use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::{Competency, Profile};
use crate::rules::term::{Stage, Term};
use yew::prelude::*;

pub(in crate::app) use edit::AskedOf;

#[component]
pub(in crate::app) fn Asked() -> Html {
    let shop = use_shop();
    let band = |stage: &Stage| {
        let of = shop.content().competencies.iter().filter(|one| one.band == *stage);
        let rows: Vec<Html> = of.map(|one| row(&shop, one)).collect();
        html! {
            <section key={stage.slug()} hidden={rows.is_empty()}>
                <h2>{ shop.stage(*stage) }</h2>
                <ul class="rows links">{ for rows }</ul>
            </section>
        }
    };
    html! {
        <Frame class="sheet asked-page" title={shop.say("asked.title")} back={Some(Route::Menu)} cautions={shop.cautions_for(&[])}>
            <p key="why" class="lead">{ shop.say("asked.why") }</p>
            { for Stage::ALL.iter().map(band) }
        </Frame>
    }
}

fn row(shop: &Shop, one: &Competency) -> Html {
    let to = Route::AskedOf { competency: one.slug.clone() };
    let shipped = shop.content().shipped().iter().find(|shipped| shipped.slug == one.slug);
    let more = shipped.is_some_and(|shipped| shipped != one);
    html! {
        <li key={one.slug.clone()}>
            <a href={to.address()} class="row-link">
                <span class="words">
                    <b>{ shop.text(&format!("competency.{}", one.slug)) }</b>
                    <span>{ counts(shop, one) }</span>
                    <span class="note">
                        { if one.profile == Profile::Safety { shop.say("asked.safety") } else { AttrValue::default() } }
                        { if more { shop.say("asked.more") } else { AttrValue::default() } }
                    </span>
                </span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}

/// Demonstrations, days, criteria and months in one line.
pub(super) fn counts(shop: &Shop, one: &Competency) -> AttrValue {
    let named = [
        ("demonstrations", one.demonstrations.to_string()),
        ("days", one.days.to_string()),
        ("criteria", one.criteria.len().to_string()),
        ("months", one.expires_months.to_string()),
    ];
    shop.say_with("asked.counts", &named)
}
