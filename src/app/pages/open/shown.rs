//! What a file is, and the two ways from it: take it or leave it.

use super::Opened;
use super::results::TakeResults;
use super::taking::{Taking, use_taking};
use super::ticket::TakeTicket;
use super::walk::LookAtWalk;
use crate::app::parts::{HandOut, Picture, SheetOffer, icon, set_about};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::device::clock;
use crate::exchange::set::{SET, Set, Validity, WITHDRAWAL, Withdrawal};
use crate::exchange::{Ours, OwnSheet, SHEET, TICKET, save_name};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties)]
pub(super) struct ShownProps {
    pub(super) opened: Rc<Opened>,
    /// Told when it is gone through, so that nothing else stands before it.
    #[prop_or_default]
    pub(super) on_look: Callback<()>,
}

impl PartialEq for ShownProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.opened, &other.opened) && self.on_look == other.on_look
    }
}

#[component]
pub(super) fn Shown(props: &ShownProps) -> Html {
    let shop = use_shop();
    let taking = use_taking(&props.opened);
    let kind = match &props.opened.ours {
        Ours::Sheet(own) => return of_sheet(&shop, own, &props.opened),
        Ours::Set(_) => "set",
        Ours::Withdrawal(_) => "withdrawal",
        Ours::Results(_) => return html! { <TakeResults opened={Rc::clone(&props.opened)} /> },
        Ours::Walk(_) => {
            let (opened, on_look) = (Rc::clone(&props.opened), props.on_look.clone());
            return html! { <LookAtWalk {opened} {on_look} /> };
        }
        Ours::Ticket(_) => {
            let opened = Rc::clone(&props.opened);
            return html! { <><TakeTicket key="ticket" {opened} />{ hand_on(&shop, &props.opened) }</> };
        }
    };
    let told = told(&shop, &props.opened.ours, &taking);
    let Taking { had, taken, failed, may, take, next, .. } = taking;
    let said = match (taken, failed) {
        (_, true) => shop.say("open.not-taken"),
        (Some(true), _) => shop.say("open.taken-again"),
        (Some(false), _) => shop.say("open.taken"),
        _ if had => shop.say("open.had"),
        _ => AttrValue::default(),
    };
    let over = taken.is_some();
    let (to, word) = next;
    html! {
        <>
        <section key="opened" class="paper opened">
            <p class="over">{ shop.say(&format!("open.kind.{kind}")) }</p>
            { told }
            <p key="said" role="status">{ said }</p>
            <div key="acts" class="people">
                <button key="take" type="button" class="next-step" hidden={over || !may} onclick={take}>{ icon(Picture::Tick) }{ shop.say("open.take") }</button>
                <a key="next" href={to.address()} class="next-step" hidden={may && !over}>{ shop.say(word) }{ icon(Picture::Go) }</a>
                <a key="leave" href={Route::Home.address()} class="control" hidden={over}>{ shop.say("open.leave") }</a>
            </div>
        </section>
        { hand_on(&shop, &props.opened) }
        </>
    }
}

/// What a file is that [`use_taking`] takes; the others are shown by parts of their own.
pub(in crate::app::pages) fn told(shop: &Shop, ours: &Ours, taking: &Taking) -> Html {
    match ours {
        Ours::Sheet(_) | Ours::Results(_) | Ours::Walk(_) | Ours::Ticket(_) => Html::default(),
        Ours::Set(set) => of_set(shop, set, taking),
        Ours::Withdrawal(withdrawal) => of_withdrawal(shop, withdrawal, taking),
    }
}

/// The same file, handed on from here; results and walks are no files that others take from one another.
fn hand_on(shop: &Shop, opened: &Opened) -> Html {
    // A withdrawal says which set it is of by its name alone, which nobody reads.
    let (kind, title, about) = match &opened.ours {
        Ours::Sheet(sheet) => (SHEET, sheet.name.clone(), sheet.name.as_str()),
        Ours::Set(set) => (SET, set.title.clone(), set.title.as_str()),
        Ours::Withdrawal(one) => (WITHDRAWAL, shop.say("open.kind.withdrawal").to_string(), one.set.as_str()),
        Ours::Ticket(ticket) => {
            (TICKET, shop.text(&format!("walk.name.{}", ticket.walk)).to_string(), ticket.walk.as_str())
        }
        Ours::Results(_) | Ours::Walk(_) => return Html::default(),
    };
    let name = save_name(kind.format, about, None, "json");
    html! {
        <details key="on" class="hand-on">
            <summary>{ shop.say("open.hand-on") }</summary>
            <HandOut {name} text={opened.text.clone()} {title} />
        </details>
    }
}

fn made(shop: &Shop, by: &str, at: &str) -> Html {
    let args = [("by", by.to_owned()), ("at", clock::local(at))];
    html! { <p key="by" class="note" hidden={by.is_empty()}>{ shop.say_with("open.by", &args) }</p> }
}

/// A shop sheet, shown and taken as on the screen of sheets. Once it is taken its own screen follows.
fn of_sheet(shop: &Shop, own: &OwnSheet, opened: &Opened) -> Html {
    let on_taken = Callback::from(|own: OwnSheet| Route::SheetOf { slug: own.slug() }.go());
    html! {
        <>
            <SheetOffer key="offer" own={own.clone()} {on_taken} />
            { hand_on(shop, opened) }
        </>
    }
}

fn of_set(shop: &Shop, set: &Set, taking: &Taking) -> Html {
    let withdrawn = taking.about.as_ref().is_some_and(|kept| kept.withdrawn.is_some());
    html! {
        <>
            <h2>{ &set.title }</h2>
            { set_about(shop, &set.id(), set, Validity::of(set, withdrawn, clock::today())) }
        </>
    }
}

fn of_withdrawal(shop: &Shop, withdrawal: &Withdrawal, taking: &Taking) -> Html {
    let about = match &taking.about {
        Some(kept) if withdrawal.by == kept.set.by => {
            shop.say_with("open.withdrawal.here", &[("title", kept.set.title.clone())])
        }
        Some(_) => shop.say("open.withdrawal.other"),
        None => shop.say("open.withdrawal.not-here"),
    };
    html! {
        <>
            <h2>{ about }</h2>
            <p key="why" hidden={withdrawal.reason.is_empty()}>{ shop.say_with("open.withdrawal.reason", &[("reason", withdrawal.reason.clone())]) }</p>
            { made(shop, &withdrawal.by, &withdrawal.at) }
        </>
    }
}
