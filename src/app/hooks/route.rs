//! The screen that the address asks for.

use super::use_walks;
use crate::app::route::{CHANGED, Route};
use crate::app::state::use_shop;
use crate::device::rest;
use gloo::events::EventListener;
use std::cell::RefCell;
use wasm_bindgen_futures::spawn_local;
use web_sys::Event;
use yew::prelude::*;

thread_local!(static WALK: RefCell<Option<String>> = RefCell::default());

/// Where back leads from the menu: to the walk that was left for it, while it is kept and is that of who works now; else
/// home.
#[hook]
pub(in crate::app) fn use_before_menu() -> Route {
    let (walks, shop) = (use_walks(), use_shop());
    let theirs = |id: &String| walks.find(id).is_some_and(|kept| kept.person == shop.settings.person);
    let left = WALK.with_borrow(Clone::clone).filter(theirs);
    left.map_or(Route::Home, |id| Route::WalkOf { id })
}

/// Notes the id of a walk that is gone to; home it is left for good.
fn note(route: &Route) {
    match route {
        Route::WalkOf { id } => WALK.set(Some(id.clone())),
        Route::Home | Route::Walks => WALK.set(None),
        _ => {}
    }
}

/// Whether a screen was asked for that waits for its part of the program.
#[hook]
pub(in crate::app) fn use_coming() -> bool {
    let coming = use_state_eq(|| false);
    use_effect_with((), {
        let coming = coming.setter();
        move |()| {
            let asked = move |_: &Event| {
                if rest::is_there() {
                    return;
                }
                let coming = coming.clone();
                coming.set(true);
                spawn_local(async move {
                    rest::there().await;
                    coming.set(false);
                });
            };
            let listener = EventListener::new(&gloo::utils::window(), CHANGED, asked);
            move || drop(listener)
        }
    });
    *coming
}

#[hook]
pub(in crate::app) fn use_route() -> Route {
    let route = use_state_eq(Route::now);
    use_effect_with((), {
        let route = route.setter();
        move |()| {
            let changed = move |_: &Event| {
                let route = route.clone();
                // Other screens are in the part of the program that comes behind the first one.
                spawn_local(async move {
                    rest::there().await;
                    route.set(Route::now());
                });
            };
            let listener = EventListener::new(&gloo::utils::window(), CHANGED, changed);
            move || drop(listener)
        }
    });
    note(&route);
    (*route).clone()
}
