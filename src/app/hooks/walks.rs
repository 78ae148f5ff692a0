//! Keeps the walks of this tablet: each decision is stored at once, in the place of what it was made from.

use crate::app::state::{Keep, Onward, WalksContext};
use crate::device::{Shelf, Shown, Store, StoreError};
use crate::walk::Kept;
use crate::walk::window::Became;
use std::cmp::Reverse;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// All walks, the one that was worked on last first.
#[derive(Debug, Default, PartialEq)]
struct Held {
    loaded: bool,
    all: Rc<Vec<Rc<Kept>>>,
    unread: usize,
}

/// What changes of them.
enum Change {
    /// The shelf was read; a file that this program cannot read is left out and stays.
    Read(Vec<(String, String)>),
    /// That is stored of a walk; nothing where there is none of that id any more.
    Now(String, Option<Rc<Kept>>),
}

impl Reducible for Held {
    type Action = Change;

    fn reduce(self: Rc<Self>, change: Change) -> Rc<Self> {
        let (loaded, mut all, unread) = match change {
            Change::Read(files) => {
                let all: Vec<_> =
                    files.iter().filter_map(|(_, text)| Kept::read(text)).map(Rc::new).collect();
                let unread = files.len().saturating_sub(all.len());
                (true, all, unread)
            }
            Change::Now(id, now) => {
                let others = self.all.iter().filter(|one| one.id != id).cloned();
                (self.loaded, others.chain(now).collect(), self.unread)
            }
        };
        all.sort_by_key(|one| Reverse(one.changed.clone()));
        Rc::new(Self { loaded, all: Rc::new(all), unread })
    }
}

#[hook]
pub(in crate::app) fn use_kept_walks(store: &Store) -> WalksContext {
    let held = use_reducer(Held::default);
    let reread = use_callback(store.clone(), {
        let held = held.dispatcher();
        move |done: Callback<()>, store| {
            let (store, held) = (store.clone(), held.clone());
            spawn_local(async move {
                if let Ok(files) = store.shelf(Shelf::Walks).await {
                    held.dispatch(Change::Read(files));
                }
                done.emit(());
            });
        }
    });
    // Another window that was in front may have gone on.
    use_effect_with(reread.clone(), |reread| {
        reread.emit(Callback::noop());
        let reread = reread.clone();
        let shown = Shown::tell(move || reread.emit(Callback::noop()));
        move || drop(shown)
    });
    let keep = use_callback(store.clone(), {
        let held = held.dispatcher();
        move |Onward { from, to, done }: Onward, store| {
            let (store, held) = (store.clone(), held.clone());
            spawn_local(async move {
                match store.swap_walk(from.as_deref(), &to).await {
                    Ok(()) => {
                        held.dispatch(Change::Now(to.id.clone(), Some(to)));
                        done.emit(Became::Stored);
                    }
                    Err(StoreError::Changed) => {
                        let Ok(stored) = store.walk(&to.id).await else {
                            return done.emit(Became::NotStored);
                        };
                        let stored = stored.map(Rc::new);
                        held.dispatch(Change::Now(to.id.clone(), stored.clone()));
                        done.emit(Became::Elsewhere(stored));
                    }
                    Err(_) => done.emit(Became::NotStored),
                }
            });
        }
    });
    let let_go = use_callback(store.clone(), {
        let held = held.dispatcher();
        move |Keep { what, done }: Keep<String>, store| {
            let (store, held) = (store.clone(), held.clone());
            spawn_local(async move {
                let gone = store.unshelve(Shelf::Walks, &what).await.is_ok();
                if gone {
                    held.dispatch(Change::Now(what, None));
                }
                done.emit(gone);
            });
        }
    });
    WalksContext { loaded: held.loaded, all: Rc::clone(&held.all), unread: held.unread, keep, reread, let_go }
}
