//! The screen that the address asks for.

use crate::app::route::{CHANGED, Route};
use gloo::events::EventListener;
use std::cell::RefCell;
use yew::prelude::*;

thread_local!(static WALK: RefCell<Option<Route>> = RefCell::default());

/// Where back leads from the menu: to the walk that was left for it, or home.
pub(in crate::app) fn before_menu() -> Route {
    WALK.with_borrow(Clone::clone).unwrap_or(Route::Home)
}

/// Notes a walk that is gone to; home it is left for good.
fn note(route: &Route) {
    match route {
        Route::WalkOf { .. } => WALK.set(Some(route.clone())),
        Route::Home | Route::Walks => WALK.set(None),
        _ => {}
    }
}

#[hook]
pub(in crate::app) fn use_route() -> Route {
    let route = use_state_eq(Route::now);
    use_effect_with((), {
        let route = route.setter();
        move |()| {
            let listener =
                EventListener::new(&gloo::utils::window(), CHANGED, move |_| route.set(Route::now()));
            move || drop(listener)
        }
    });
    note(&route);
    (*route).clone()
}
