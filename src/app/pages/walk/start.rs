//! A walk before it is begun: its job ticket, and how it is to be walked.

use super::begin::{Order, said, use_begin};
use super::ways::ways;
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::{Ticket, WalkInfo};
use crate::rules::term::{Look, Term, WorkClass};
use crate::walk::Mode;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct WalkStartProps {
    pub(in crate::app) slug: String,
}

#[component]
pub(in crate::app) fn WalkStart(props: &WalkStartProps) -> Html {
    let shop = use_shop();
    let mode = use_state(|| Mode::Guided);
    let info = shop.content().walk(&props.slug);
    let beginning = use_begin(info.map(|info| Order {
        walk: info.slug.clone(),
        sheet: info.ticket.sheet.clone(),
        mode: *mode,
        seed: None,
    }));
    let Some(info) = info else {
        return html! {
            <Frame class="sheet" title={shop.say("walk.title")} back={Some(Route::Walks)} cautions={shop.cautions_for(&[])}>
                <p key="gone" class="lead" role="status">{ shop.say("walk.gone") }</p>
            </Frame>
        };
    };
    let action = html! {
        <button type="button" class="next-step" onclick={beginning.begin.clone()}>{ shop.say("walk.begin") }{ icon(Picture::Go) }</button>
    };
    html! {
        <Frame class="sheet walk-start" title={shop.text(&format!("walk.name.{}", info.slug))} back={Some(Route::Walks)} cautions={shop.cautions_for(&[])} {action}>
            { ticket(&shop, info) }
            { ways(&shop, &mode) }
            { said(&shop, &beginning) }
            <p key="give"><a href={Route::WalkGive { slug: info.slug.clone() }.address()} class="control">{ icon(Picture::Up) }{ shop.say("ticket.give") }</a></p>
        </Frame>
    }
}

/// The job ticket of a walk.
pub(in crate::app::pages) fn ticket(shop: &Shop, info: &WalkInfo) -> Html {
    let ticket = &info.ticket;
    let part = |(place, part): (usize, &crate::content::Part)| {
        html! { <li key={place}>{ super::words::part(shop, info, place) }{ ": " }{ super::words::wood(shop, &part.wood) }</li> }
    };
    let shaded = if ticket.shaded { "shaded" } else { "plain" };
    let facts = [
        ("colour", shop.text(&format!("on-ticket.{shaded}.{}", ticket.colour.slug())).to_string()),
        ("look", look(shop, ticket).to_string()),
        ("class", shop.text(&format!("term.{}", ticket.class.slug())).to_string()),
        ("filler", shop.text(&format!("term.{}", ticket.filler.slug())).to_string()),
        ("binding", shop.text(&format!("on-ticket.binding.{}", ticket.binding.slug())).to_string()),
        ("clear", shop.say_with("walk.ticket.coats", &[("n", ticket.clear_coats.to_string())]).to_string()),
        ("sheet", shop.sheet_name(&ticket.sheet).to_string()),
        ("day", shop.say_with("walk.ticket.until", &[("day", ticket.days.to_string())]).to_string()),
    ];
    let fact = |(key, value): &(&'static str, String)| {
        html! { <div key={*key} class="fact words"><dt>{ shop.say(&format!("walk.ticket.{key}")) }</dt><dd>{ value.clone() }</dd></div> }
    };
    let number = [("n", ticket.number.to_string())];
    html! {
        <section key="ticket" class="ticket walk-ticket">
            <span class="hole" aria-hidden="true"></span>
            <h2>{ shop.text(&format!("ticket.{}", ticket.slug)) }<small>{ " " }{ shop.say_with("walk.ticket.number", &number) }</small></h2>
            <ul class="walk-woods">{ for ticket.parts.iter().enumerate().map(part) }</ul>
            <dl class="facts">{ for facts.iter().map(fact) }</dl>
        </section>
    }
}

/// How the surface is to look; level work that is rubbed to a satin is no gloss.
fn look(shop: &Shop, ticket: &Ticket) -> AttrValue {
    match (ticket.look, ticket.class) {
        (Look::LevelGloss, WorkClass::Satin) => shop.say("walk.ticket.level"),
        (look, _) => shop.text(&format!("term.{}", look.slug())),
    }
}
