//! A job ticket that was handed out: what is to be walked, and how. It is begun from here.

use super::shown::ShownProps;
use crate::app::pages::walk::{Order, begin_said, use_begin, walk_ticket};
use crate::app::parts::{Picture, SheetOffer, carried_sheet, icon};
use crate::app::route::Route;
use crate::app::state::{ContentContext, Shop, use_shop};
use crate::device::clock;
use crate::exchange::{JobTicket, Ours, OwnSheet};
use crate::rules::term::Term;
use std::rc::Rc;
use yew::prelude::*;

#[component]
pub(super) fn TakeTicket(props: &ShownProps) -> Html {
    let shop = use_shop();
    let given = match &props.opened.ours {
        Ours::Ticket(ticket) => Some(&**ticket),
        _ => None,
    };
    let beginning = use_begin(given.map(|ticket| Order {
        walk: ticket.walk.clone(),
        sheet: ticket.sheet.slug(),
        mode: ticket.mode,
        seed: ticket.seed,
    }));
    let Some(ticket) = given else { return Html::default() };
    let over = ticket.is_over(clock::today());
    // An edition of the shop's own is taken first: the walk stands on it for as long as it is kept.
    let lacking = ticket.sheet.own().filter(|own| shop.content().sheet(&own.slug()).is_none());
    let may = !over && lacking.is_none();
    let begin = beginning.begin.clone();
    html! {
        <section class="paper opened">
            <p class="over">{ shop.say("open.kind.ticket") }</p>
            { told(&shop, ticket) }
            { for lacking.map(|own| html! {
                <>
                    <p key="lacking" class="kraft">{ shop.say("ticket.sheet-first") }</p>
                    <SheetOffer key="offer" own={own.clone()} on_taken={Callback::<OwnSheet>::noop()} />
                </>
            }) }
            <p key="over" class="kraft" role="status" hidden={!over}>{ shop.say("ticket.over") }</p>
            { begin_said(&shop, &beginning) }
            <div key="acts" class="people">
                <button key="begin" type="button" class="next-step" hidden={!may} onclick={begin}>{ shop.say("walk.begin") }{ icon(Picture::Go) }</button>
                <a key="leave" href={Route::Home.address()} class="control">{ shop.say("open.leave") }</a>
            </div>
        </section>
    }
}

/// What the ticket says.
fn told(shop: &Shop, ticket: &JobTicket) -> Html {
    let mode = ticket.mode.slug();
    let rows = [
        (
            "mode",
            format!("{}. {}", shop.text(&format!("walk.mode.{mode}")), shop.say(&format!("walk.way.{mode}"))),
        ),
        ("sheet", carried_sheet(shop, &ticket.sheet).to_string()),
        (
            "chance",
            shop.say(if ticket.seed.is_some() { "ticket.chance-same" } else { "ticket.chance-any" })
                .to_string(),
        ),
        ("until", ticket.until.map(clock::local_day).unwrap_or_default()),
    ];
    let row = |(key, told): &(&'static str, String)| {
        html! { <div key={*key} hidden={told.is_empty()}><dt>{ shop.say(&format!("ticket.row.{key}")) }</dt><dd>{ told }</dd></div> }
    };
    let made = [("by", ticket.by.clone()), ("at", clock::local(&ticket.at))];
    html! {
        <div key="told" class="set-about">
            <h2>{ shop.text(&format!("walk.name.{}", ticket.walk)) }</h2>
            <p key="note" class="kraft set-note" hidden={ticket.note.is_empty()}>{ &ticket.note }</p>
            <dl key="facts" class="said">{ for rows.iter().map(row) }</dl>
            { job(shop, ticket) }
            <p key="made" class="note" hidden={ticket.by.is_empty()}>{ shop.say_with("sets.about.made", &made) }</p>
        </div>
    }
}

/// The job, with the name of the sheet that it is worked on.
fn job(shop: &Shop, ticket: &JobTicket) -> Html {
    let Some(info) = shop.content().walk(&ticket.walk) else { return Html::default() };
    let mut info = info.clone();
    info.ticket.sheet = ticket.sheet.slug();
    let known = shop.on(ContentContext(Rc::new(ticket.sheet.known_in(shop.content()))));
    walk_ticket(&known, &info)
}
