//! Keeps people, keys, the sign-off book and what the shop asks for more: what is not stored has not happened.

use crate::app::state::{
    Keep, KeysContext, PeopleContext, Settings, SignedContext, Stored, StricterContext, Unlocked,
};
use crate::device::{Kept, Loaded, Store};
use crate::signoff::{Book, WrappedKey};
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// A value that is stored whole.
struct Whole<T> {
    now: Rc<T>,
    /// Whether what is stored can be read; else nothing is stored over it.
    readable: bool,
    put: Callback<Keep<T>>,
}

/// Keeps a value that was loaded when the page opened. Where another window was quicker nothing is stored, and this one has
/// from then on what that one stored.
#[hook]
fn use_whole<T>(
    store: &Store,
    kept: Kept,
    loaded: Option<&T>,
    found: fn(Loaded<Settings>) -> Option<T>,
) -> Whole<T>
where
    T: Serialize + DeserializeOwned + Default + PartialEq + Clone + 'static,
{
    let now = use_state(|| Rc::new(loaded.cloned().unwrap_or_default()));
    let latest = use_mut_ref(|| (*now).clone());
    let readable = loaded.is_some();
    let put = use_callback((store.clone(), readable), {
        let set = now.setter();
        move |Keep { what, done }: Keep<T>, (store, readable)| {
            if !*readable {
                return done.emit(false);
            }
            let (store, set, latest) = (store.clone(), set.clone(), Rc::clone(&latest));
            spawn_local(async move {
                let from = Rc::clone(&latest.borrow());
                let stored = store.swap(kept, &*from, &what).await.is_ok();
                let next = if stored { Some(what) } else { store.load().await.ok().and_then(found) };
                let next = next.map_or(from, Rc::new);
                latest.replace(Rc::clone(&next));
                set.set(next);
                done.emit(stored);
            });
        }
    });
    Whole { now: (*now).clone(), readable, put }
}

/// The apprentices that were loaded when the page opened.
#[hook]
pub(in crate::app) fn use_kept_people(store: &Store, loaded: &Loaded<Settings>) -> PeopleContext {
    let Whole { now, readable, put } =
        use_whole(store, Kept::Crew, loaded.crew.as_ref(), |loaded| loaded.crew);
    PeopleContext { crew: now, readable, put }
}

/// The keys that were loaded when the page opened; none of them open.
#[hook]
pub(in crate::app) fn use_kept_keys(store: &Store, loaded: &Loaded<Settings>) -> KeysContext {
    let whole = use_whole(store, Kept::Keys, loaded.keys.as_ref(), |loaded| loaded.keys);
    let read = use_memo(Rc::clone(&whole.now), |texts| read(texts));
    let readable = whole.readable && read.1;
    let open = use_state(|| None::<Unlocked>);
    let put =
        use_callback((whole.put, readable), |Keep { what, done }: Keep<Vec<WrappedKey>>, (put, readable)| {
            let texts: Result<Vec<String>, _> = what.iter().map(WrappedKey::text).collect();
            match texts {
                Ok(what) if *readable => put.emit(Keep { what, done }),
                _ => done.emit(false),
            }
        });
    let set_open = use_callback((), {
        let set = open.setter();
        move |now: Option<Unlocked>, ()| set.set(now)
    });
    KeysContext { wrapped: Rc::clone(&read.0), readable, put, open: (*open).clone(), set_open }
}

/// The keys as they are stored, and whether all of them can be read.
fn read(texts: &[String]) -> (Rc<Vec<WrappedKey>>, bool) {
    let read: Vec<WrappedKey> =
        texts.iter().filter_map(|text| WrappedKey::read(text.as_bytes()).ok()).collect();
    let all = read.len() == texts.len();
    (Rc::new(read), all)
}

/// What the shop asks for more, as it was loaded when the page opened.
#[hook]
pub(in crate::app) fn use_kept_stricter(store: &Store, loaded: &Loaded<Settings>) -> StricterContext {
    let Whole { now, readable, put } =
        use_whole(store, Kept::Stricter, loaded.stricter.as_ref(), |loaded| loaded.stricter);
    StricterContext { asked: now, readable, put }
}

/// The sign-off book that was loaded when the page opened.
#[hook]
pub(in crate::app) fn use_kept_signed(store: &Store, loaded: &Loaded<Settings>) -> SignedContext {
    let stored = use_state(|| Stored::new(loaded.records.clone()));
    let latest = use_mut_ref(|| (*stored).clone());
    let reload = use_callback(store.clone(), {
        let (set, latest) = (stored.setter(), Rc::clone(&latest));
        move |(), store| {
            let (store, set, latest) = (store.clone(), set.clone(), Rc::clone(&latest));
            spawn_local(async move {
                if let Ok(loaded) = store.load::<Settings>().await {
                    let next = Stored::new(loaded.records);
                    latest.replace(next.clone());
                    set.set(next);
                }
            });
        }
    });
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
    SignedContext { stored: (*stored).clone(), add, reload }
}
