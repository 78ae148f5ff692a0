//! Locks the tablet for those who have a PIN, and shuts the key of an assessor, once nobody is there.

use super::use_idle;
use crate::app::state::{LockContext, Unlocked};
use yew::prelude::*;

/// The tablet was left alone: five minutes, our own choice.
const LEFT_ALONE_MS: u32 = 5 * 60 * 1000;

/// Whoever has a PIN types it again after the page was loaded anew, or was left alone.
#[hook]
pub(in crate::app) fn use_kept_lock(asks_pin: bool, set_open: &Callback<Option<Unlocked>>) -> LockContext {
    let locked = use_state(|| asks_pin);
    let on_idle = use_callback((asks_pin, set_open.clone()), {
        let locked = locked.setter();
        move |(), (asks_pin, set_open)| {
            set_open.emit(None);
            if *asks_pin {
                locked.set(true);
            }
        }
    });
    use_idle(LEFT_ALONE_MS, on_idle);
    let set = use_callback(set_open.clone(), {
        let locked = locked.setter();
        move |lock: bool, set_open| {
            if lock {
                set_open.emit(None);
            }
            locked.set(lock);
        }
    });
    LockContext { locked: *locked, set }
}
