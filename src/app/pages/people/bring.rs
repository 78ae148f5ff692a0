//! Brings the file of a key, or of a whole book, to this tablet. A book is looked at before it is taken.

use crate::app::hooks::{use_keys_held, use_signed};
use crate::app::parts::{FileField, file_field};
use crate::app::state::{Keep, Shop, Signed, SignedContext, use_shop};
use crate::device::files::{Picked, picked_from, read};
use crate::rules::term::Term;
use crate::signoff::{BYTES_MOST, Book, WrappedKey, grouped};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Bytes that the file of a book may have, our own limit: some ten thousand sign-offs.
const BOOK_MOST: usize = 64 * 1024 * 1024;

#[component]
pub(super) fn Bring() -> Html {
    let shop = use_shop();
    let (keys, signed) = (use_keys_held(), use_signed());
    let key_file = use_state(|| None::<Picked>);
    let book_file = use_state(|| None::<Picked>);
    let said = use_state(|| (AttrValue::default(), AttrValue::default()));
    let waiting = use_state(|| None::<Rc<Book>>);
    let on_key = {
        let (file, said, shop) = (key_file.clone(), said.clone(), shop.clone());
        Callback::from(move |event: Event| {
            let Some(picked) = picked_from(&event) else { return };
            let (file, said, shop, keys) = (file.clone(), said.clone(), shop.clone(), keys.clone());
            spawn_local(async move {
                let picked = read(picked, BYTES_MOST).await;
                let key = picked.bytes.as_ref().ok().map(|bytes| WrappedKey::read(bytes));
                file.set(Some(picked));
                match key {
                    None => said.set(Default::default()),
                    Some(Err(locked)) => {
                        said.set((shop.text(&format!("locked.{}", locked.slug())), AttrValue::default()));
                    }
                    Some(Ok(key)) => {
                        let fingerprint = grouped(&key.public.fingerprint());
                        let done = Callback::from(move |stored| {
                            let named = [("fingerprint", fingerprint.clone())];
                            let now = if stored {
                                shop.say_with("bring.key-here", &named)
                            } else {
                                shop.say("people.not-stored")
                            };
                            said.set((now, AttrValue::default()));
                        });
                        keys.put.emit(Keep { what: keys.with(key), done });
                    }
                }
            });
        })
    };
    let on_book = {
        let (file, said, shop, waiting) = (book_file.clone(), said.clone(), shop.clone(), waiting.clone());
        let signed = signed.clone();
        Callback::from(move |event: Event| {
            let Some(picked) = picked_from(&event) else { return };
            let (file, said, shop, waiting) = (file.clone(), said.clone(), shop.clone(), waiting.clone());
            let signed = signed.clone();
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
                said.set((AttrValue::default(), why));
            });
        })
    };
    let take = {
        let (waiting, said, shop, add) = (waiting.clone(), said.clone(), shop.clone(), signed.add.clone());
        Callback::from(move |_: MouseEvent| {
            let Some(book) = waiting.as_ref() else { return };
            let (waiting, said, shop) = (waiting.clone(), said.clone(), shop.clone());
            let done = Callback::from(move |stored| {
                if stored {
                    waiting.set(None);
                }
                said.set((
                    AttrValue::default(),
                    shop.say(if stored { "people.stored" } else { "people.not-stored" }),
                ));
            });
            add.emit(Keep { what: (**book).clone(), done });
        })
    };
    let key_field = FileField {
        id: "bring-key",
        label: shop.say("bring.key"),
        hint: shop.say("bring.key-hint"),
        file: key_file.as_ref(),
        onchange: on_key,
    };
    let book_field = FileField {
        id: "bring-book",
        label: shop.say("bring.book"),
        hint: shop.say("bring.book-hint"),
        file: book_file.as_ref(),
        onchange: on_book,
    };
    html! {
        <section class="paper form">
            <h2>{ shop.say("bring.title") }</h2>
            { file_field(&shop, key_field) }
            <p key="key-said" role="status">{ said.0.clone() }</p>
            { file_field(&shop, book_field) }
            <div key="book" class="kraft" hidden={waiting.is_none()}>{ waiting.as_ref().map(|book| seen(&shop, book)).unwrap_or_default() }
                <button type="button" class="control" onclick={take}>{ shop.say("bring.take") }</button>
            </div>
            <p key="book-said" role="status">{ said.1.clone() }</p>
        </section>
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
