//! The results of other tablets: read off the shelf when a screen asks, taken in file by file, left out.

use super::crew_shelf::{leave_out, read_slowly, shelf_name, take_in};
use crate::app::state::{Came, Shared};
use crate::device::files::Picked;
use crate::device::{Shelf, Slices, Store};
use crate::exchange::crew::Gathered;
use std::cell::RefCell;
use std::collections::BTreeSet;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// What was read, also by what is still under way.
#[derive(Default)]
struct Known {
    gathered: Option<Gathered>,
    /// The files of the shelf that were read, and how many of them could not be used.
    seen: BTreeSet<String>,
    unusable: usize,
    /// Whether some are read just now.
    reading: bool,
    /// What came of the files that were picked, the last one first.
    came: Vec<Came>,
}

/// The results of other tablets, and what changes them.
pub(super) struct Others {
    /// None before a screen asked for them.
    pub(super) gathered: Option<Shared<Gathered>>,
    pub(super) broken: usize,
    pub(super) came: Rc<Vec<Came>>,
    pub(super) busy: bool,
    pub(super) read: Callback<()>,
    pub(super) take: Callback<Vec<Picked>>,
    pub(super) forget: Callback<String>,
}

#[hook]
pub(super) fn use_others(store: &Store) -> Others {
    let known = use_mut_ref(Known::default);
    let gathered = use_state(|| None::<Shared<Gathered>>);
    let broken = use_state(|| 0_usize);
    let came = use_state(|| Rc::new(Vec::<Came>::new()));
    let busy = use_state(|| false);
    let show = {
        let (known, gathered, broken) = (Rc::clone(&known), gathered.setter(), broken.setter());
        move || {
            let known = known.borrow();
            gathered.set(known.gathered.clone().map(Shared::new));
            broken.set(known.unusable);
        }
    };
    let read = use_callback(store.clone(), {
        let (known, show, busy) = (Rc::clone(&known), show.clone(), busy.setter());
        move |(), store: &Store| {
            if core::mem::replace(&mut known.borrow_mut().reading, true) {
                return;
            }
            let (store, known, show, busy) = (store.clone(), Rc::clone(&known), show.clone(), busy.clone());
            spawn_local(async move {
                if has_more(&store, &known).await {
                    busy.set(true);
                    read_off_shelf(&store, &known).await;
                    show();
                    busy.set(false);
                }
                known.borrow_mut().reading = false;
            });
        }
    });
    let take = use_callback(store.clone(), {
        let (known, show) = (Rc::clone(&known), show.clone());
        let (came, busy) = (came.setter(), busy.setter());
        move |picked: Vec<Picked>, store: &Store| {
            let (store, known, show) = (store.clone(), Rc::clone(&known), show.clone());
            let (came, busy) = (came.clone(), busy.clone());
            busy.set(true);
            spawn_local(async move {
                let mut slices = Slices::begin();
                for file in picked {
                    take_one(&store, &known, file, &mut slices).await;
                    came.set(Rc::new(known.borrow().came.clone()));
                }
                show();
                busy.set(false);
            });
        }
    });
    let forget = use_callback(store.clone(), move |device: String, store: &Store| {
        let (store, known, show) = (store.clone(), Rc::clone(&known), show.clone());
        spawn_local(async move {
            if leave_out(&store, &device).await.is_ok() {
                if let Some(gathered) = &mut known.borrow_mut().gathered {
                    gathered.forget(&device);
                }
                show();
            }
        });
    });
    let (gathered, came) = ((*gathered).clone(), Rc::clone(&came));
    Others { gathered, broken: *broken, came, busy: *busy, read, take, forget }
}

/// Whether something lies on the shelf that was not read: the shop's folder may have brought some since.
async fn has_more(store: &Store, known: &RefCell<Known>) -> bool {
    let names = store.names(Shelf::Results).await.unwrap_or_default();
    let known = known.borrow();
    known.gathered.is_none() || names.iter().any(|name| !known.seen.contains(name))
}

/// Reads what lies on the shelf and was not read.
async fn read_off_shelf(store: &Store, known: &RefCell<Known>) {
    let mut slices = Slices::begin();
    known.borrow_mut().gathered.get_or_insert_default();
    for (name, text) in store.shelf(Shelf::Results).await.unwrap_or_default() {
        // What was left out has a name only.
        if !known.borrow_mut().seen.insert(name) || text.is_empty() {
            continue;
        }
        let read = read_slowly(text.as_bytes(), &mut slices).await;
        let mut known = known.borrow_mut();
        let taken = read.is_ok_and(|results| known.gathered.get_or_insert_default().take(results).is_ok());
        known.unusable += usize::from(!taken);
    }
}

/// Takes in one file that was picked.
async fn take_one(store: &Store, known: &RefCell<Known>, file: Picked, slices: &mut Slices) {
    let gathered = known.borrow().gathered.clone().unwrap_or_default();
    let (what, now) = take_in(store, gathered, file.bytes, slices).await;
    let mut known = known.borrow_mut();
    known.gathered = Some(now);
    let changed = what.iter().flat_map(|added| &added.changed);
    known.seen.extend(changed.map(|device| shelf_name(device)));
    known.came.insert(0, Came { name: file.name, what });
}
