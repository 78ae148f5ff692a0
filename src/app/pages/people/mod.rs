//! People: who works on this tablet, and who may sign for their work.

mod begin;
mod bring;
mod bring_book;
mod bring_key;
mod change;
mod crew;
mod erase;
mod list;
mod made;
mod newcomer;
mod passphrase;
mod person;
mod pin;
mod relist;

use crate::app::hooks::{use_keys_held, use_lock, use_people, use_signed};
use crate::app::parts::{Frame, Picture, Unlock, icon};
use crate::app::route::Route;
use crate::app::state::{Signed, use_shop};
use crate::device::{files, page};
use crate::rules::term::Term;
use crate::signoff::WrappedKey;
use std::rc::Rc;
use yew::prelude::*;

pub(in crate::app) use person::Person;

/// Id of the line that tells that the book is begun.
const BEGUN: &str = "book-begun";

#[component]
pub(in crate::app) fn People() -> Html {
    let shop = use_shop();
    let (people, keys, signed, lock) = (use_people(), use_keys_held(), use_signed(), use_lock());
    let begun = use_state_eq(|| false);
    let on_begun = use_callback(begun.setter(), |(), begun| begun.set(true));
    use_effect_with(*begun, |begun| {
        if *begun {
            page::bring(BEGUN);
        }
    });
    let hand_over = lock.set.reform(|_: MouseEvent| true);
    let office = match signed.signed() {
        Signed::None => html! { <begin::Begin key="begin" {on_begun} /> },
        Signed::Open(book) => html! { <list::SignerList key="list" book={book.clone()} /> },
        Signed::Broken(broken, text) => html! {
            <section key="broken" class="paper" role="alert">
                <h2>{ shop.say("people.broken") }</h2>
                <p>{ shop.say_with("people.broken-why", &[("record", broken.record.to_string()), ("why", shop.text(&format!("book.{}", broken.fault.slug())).to_string())]) }</p>
                <button type="button" class="control" onclick={save_book(text)}>{ icon(Picture::Save) }{ shop.say("people.broken-save") }</button>
            </section>
        },
    };
    html! {
        <Frame class="sheet people-page" title={shop.say("people.title")} back={Some(Route::Menu)} cautions={shop.cautions_for(&[])}>
            <p key="unreadable" class="kraft" role="alert" hidden={people.readable && keys.readable}>{ shop.say("people.unreadable") }</p>
            <newcomer::Newcomer key="newcomer" />
            <section key="crew" hidden={people.crew.members().is_empty()}>
                <h2>{ shop.say("people.crew") }</h2>
                { crew::rows(&shop, people.crew.members()) }
                <button type="button" class="control" onclick={hand_over}>{ icon(Picture::Go) }{ shop.say("people.hand-over") }</button>
            </section>
            <div key="unlock" hidden={signed.book().is_none()}><Unlock /></div>
            <p key="begun" id={BEGUN} class="kraft" role="status" tabindex="-1" hidden={!*begun}>{ shop.say("people.begun") }</p>
            { office }
            <bring::Bring key="bring" />
        </Frame>
    }
}

/// Offers the text of a book as a file.
fn save_book(text: &Rc<str>) -> Callback<MouseEvent> {
    let text = Rc::clone(text);
    // A browser that saves no file says so itself.
    Callback::from(move |_| drop(files::save_json("stepboard-book.jsonl", &text)))
}

/// Offers a wrapped key as a file.
fn save_key(wrapped: &WrappedKey, whose: &str) {
    // A key always has a text, and a browser that saves no file keeps the key on the tablet all the same.
    if let Ok(text) = wrapped.text() {
        let _ = files::save_json(&format!("stepboard-key-{whose}.json"), &text);
    }
}
