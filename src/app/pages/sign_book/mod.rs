//! The sign-off book: its end to note, what is handed out, who holds what, and every record.

mod again;
mod entry;
mod noted;
mod records;
mod renew;
mod withdraw;

pub(in crate::app) use entry::SignOff;

use crate::app::hooks::{use_people, use_signed};
use crate::app::parts::{Frame, Picture, held, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, Signed, use_shop};
use crate::device::{clock, files};
use crate::rules::term::Term;
use crate::signoff::{Book, Entry, ShopNumber, When, canonical, grouped};
use serde_json::{Map, Value};
use std::collections::BTreeSet;
use yew::prelude::*;

#[component]
pub(in crate::app) fn SignOffBook() -> Html {
    let shop = use_shop();
    let (people, signed) = (use_people(), use_signed());
    let now = clock::when();
    let body = match signed.signed() {
        Signed::None => html! {
            <p key="none" class="kraft">{ shop.say("book.none") }{ " " }<a class="text-link" href={Route::People.address()}>{ shop.say("sign-off.people") }</a></p>
        },
        Signed::Broken(broken, _) => {
            let why = shop.text(&format!("book.{}", broken.fault.slug())).to_string();
            html! {
                <section key="broken" class="paper" role="alert">
                    <h2>{ shop.say("people.broken") }</h2>
                    <p>{ shop.say_with("people.broken-why", &[("record", broken.record.to_string()), ("why", why)]) }</p>
                    <a class="text-link" href={Route::People.address()}>{ shop.say("sign-off.people") }</a>
                </section>
            }
        }
        Signed::Open(book) => html! {
            <div key="open" class="outcome">
                { head(&shop, book) }
                <renew::Renew key="renew" book={book.clone()} />
                <again::Again key="again" />
                { hand_out(&shop, book) }
                { holders(&shop, book, &people.crew, now.as_ref()) }
                { records::records(&shop, book) }
                <noted::Noted key="noted" book={book.clone()} />
            </div>
        },
    };
    html! {
        <Frame class="sheet book" title={shop.say("book.title")} back={Some(Route::Menu)} cautions={shop.cautions_for(&[])}>
            <p key="lead" class="lead">{ shop.say("book.lead") }</p>
            { body }
            <p key="verify"><a class="text-link" href={Route::Verify.address()}>{ shop.say("verify.title") }{ icon(Picture::Go) }</a></p>
        </Frame>
    }
}

/// Number and hash of the last record, to be noted on paper.
pub(super) fn head(shop: &Shop, book: &Book) -> Html {
    let (number, hash) = book.head();
    html! {
        <section key="head" class="kraft compare">
            <h2>{ shop.say("book.head") }</h2>
            <p class="digits">{ shop.say_with("book.record", &[("n", number.to_string())]) }<br />{ grouped(&hash.to_string()) }</p>
            <p>{ shop.say("book.head-why") }</p>
        </section>
    }
}

/// The book and the trust list in force, as files.
fn hand_out(shop: &Shop, book: &Book) -> Html {
    let text = book.text();
    let save_book = Callback::from(move |_: MouseEvent| {
        // A browser that saves no file says so itself.
        drop(files::save_json("stepboard-book.jsonl", &text));
    });
    let name = format!("trust-list-{}.json", book.list().number);
    let save_list = book.list_file().map(|list| save(name, list)).unwrap_or_default();
    html! {
        <section key="files">
            <h2>{ shop.say("book.files") }</h2>
            <div class="people">
                <button type="button" class="control" onclick={save_list}>{ icon(Picture::Save) }{ shop.say("book.save-list") }</button>
                <button type="button" class="control" onclick={save_book}>{ icon(Picture::Save) }{ shop.say("book.save-book") }</button>
            </div>
        </section>
    }
}

/// Offers a sign-off as the file that was signed.
pub(super) fn save_entry(book: &Book, entry: &Entry) -> Callback<MouseEvent> {
    let one = &entry.credential;
    let name = format!("sign-off-{}-{}.json", one.subject, one.achievement.slug);
    book.file(entry).map(|file| save(name, file)).unwrap_or_default()
}

/// Offers a signed document in its canonical form: the bytes that were signed, and its proof.
fn save(name: String, document: &Map<String, Value>) -> Callback<MouseEvent> {
    // Whatever stands in the book has a canonical form.
    let text = canonical(&Value::Object(document.clone())).unwrap_or_default();
    Callback::from(move |_| drop(files::save_json(&name, &text)))
}

/// Everybody for whom something was ever signed, and how they stand today.
fn holders(shop: &Shop, book: &Book, crew: &crate::people::Crew, now: Option<&When>) -> Html {
    let numbers: BTreeSet<&ShopNumber> =
        book.sign_offs().iter().map(|entry| &entry.credential.subject).collect();
    let holder = |number: &&ShopNumber| {
        let name = crew.member(number.text()).map(|member| member.name.clone());
        let title = name.map_or_else(|| number.to_string(), |name| format!("{name} ({number})"));
        let rows = held(shop, book, number, now?, true)?;
        Some(html! { <section key={number.to_string()}><h3>{ title }</h3>{ rows }</section> })
    };
    html! {
        <section key="holders">
            <h2>{ shop.say("book.holders") }</h2>
            <p class="note" hidden={!numbers.is_empty()}>{ shop.say("book.empty") }</p>
            { for numbers.iter().filter_map(holder) }
        </section>
    }
}
