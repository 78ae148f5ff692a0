//! Keeps the results of other tablets: read when a screen asks for them, taken in file by file, stored one text a device.

use super::crew_view::use_crew_view;
use super::slices::Slices;
use super::told::now;
use crate::app::state::{
    BookContext, Came, ContentContext, CrewContext, NotIn, PeopleContext, Settings, Shared, SignedContext,
};
use crate::device::files::{self, Picked};
use crate::device::{Shelf, Store, clock};
use crate::exchange::crew::{Added, Gathered};
use crate::exchange::{
    Named, OwnSheet, RESULTS, Reading, Refused, Results, SHEET, Writing, content_name, read, save_name,
};
use crate::learn::check::Sealed;
use crate::record::Journal;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Events that are read between two looks at the clock.
const EVENTS_AT_ONCE: usize = 50;

/// What the hook stands on.
pub(in crate::app) struct Around<'a> {
    pub(in crate::app) store: &'a Store,
    pub(in crate::app) content: &'a ContentContext,
    pub(in crate::app) settings: &'a Rc<Settings>,
    pub(in crate::app) book: &'a BookContext,
    pub(in crate::app) people: &'a PeopleContext,
    pub(in crate::app) signed: &'a SignedContext,
}

#[hook]
pub(in crate::app) fn use_kept_crew(around: &Around<'_>) -> CrewContext {
    let Around { store, content, settings, book, people, signed } = around;
    let others = use_state(|| None::<Shared<Gathered>>);
    let broken = use_state(|| 0_usize);
    let came = use_state(|| Rc::new(Vec::<Came>::new()));
    let busy = use_state(|| false);
    // What was read, also by what is still under way.
    let latest = use_mut_ref(|| None::<Gathered>);
    let asked = use_mut_ref(|| false);
    // What this tablet adds is that of the moment at which a screen asked last.
    let own_at = use_state(|| 0_u64);
    let here: Rc<Vec<Named>> =
        use_memo(Rc::clone(&people.crew), |crew| crew.members().iter().map(Named::from).collect());
    let journal = Rc::clone(&book.book.journal);
    let load = use_callback(((*store).clone(), journal.next_sequence()), {
        let own_at = own_at.setter();
        let (others, broken, busy) = (others.setter(), broken.setter(), busy.setter());
        let latest = Rc::clone(&latest);
        move |(), (store, next): &(Store, u64)| {
            own_at.set(*next);
            if asked.replace(true) {
                return;
            }
            let (store, others, broken, busy) = (store.clone(), others.clone(), broken.clone(), busy.clone());
            let latest = Rc::clone(&latest);
            busy.set(true);
            spawn_local(async move {
                let mut slices = Slices::begin();
                let (mut gathered, mut wrong) = (Gathered::default(), 0);
                for (_, text) in store.shelf(Shelf::Results).await.unwrap_or_default() {
                    let read = read_slowly(text.as_bytes(), &mut slices).await;
                    let taken = read.ok().map(|results| gathered.take(results));
                    wrong += usize::from(!matches!(taken, Some(Ok(_))));
                }
                *latest.borrow_mut() = Some(gathered.clone());
                others.set(Some(Shared::new(gathered)));
                broken.set(wrong);
                busy.set(false);
            });
        }
    });
    let all = use_mut_ref(Vec::<Came>::new);
    let take = use_callback((*store).clone(), {
        let (others, busy, came) = (others.setter(), busy.setter(), came.clone());
        let latest = Rc::clone(&latest);
        move |picked: Vec<Picked>, store: &Store| {
            let (store, others, busy) = (store.clone(), others.clone(), busy.clone());
            let (latest, came, all) = (Rc::clone(&latest), came.setter(), Rc::clone(&all));
            busy.set(true);
            spawn_local(async move {
                let mut slices = Slices::begin();
                for file in picked {
                    let gathered = latest.borrow().clone().unwrap_or_default();
                    let (what, now) = take_in(&store, gathered, file.bytes, &mut slices).await;
                    *latest.borrow_mut() = Some(now);
                    all.borrow_mut().insert(0, Came { name: file.name, what });
                    came.set(Rc::new(all.borrow().clone()));
                }
                others.set(latest.borrow().clone().map(Shared::new));
                busy.set(false);
            });
        }
    });
    let forget = use_callback((*store).clone(), {
        let (others, latest) = (others.setter(), Rc::clone(&latest));
        move |device: String, store: &Store| {
            let (store, others, latest) = (store.clone(), others.clone(), Rc::clone(&latest));
            spawn_local(async move {
                if store.unshelve(Shelf::Results, &shelf_name(&device)).await.is_ok() {
                    if let Some(gathered) = latest.borrow_mut().as_mut() {
                        gathered.forget(&device);
                    }
                    others.set(latest.borrow().clone().map(Shared::new));
                }
            });
        }
    });
    let save = use_callback(
        (
            (*store).clone(),
            (*content).clone(),
            Rc::clone(&journal),
            Rc::clone(&here),
            settings.device.clone(),
        ),
        |(), (store, content, journal, here, device)| {
            let (store, content, journal) = (store.clone(), content.clone(), Rc::clone(journal));
            let (here, device) = (here.to_vec(), device.clone());
            let name = save_name(RESULTS.format, &whose(&journal, &here), clock::today(), "json");
            spawn_local(async move {
                let sheets = own_sheets(&store).await;
                let of = (device.as_str(), &*clock::now());
                save_file(&name, &Results::of(&content.0, &journal, &sheets, here, of));
            });
        },
    );
    // Other tablets and this one together; a journal only grows. What a check keeps sealed on this tablet is not told here
    // either.
    let own = ((*others).clone(), *own_at, Rc::clone(&here), clock::today());
    let gathered = use_memo(own, |(others, _, here, _)| {
        let mut all = (**others.as_ref()?).clone();
        let own = (settings.device.as_str(), &*clock::now());
        let mut results = Results::of(&content.0, &journal, &[], here.to_vec(), own);
        let sealed = Sealed::of(&content.0, journal.events(), now());
        results.events.retain(|event| !event.answer().is_some_and(|entry| sealed.hides(entry)));
        // Where a copy of this tablet's journal went on elsewhere, the copy is what was taken in: its file was refused or is told.
        drop(all.take(results));
        Some(Shared::new(all))
    });
    let with_sheets = use_memo(((*content).clone(), (*others).clone()), |(content, others)| {
        let own = others.iter().flat_map(|all| all.devices()).flat_map(|one| &one.sheets);
        let own: Vec<_> = own.filter_map(|sheet| sheet.sheet(&content.0).ok()).collect();
        if own.is_empty() { content.clone() } else { ContentContext(Rc::new(content.0.with_sheets(own))) }
    });
    let view = use_crew_view(&gathered, &with_sheets, signed, &here);
    CrewContext {
        gathered: (*gathered).clone(),
        view,
        content: (*with_sheets).clone(),
        broken: *broken,
        came: Rc::clone(&came),
        busy: *busy,
        load,
        take,
        forget,
        save,
    }
}

/// Takes one file in and stores what it changed, all or nothing; what came of it, and what is known now.
async fn take_in(
    store: &Store,
    gathered: Gathered,
    bytes: Result<Vec<u8>, files::Unread>,
    slices: &mut Slices,
) -> (Result<Added, NotIn>, Gathered) {
    let Ok(bytes) = bytes else { return (Err(NotIn::Unread), gathered) };
    let results = match read_slowly(&bytes, slices).await {
        Ok(results) => results,
        Err(refused) => return (Err(NotIn::Refused(refused)), gathered),
    };
    let mut with = gathered.clone();
    let added = match with.take(results) {
        Ok(added) => added,
        Err(clash) => return (Err(NotIn::Clash(clash)), gathered),
    };
    let mut texts = Vec::new();
    for results in added.changed.iter().filter_map(|device| with.device(device)) {
        let Ok(text) = write_slowly(results, slices).await else { return (Err(NotIn::NotStored), gathered) };
        texts.push((shelf_name(&results.device), text));
    }
    match store.shelve(Shelf::Results, &texts).await {
        Ok(()) => (Ok(added), with),
        Err(_) => (Err(NotIn::NotStored), gathered),
    }
}

async fn read_slowly(bytes: &[u8], slices: &mut Slices) -> Result<Results, Refused> {
    let mut reading = Reading::begin(bytes)?;
    while reading.read_some(EVENTS_AT_ONCE)? {
        slices.rest().await;
    }
    Ok(reading.results())
}

async fn write_slowly(results: &Results, slices: &mut Slices) -> Result<String, Refused> {
    let mut writing = Writing::begin(results)?;
    while writing.write_some(EVENTS_AT_ONCE)? {
        slices.rest().await;
    }
    Ok(writing.text())
}

/// What the results of a device are kept under: the name of a device comes from a file and may be anything.
fn shelf_name(device: &str) -> String {
    content_name(RESULTS, device.as_bytes())
}

async fn own_sheets(store: &Store) -> Vec<OwnSheet> {
    let files = store.shelf(Shelf::Sheets).await.unwrap_or_default();
    files.iter().filter_map(|(_, text)| read(text.as_bytes(), SHEET).ok()).collect()
}

/// Whose answers a journal holds, as they are called here.
fn whose(journal: &Journal, here: &[Named]) -> String {
    let named = |person: &str| {
        let one = here.iter().find(|one| one.journal == person);
        one.map_or_else(|| person.to_owned(), |one| format!("{} {}", one.name, one.number))
    };
    journal.people().into_iter().map(named).collect::<Vec<_>>().join(" ")
}

fn save_file(name: &str, results: &Results) {
    let saved = results
        .text()
        .map_err(|refused| refused.to_string())
        .and_then(|text| files::save_json(name, &text).map_err(|error| format!("{error:?}")));
    if let Err(error) = saved {
        web_sys::console::error_1(&error.into());
    }
}
