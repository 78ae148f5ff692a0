//! Loads what is stored, then starts the app.

use super::hooks::is_short;
use super::root::{Root, RootProps};
use super::route::Route;
use super::state::{ContentContext, Settings, Shared};
use crate::content::{Content, ENGLISH};
use crate::device::{Loaded, Slices, Store, StoreError, page, rest};
use crate::learn::Front;
use crate::record::Journal;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;

/// What the app starts with.
pub(super) struct Start {
    pub(super) content: ContentContext,
    pub(super) store: Store,
    pub(super) loaded: Loaded<Settings>,
    /// Where it was read already.
    pub(super) journal: Option<Journal>,
    /// What the first screen shows of one that is still to be read.
    pub(super) front: Option<Shared<Front>>,
    /// Settings of a tablet that has none yet.
    pub(super) first: Settings,
}

/// Starts the app on the element with the id `app`, or on the body where there is none.
pub fn start() {
    let content = match Content::embedded() {
        Ok(content) => content,
        Err(error) => {
            web_sys::console::error_1(&error.to_string().into());
            return;
        }
    };
    page::tell_when_broken(&content);
    spawn_local(async move {
        let (store, mut loaded, journal) = found().await.unwrap_or_else(|_| {
            // What cannot be read is not nothing, and nothing is stored over it: whatever is done is told as not saved.
            (Store::default(), Loaded::default(), Some(Journal::default()))
        });
        let front = loaded.front.take().map(Shared::new);
        if Route::now() != Route::Home {
            // Other screens are not in the part of the program that comes first.
            rest::there().await;
        }
        let first = Settings::new(page::random_name(), first_language(&content));
        if loaded.settings.is_none() {
            // Not stored, the device gets another name next time; answers keep the one they were given under.
            let (store, first) = (store.clone(), first.clone());
            spawn_local(async move { drop(store.put_settings(&first).await) });
        }
        let start = Rc::new(Start {
            content: ContentContext(Rc::new(content)),
            store,
            loaded,
            journal,
            front,
            first,
        });
        let place =
            gloo::utils::document().get_element_by_id("app").unwrap_or_else(|| gloo::utils::body().into());
        yew::Renderer::<Root>::with_root_and_props(place, RootProps { start }).render();
    });
}

/// The database and what is stored in it, with the journal where that is short.
async fn found() -> Result<(Store, Loaded<Settings>, Option<Journal>), StoreError> {
    let store = Store::open().await?;
    let loaded: Loaded<Settings> = store.load().await?;
    let journal = match loaded.next {
        Some(Journal::FIRST) => Some(Journal::default()),
        // Nobody would see of a short one that it was not there yet.
        next if is_short(next) => Some(store.journal(&mut Slices::begin()).await?),
        _ => None,
    };
    Ok((store, loaded, journal))
}

/// The language that the browser speaks where there are messages in it, else English.
fn first_language(content: &Content) -> String {
    let browser = page::browser_language();
    let known = content.texts.keys().find(|ours| page::is_of_language(&browser, ours));
    known.map_or(ENGLISH, String::as_str).to_owned()
}
