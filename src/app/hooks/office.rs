//! Keeps people, keys, the sign-off book and what the shop asks for more: what is not stored has not happened.

use crate::app::state::{
    Keep, KeysContext, PeopleContext, Settings, SignedContext, Stored, StricterContext, Unlocked,
};
use crate::content::Stricter;
use crate::device::{Loaded, Store};
use crate::people::Crew;
use crate::signoff::{Book, WrappedKey};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// The apprentices that were loaded when the page opened.
#[hook]
pub(in crate::app) fn use_kept_people(store: &Store, loaded: &Loaded<Settings>) -> PeopleContext {
    let crew = use_state(|| Rc::new(loaded.crew.clone().unwrap_or_default()));
    let readable = loaded.crew.is_some();
    let put = use_callback((store.clone(), readable), {
        let set = crew.setter();
        move |Keep { what, done }: Keep<Crew>, (store, readable)| {
            if !*readable {
                return done.emit(false);
            }
            let (store, set) = (store.clone(), set.clone());
            spawn_local(async move {
                let stored = store.put_crew(&what).await.is_ok();
                if stored {
                    set.set(Rc::new(what));
                }
                done.emit(stored);
            });
        }
    });
    PeopleContext { crew: (*crew).clone(), readable, put }
}

/// The keys that were loaded when the page opened; none of them open.
#[hook]
pub(in crate::app) fn use_kept_keys(store: &Store, loaded: &Loaded<Settings>) -> KeysContext {
    let (read, readable) = use_memo((), |()| read(loaded.keys.as_deref())).as_ref().clone();
    let wrapped = use_state(|| Rc::new(read));
    let open = use_state(|| None::<Unlocked>);
    let put = use_callback((store.clone(), readable), {
        let set = wrapped.setter();
        move |Keep { what, done }: Keep<Vec<WrappedKey>>, (store, readable)| {
            let texts: Result<Vec<String>, _> = what.iter().map(WrappedKey::text).collect();
            let (true, Ok(texts)) = (*readable, texts) else { return done.emit(false) };
            let (store, set) = (store.clone(), set.clone());
            spawn_local(async move {
                let stored = store.put_keys(&texts).await.is_ok();
                if stored {
                    set.set(Rc::new(what));
                }
                done.emit(stored);
            });
        }
    });
    let set_open = use_callback((), {
        let set = open.setter();
        move |now: Option<Unlocked>, ()| set.set(now)
    });
    KeysContext { wrapped: (*wrapped).clone(), readable, put, open: (*open).clone(), set_open }
}

/// The keys as they are stored, and whether all of them can be read.
fn read(texts: Option<&[String]>) -> (Vec<WrappedKey>, bool) {
    let Some(texts) = texts else { return (Vec::new(), false) };
    let read: Vec<WrappedKey> =
        texts.iter().filter_map(|text| WrappedKey::read(text.as_bytes()).ok()).collect();
    let all = read.len() == texts.len();
    (read, all)
}

/// What the shop asks for more, as it was loaded when the page opened.
#[hook]
pub(in crate::app) fn use_kept_stricter(store: &Store, loaded: &Loaded<Settings>) -> StricterContext {
    let asked = use_state(|| Rc::new(loaded.stricter.clone().unwrap_or_default()));
    let readable = loaded.stricter.is_some();
    let put = use_callback((store.clone(), readable), {
        let set = asked.setter();
        move |Keep { what, done }: Keep<Vec<Stricter>>, (store, readable)| {
            if !*readable {
                return done.emit(false);
            }
            let (store, set) = (store.clone(), set.clone());
            spawn_local(async move {
                let stored = store.put_stricter(&what).await.is_ok();
                if stored {
                    set.set(Rc::new(what));
                }
                done.emit(stored);
            });
        }
    });
    StricterContext { asked: (*asked).clone(), readable, put }
}

/// The sign-off book that was loaded when the page opened.
#[hook]
pub(in crate::app) fn use_kept_signed(store: &Store, loaded: &Loaded<Settings>) -> SignedContext {
    let stored = use_state(|| Stored::new(loaded.records.clone()));
    let latest = use_mut_ref(|| (*stored).clone());
    let add = use_callback(store.clone(), {
        let set = stored.setter();
        move |Keep { what, done }: Keep<Book>, store| {
            let (store, set, latest) = (store.clone(), set.clone(), Rc::clone(&latest));
            spawn_local(async move {
                let more = latest.borrow().more_of(&what);
                let added = match more {
                    Some(more) => store.add_records(&more).await.is_ok(),
                    None => false,
                };
                let next = if added {
                    Stored::of(what)
                } else {
                    // Another window may have added records: from now on this one has them too.
                    match store.load::<Settings>().await {
                        Ok(loaded) => Stored::new(loaded.records),
                        Err(_) => latest.borrow().clone(),
                    }
                };
                latest.replace(next.clone());
                set.set(next);
                done.emit(added);
            });
        }
    });
    SignedContext { stored: (*stored).clone(), add }
}
