//! Keeps the results of other tablets: read when a screen asks for them, taken in file by file, stored one text a device.

use super::crew_shelf::{leave_out, read_slowly, shelf_name, take_in};
use super::crew_view::use_crew_view;
use super::told::now;
use crate::app::state::{
    BookContext, Came, ContentContext, CrewContext, PeopleContext, Settings, Shared, SignedContext,
};
use crate::device::Slices;
use crate::device::files::{self, Picked};
use crate::device::{Shelf, Store, clock};
use crate::exchange::crew::Gathered;
use crate::exchange::{Named, OwnSheet, Results, SHEET, read};
use crate::learn::check::Sealed;
use std::collections::BTreeSet;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

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
    // The files of the shelf that were read, and whether others are read just now.
    let (seen, reading) = (use_mut_ref(BTreeSet::<String>::new), use_mut_ref(|| false));
    let unusable = use_mut_ref(|| 0_usize);
    // What this tablet adds is that of the moment at which a screen asked last.
    let own_at = use_state(|| 0_u64);
    let here: Rc<Vec<Named>> =
        use_memo(Rc::clone(&people.crew), |crew| crew.members().iter().map(Named::from).collect());
    let journal = book.book.journal.clone();
    let load = use_callback(((*store).clone(), journal.next_sequence()), {
        let own_at = own_at.setter();
        let (others, broken, busy) = (others.setter(), broken.setter(), busy.setter());
        let (latest, seen) = (Rc::clone(&latest), Rc::clone(&seen));
        let unusable = Rc::clone(&unusable);
        move |(), (store, next): &(Store, u64)| {
            own_at.set(*next);
            if reading.replace(true) {
                return;
            }
            let (store, others, broken, busy) = (store.clone(), others.clone(), broken.clone(), busy.clone());
            let (latest, seen, reading) = (Rc::clone(&latest), Rc::clone(&seen), Rc::clone(&reading));
            let unusable = Rc::clone(&unusable);
            spawn_local(async move {
                // The shop's folder may have brought some since.
                let names = store.names(Shelf::Results).await.unwrap_or_default();
                let known =
                    latest.borrow().is_some() && names.iter().all(|name| seen.borrow().contains(name));
                if !known {
                    busy.set(true);
                    let mut slices = Slices::begin();
                    latest.borrow_mut().get_or_insert_default();
                    for (name, text) in store.shelf(Shelf::Results).await.unwrap_or_default() {
                        // What was left out has a name only.
                        if !seen.borrow_mut().insert(name) || text.is_empty() {
                            continue;
                        }
                        let read = read_slowly(text.as_bytes(), &mut slices).await;
                        let taken = read
                            .ok()
                            .map(|results| latest.borrow_mut().get_or_insert_default().take(results));
                        *unusable.borrow_mut() += usize::from(!matches!(taken, Some(Ok(_))));
                    }
                    others.set(latest.borrow().clone().map(Shared::new));
                    broken.set(*unusable.borrow());
                    busy.set(false);
                }
                reading.replace(false);
            });
        }
    });
    let all = use_mut_ref(Vec::<Came>::new);
    let take = use_callback((*store).clone(), {
        let (others, busy, came) = (others.setter(), busy.setter(), came.clone());
        let (latest, seen) = (Rc::clone(&latest), Rc::clone(&seen));
        move |picked: Vec<Picked>, store: &Store| {
            let (store, others, busy) = (store.clone(), others.clone(), busy.clone());
            let seen = Rc::clone(&seen);
            let (latest, came, all) = (Rc::clone(&latest), came.setter(), Rc::clone(&all));
            busy.set(true);
            spawn_local(async move {
                let mut slices = Slices::begin();
                for file in picked {
                    let gathered = latest.borrow().clone().unwrap_or_default();
                    let (what, now) = take_in(&store, gathered, file.bytes, &mut slices).await;
                    *latest.borrow_mut() = Some(now);
                    let changed = what.iter().flat_map(|added| &added.changed);
                    seen.borrow_mut().extend(changed.map(|device| shelf_name(device)));
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
                if leave_out(&store, &device).await.is_ok() {
                    if let Some(gathered) = latest.borrow_mut().as_mut() {
                        gathered.forget(&device);
                    }
                    others.set(latest.borrow().clone().map(Shared::new));
                }
            });
        }
    });
    let save = use_callback(
        ((*store).clone(), (*content).clone(), journal.clone(), Rc::clone(&here), settings.device.clone()),
        |(), (store, content, journal, here, device)| {
            let (store, content, journal) = (store.clone(), content.clone(), journal.clone());
            let (here, device) = (here.to_vec(), device.clone());
            spawn_local(async move {
                let sheets = own_sheets(&store).await;
                let of = (device.as_str(), &*clock::now());
                let results = Results::of(&content.0, &journal, &sheets, here, of);
                if let Err(error) = save_results(&results) {
                    web_sys::console::error_1(&error.into());
                }
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
        results.events.retain(|event| !sealed.hides_event(event));
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

async fn own_sheets(store: &Store) -> Vec<OwnSheet> {
    let files = store.shelf(Shelf::Sheets).await.unwrap_or_default();
    files.iter().filter_map(|(_, text)| read(text.as_bytes(), SHEET).ok()).collect()
}

/// Offers results as a file to save; gives its name.
///
/// # Errors
/// What cannot be written, or what the browser said.
pub(in crate::app) fn save_results(results: &Results) -> Result<String, String> {
    let name = results.save_name(clock::today());
    let text = results.text().map_err(|refused| refused.to_string())?;
    files::save_json(&name, &text).map_err(|error| format!("{error:?}"))?;
    Ok(name)
}
