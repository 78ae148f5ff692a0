//! What an instructor sees of everybody: the results of other tablets and those of this one, stored one text a device.

use super::crew_others::{Others, use_others};
use super::crew_view::use_crew_view;
use super::told::now;
use crate::app::state::{
    BookContext, ContentContext, CrewContext, PeopleContext, Settings, Shared, SignedContext,
};
use crate::device::files;
use crate::device::{Shelf, Store, clock};
use crate::exchange::{Named, OwnSheet, Results, SHEET, read};
use crate::learn::check::Sealed;
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
    let others = use_others(store);
    // What this tablet adds is that of the moment at which a screen asked last.
    let own_at = use_state(|| 0_u64);
    let here: Rc<Vec<Named>> =
        use_memo(Rc::clone(&people.crew), |crew| crew.members().iter().map(Named::from).collect());
    let journal = book.book.journal.clone();
    let load = use_callback((others.read.clone(), journal.next_sequence()), {
        let own_at = own_at.setter();
        move |(), (read, next): &(Callback<()>, u64)| {
            own_at.set(*next);
            read.emit(());
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
    let own = (others.gathered.clone(), *own_at, Rc::clone(&here), clock::today());
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
    let with_sheets = use_memo(((*content).clone(), others.gathered.clone()), |(content, others)| {
        let own = others.iter().flat_map(|all| all.devices()).flat_map(|one| &one.sheets);
        let own: Vec<_> = own.filter_map(|sheet| sheet.sheet(&content.0).ok()).collect();
        if own.is_empty() { content.clone() } else { ContentContext(Rc::new(content.0.with_sheets(own))) }
    });
    let view = use_crew_view(&gathered, &with_sheets, signed, &here);
    let Others { broken, came, busy, take, forget, .. } = others;
    let (gathered, content) = ((*gathered).clone(), (*with_sheets).clone());
    CrewContext { gathered, view, content, broken, came, busy, load, take, forget, save }
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
