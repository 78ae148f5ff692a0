//! Brings the file of a whole book to this tablet. It is looked at before it is taken.

use crate::app::hooks::use_signed;
use crate::app::parts::{FileField, file_field};
use crate::app::state::{Keep, Shop, Signed, SignedContext, use_shop};
use crate::device::files::{Picked, picked_from, read};
use crate::rules::term::Term;
use crate::signoff::{Book, grouped};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Bytes that the file of a book may have, our own limit: some ten thousand sign-offs.
const BOOK_MOST: usize = 64 * 1024 * 1024;

#[derive(Properties, PartialEq)]
pub(super) struct BringBookProps {
    /// What came of it.
    pub(super) said: AttrValue,
    pub(super) on_said: Callback<AttrValue>,
}

#[component]
pub(super) fn BringBook(props: &BringBookProps) -> Html {
    let shop = use_shop();
    let signed = use_signed();
    let file = use_state(|| None::<Picked>);
    let waiting = use_state(|| None::<Rc<Book>>);
    let onchange = {
        let (file, waiting, on_said) = (file.setter(), waiting.setter(), props.on_said.clone());
        let (shop, signed) = (shop.clone(), signed.clone());
        Callback::from(move |event: Event| {
            let Some(picked) = picked_from(&event) else { return };
            let (file, waiting, on_said) = (file.clone(), waiting.clone(), on_said.clone());
            let (shop, signed) = (shop.clone(), signed.clone());
            spawn_local(async move {
                let picked = read(picked, BOOK_MOST).await;
                let book = picked.bytes.as_ref().ok().map(|bytes| opened(&shop, &signed, bytes));
                file.set(Some(picked));
                let (book, why) = match book {
                    Some(Ok(book)) => (Some(Rc::new(book)), AttrValue::default()),
                    Some(Err(why)) => (None, why),
                    None => (None, AttrValue::default()),
                };
                waiting.set(book);
                on_said.emit(why);
            });
        })
    };
    let take = {
        let (waiting, add) = (waiting.clone(), signed.add);
        let (shop, on_said) = (shop.clone(), props.on_said.clone());
        Callback::from(move |_: MouseEvent| {
            let Some(book) = waiting.as_ref() else { return };
            let (waiting, shop, on_said) = (waiting.setter(), shop.clone(), on_said.clone());
            let done = Callback::from(move |stored| {
                if stored {
                    waiting.set(None);
                }
                on_said.emit(shop.say(if stored { "people.stored" } else { "people.not-stored" }));
            });
            add.emit(Keep { what: (**book).clone(), done });
        })
    };
    let field = FileField {
        id: "bring-book",
        label: shop.say("bring.book"),
        hint: shop.say("bring.book-hint"),
        file: file.as_ref(),
        onchange,
    };
    html! {
        <>
            { file_field(&shop, field) }
            <div key="book" class="kraft" hidden={waiting.is_none()}>{ waiting.as_ref().map(|book| seen(&shop, book)).unwrap_or_default() }
                <button type="button" class="control" onclick={take}>{ shop.say("bring.take") }</button>
            </div>
            <p key="book-said" role="status">{ props.said.clone() }</p>
        </>
    }
}

/// What a book is, before it is taken.
fn seen(shop: &Shop, book: &Book) -> Html {
    let (number, hash) = book.head();
    let named = [("shop", book.list().shop.clone()), ("n", number.to_string())];
    html! {
        <>
            <p>{ shop.say_with("bring.seen", &named) }</p>
            <p>{ shop.say("people.fingerprint") }{ " " }<b class="digits">{ grouped(&book.list().root.fingerprint()) }</b></p>
            <p class="note">{ shop.say("bring.head") }{ " " }<span class="digits">{ grouped(&hash.to_string()) }</span></p>
        </>
    }
}

/// The book of a file, if every record fits and it can take the place of the one that is here.
fn opened(shop: &Shop, signed: &SignedContext, bytes: &[u8]) -> Result<Book, AttrValue> {
    let text = std::str::from_utf8(bytes).map_err(|_| shop.say("bring.no-book"))?;
    let book = Book::open(text, None).map_err(|broken| {
        let why = shop.text(&format!("book.{}", broken.fault.slug())).to_string();
        shop.say_with("people.broken-why", &[("record", broken.record.to_string()), ("why", why)])
    })?;
    let goes_on = signed.stored.more_of(&book).is_some();
    match signed.signed() {
        Signed::None | Signed::Open(_) if goes_on => Ok(book),
        _ => Err(shop.say("bring.other-book")),
    }
}
