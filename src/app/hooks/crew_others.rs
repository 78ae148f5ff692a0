//! The results of other tablets: read off the shelf when a screen asks, taken in file by file, left out.

use super::crew_shelf::{leave_out, read_slowly, shelf_name, take_in};
use crate::app::state::{Came, Shared};
use crate::device::files::Picked;
use crate::device::{Shelf, Slices, Store};
use crate::exchange::crew::Gathered;
use std::cell::RefCell;
use std::collections::{BTreeSet, VecDeque};
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
    /// Whether the shelf is to be looked at.
    asked: bool,
    /// What waits, in its order.
    waiting: VecDeque<Work>,
    /// Whether that is being done: one thing after another, or what came between would be lost.
    working: bool,
    /// What came of the files that were picked, the last one first.
    came: Vec<Came>,
}

/// What changes the results of other tablets.
enum Work {
    /// A file that was picked.
    Take(Picked),
    /// A device that is left out.
    Forget(String),
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
    let give = use_callback(store.clone(), {
        let shown = Rc::new(Shown {
            gathered: gathered.setter(),
            broken: broken.setter(),
            came: came.setter(),
            busy: busy.setter(),
        });
        move |waiting: Vec<Work>, store: &Store| {
            // At once: what came of a file before is not taken for what comes of this one.
            if !waiting.is_empty() {
                shown.busy.set(true);
            }
            {
                let mut known = known.borrow_mut();
                known.asked = true;
                known.waiting.extend(waiting);
                if core::mem::replace(&mut known.working, true) {
                    return;
                }
            }
            let (store, known, shown) = (store.clone(), Rc::clone(&known), Rc::clone(&shown));
            spawn_local(async move { work(&store, &known, &shown).await });
        }
    });
    let read = use_callback(give.clone(), |(), give| give.emit(Vec::new()));
    let take = use_callback(give.clone(), |picked: Vec<Picked>, give| {
        give.emit(picked.into_iter().map(Work::Take).collect());
    });
    let forget = use_callback(give, |device, give| give.emit(vec![Work::Forget(device)]));
    let (gathered, came) = ((*gathered).clone(), Rc::clone(&came));
    Others { gathered, broken: *broken, came, busy: *busy, read, take, forget }
}

/// Where what is known goes that screens show.
struct Shown {
    gathered: UseStateSetter<Option<Shared<Gathered>>>,
    broken: UseStateSetter<usize>,
    came: UseStateSetter<Rc<Vec<Came>>>,
    busy: UseStateSetter<bool>,
}

impl Shown {
    fn tell(&self, known: &Known) {
        self.gathered.set(known.gathered.clone().map(Shared::new));
        self.broken.set(known.unusable);
    }
}

/// Reads what lies on the shelf, then does what waits, until nothing does.
async fn work(store: &Store, known: &RefCell<Known>, shown: &Shown) {
    let mut slices = Slices::begin();
    loop {
        if core::mem::take(&mut known.borrow_mut().asked) && has_more(store, known).await {
            shown.busy.set(true);
            read_off_shelf(store, known).await;
            shown.tell(&known.borrow());
        }
        let next = known.borrow_mut().waiting.pop_front();
        let Some(next) = next else {
            // A screen may have asked meanwhile.
            if known.borrow().asked {
                continue;
            }
            break;
        };
        shown.busy.set(true);
        match next {
            Work::Take(file) => {
                take_one(store, known, file, &mut slices).await;
                shown.came.set(Rc::new(known.borrow().came.clone()));
            }
            Work::Forget(device) => forget_one(store, known, &device).await,
        }
        if known.borrow().waiting.is_empty() {
            shown.tell(&known.borrow());
        }
    }
    known.borrow_mut().working = false;
    shown.busy.set(false);
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

/// Leaves a device out.
async fn forget_one(store: &Store, known: &RefCell<Known>, device: &str) {
    if leave_out(store, device).await.is_ok()
        && let Some(gathered) = &mut known.borrow_mut().gathered
    {
        gathered.forget(device);
    }
}
