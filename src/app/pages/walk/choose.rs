//! Which job is walked: those under way first, then all by how hard they are, then those handed over.

use super::one::hand_out;
use crate::app::hooks::{use_book, use_walks, write_let_go};
use crate::app::parts::{Frame, Picture, icon, unread};
use crate::app::route::Route;
use crate::app::state::{BookContext, Keep, Shop, WalksContext, use_shop};
use crate::content::WalkInfo;
use crate::device::clock;
use crate::rules::term::Term;
use crate::walk::Kept;
use std::rc::Rc;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Walks() -> Html {
    let shop = use_shop();
    let (books, walks) = (use_book(), use_walks());
    let leaving = use_state(|| None::<String>);
    let said = use_state(AttrValue::default);
    let under_way = walks.of(&shop.settings.person, false);
    let done = walks.of(&shop.settings.person, true);
    let open = |one: &Rc<Kept>| {
        let name = name(&shop, one);
        let asks = leaving.as_deref() == Some(one.id.as_str());
        let ask = {
            let (leaving, id) = (leaving.setter(), one.id.clone());
            move |_: MouseEvent| leaving.set(Some(id.clone()))
        };
        let keep = {
            let leaving = leaving.setter();
            move |_: MouseEvent| leaving.set(None)
        };
        let leave = leave(&shop, (&books, &walks), one, &leaving, &said);
        html! {
            <li key={one.id.clone()} class="walk-open">
                <a href={Route::WalkOf { id: one.id.clone() }.address()} class="row-link">
                    <span class="words"><b>{ shop.say_with("walk.go-on", &[("name", name.to_string())]) }</b><span class="note">{ about(&shop, one) }</span></span>
                    { icon(Picture::Go) }
                </a>
                { hand_out(&shop, &one.id) }
                <button key="ask" type="button" class="control" hidden={asks} onclick={ask}
                    aria-label={shop.say_with("walk.leave-named", &[("name", name.to_string())])}>{ shop.say("walk.leave") }</button>
                <span key="sure" class="people" hidden={!asks}>
                    <button type="button" class="control" onclick={leave}>{ shop.say("walk.leave-sure") }</button>
                    <button type="button" class="control" onclick={keep}>{ shop.say("walk.leave-not") }</button>
                </span>
            </li>
        }
    };
    let level = |level: u32| {
        let of: Vec<&WalkInfo> =
            shop.content().walks.iter().filter(|walk| walk.difficulty == level).collect();
        html! {
            <section key={level} hidden={of.is_empty()}>
                <h2>{ shop.say(&format!("walk.level.{level}")) }</h2>
                <ul class="rows links">{ for of.into_iter().map(|walk| offered(&shop, walk)) }</ul>
            </section>
        }
    };
    html! {
        <Frame class="sheet walks" title={shop.say("walk.title")} back={Some(Route::Home)} cautions={shop.cautions_for(&[])}>
            <p key="lead" class="lead">{ shop.say("walk.lead") }</p>
            <p key="said" role="status">{ (*said).clone() }</p>
            { unread(&shop, walks.unread) }
            <section key="open" hidden={under_way.is_empty()}>
                <h2>{ shop.say("walk.under-way") }</h2>
                <ul class="rows">{ for under_way.iter().map(open) }</ul>
            </section>
            { for (1..=WalkInfo::HARDEST).map(level) }
            <section key="done" hidden={done.is_empty()}>
                <h2>{ shop.say("walk.handed-over") }</h2>
                <ul class="rows links">{ for done.iter().map(|one| row(&shop, one)) }</ul>
            </section>
        </Frame>
    }
}

/// Lets go of a walk; what came of it is said.
fn leave(
    shop: &Shop,
    (books, walks): (&BookContext, &WalksContext),
    one: &Rc<Kept>,
    leaving: &UseStateHandle<Option<String>>,
    said: &UseStateHandle<AttrValue>,
) -> Callback<MouseEvent> {
    let (let_go, id, name) = (walks.let_go.clone(), one.id.clone(), name(shop, one).to_string());
    let (books, one) = (books.clone(), Rc::clone(one));
    let (shop, leaving, said) = (shop.clone(), leaving.setter(), said.setter());
    Callback::from(move |_: MouseEvent| {
        // Asked once, so that a second touch does nothing.
        leaving.set(None);
        let (shop, books, one) = (shop.clone(), books.clone(), Rc::clone(&one));
        let (said, name) = (said.clone(), name.clone());
        let done = Callback::from(move |gone: bool| {
            if gone {
                write_let_go(&shop, &books, &one);
            }
            let key = if gone { "walk.left" } else { "walk.not-left" };
            said.set(shop.say_with(key, &[("name", name.clone())]));
        });
        let_go.emit(Keep { what: id.clone(), done });
    })
}

/// A walk that can be begun, as a row that leads to its ticket.
fn offered(shop: &Shop, walk: &WalkInfo) -> Html {
    let to = Route::WalkNew { slug: walk.slug.clone() };
    let ticket = &walk.ticket;
    let named = [
        ("ticket", shop.text(&format!("ticket.{}", ticket.slug)).to_string()),
        ("sheet", shop.sheet_name(&ticket.sheet).to_string()),
        ("day", ticket.days.to_string()),
    ];
    html! {
        <li key={walk.slug.clone()}>
            <a href={to.address()} class="row-link">
                <span class="words"><b>{ shop.text(&format!("walk.name.{}", walk.slug)) }</b><span class="note">{ shop.say_with("walk.offer-line", &named) }</span></span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}

/// A walk that was handed over, as a row that leads to its report.
pub(in crate::app::pages) fn row(shop: &Shop, one: &Kept) -> Html {
    html! {
        <li key={one.id.clone()}>
            <a href={Route::WalkOf { id: one.id.clone() }.address()} class="row-link">
                <span class="words"><b>{ name(shop, one) }</b><span class="note">{ about(shop, one) }</span></span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}

fn name(shop: &Shop, one: &Kept) -> AttrValue {
    shop.text(&format!("walk.name.{}", one.saved.walk))
}

fn about(shop: &Shop, one: &Kept) -> AttrValue {
    let named = [
        ("mode", shop.text(&format!("walk.mode.{}", one.saved.mode.slug())).to_string()),
        ("n", one.saved.decisions.len().to_string()),
        ("at", clock::local(&one.changed)),
    ];
    shop.say_with("walk.about", &named)
}
