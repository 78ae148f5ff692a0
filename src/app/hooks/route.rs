//! The screen that the address asks for.

use crate::app::route::{CHANGED, Route};
use gloo::events::EventListener;
use yew::prelude::*;

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
    (*route).clone()
}
