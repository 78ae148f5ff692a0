//! Tells when nobody has touched the tablet for a while.

use gloo::events::EventListener;
use gloo::timers::callback::Timeout;
use js_sys::Date;
use std::rc::Rc;
use yew::prelude::*;

/// What counts as somebody being there.
const TOUCHES: [&str; 3] = ["pointerdown", "keydown", "wheel"];

/// Calls back once nothing was touched for so long, each time anew.
#[hook]
pub(in crate::app) fn use_idle(ms: u32, on_idle: Callback<()>) {
    let timer = use_mut_ref(|| None::<Timeout>);
    // A tablet that sleeps runs no timers: the clock tells how long it was left.
    let touched = use_mut_ref(Date::now);
    use_effect_with(on_idle, move |on_idle| {
        let wait = {
            let (timer, on_idle) = (Rc::clone(&timer), on_idle.clone());
            let touched = Rc::clone(&touched);
            move || {
                let on_idle = on_idle.clone();
                if Date::now() - touched.replace(Date::now()) > f64::from(ms) {
                    on_idle.emit(());
                }
                timer.replace(Some(Timeout::new(ms, move || on_idle.emit(()))));
            }
        };
        wait();
        let document = gloo::utils::document();
        let listeners = TOUCHES.map(|name| {
            let wait = wait.clone();
            EventListener::new(&document, name, move |_| wait())
        });
        move || {
            drop(listeners);
            timer.replace(None);
        }
    });
}
