//! The records of the book, newest first: what was done, by whom, when.

use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::device::clock;
use crate::signoff::{Act, Book, Credential, PublicKey, Record, TrustList};
use yew::prelude::*;

pub(super) fn records(shop: &Shop, book: &Book) -> Html {
    html! {
        <section key="records">
            <h2>{ shop.say("book.records") }</h2>
            <ul class="rows links">{ for book.records().iter().rev().map(|record| row(shop, book, record)) }</ul>
        </section>
    }
}

fn row(shop: &Shop, book: &Book, record: &Record) -> Html {
    let by = [("who", who(shop, book.list(), &record.by)), ("at", clock::local(record.at.text()))];
    let entry = match &record.act {
        Act::Withdrawn { credential, .. } => {
            book.sign_offs().iter().find(|entry| entry.credential.id == *credential)
        }
        _ => book.sign_offs().iter().find(|entry| entry.record == record.number),
    };
    let one = entry.map(|entry| &entry.credential);
    let words = html! {
        <>
            <span class="record-number">{ record.number.to_string() }</span>
            <span class="words"><b>{ done(shop, &record.act, one) }</b><span class="note">{ shop.say_with("book.by", &by) }</span></span>
        </>
    };
    html! {
        <li key={record.number}>
            { match one {
                Some(one) => html! { <a href={Route::sign_off(&one.id).address()} class="row-link">{ words }{ icon(Picture::Go) }</a> },
                None => html! { <span class="row-link">{ words }</span> },
            } }
        </li>
    }
}

/// What was done.
fn done(shop: &Shop, act: &Act, one: Option<&Credential>) -> AttrValue {
    let of =
        one.map(|one| [("competency", one.achievement.name.clone()), ("number", one.subject.to_string())]);
    let named = of.as_ref().map_or(&[][..], |named| &named[..]);
    match act {
        Act::Trusted { list } => {
            let count =
                |name: &str| list.get(name).and_then(|all| all.as_array()).map_or(0, Vec::len).to_string();
            let n = list.get("number").map(ToString::to_string).unwrap_or_default();
            let named = [("n", n), ("people", count("people")), ("withdrawn", count("withdrawn"))];
            shop.say_with("book.act.trusted", &named)
        }
        Act::SignedOff { .. } => shop.say_with("book.act.signed-off", named),
        Act::Reassessed { .. } => shop.say_with("book.act.reassessed", named),
        Act::Withdrawn { .. } => shop.say_with("book.act.withdrawn", named),
    }
}

/// Whose key it is, by the trust list in force.
fn who(shop: &Shop, list: &TrustList, key: &PublicKey) -> String {
    match list.person(key) {
        Some(person) => format!("{} ({})", person.name, person.number),
        None if *key == list.root => shop.say("book.root").to_string(),
        None => shop.say("book.unknown").to_string(),
    }
}
