//! A changed trust list stored: first the keys of this tablet with the new one, then the book with the list.

use super::super::relist::Next;
use super::super::save_key;
use crate::app::state::{Keep, KeysContext, SignedContext};
use yew::prelude::*;

/// Stores what comes next; `done` gets whether all of it is stored, and then a new key is offered as a file as well.
pub(super) fn store(next: Next, keys: &KeysContext, signed: &SignedContext, done: Callback<bool>) {
    let Next { made, book } = next;
    let made = made.map(|made| made.wrapped);
    let kept = made.as_ref().map_or_else(|| keys.wrapped.to_vec(), |made| keys.with(made.clone()));
    let add = signed.add.clone();
    let with_book = Callback::from(move |stored: bool| {
        if !stored {
            return done.emit(false);
        }
        let (made, done) = (made.clone(), done.clone());
        let done = Callback::from(move |stored: bool| {
            if let Some(made) = made.as_ref().filter(|_| stored) {
                save_key(made, &made.public.fingerprint());
            }
            done.emit(stored);
        });
        add.emit(Keep { what: book.clone(), done });
    });
    keys.put.emit(Keep { what: kept, done: with_book });
}
