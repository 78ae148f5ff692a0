//! The contexts, read. They stand around every screen; without them the program is put together wrongly and stops.

use crate::app::state::{
    BookContext, DeskContext, KeysContext, LockContext, PeopleContext, SettingsContext, SignedContext,
    StricterContext, WatchingContext,
};
use yew::prelude::*;

#[hook]
pub(in crate::app) fn use_settings() -> SettingsContext {
    use_context().unwrap_or_else(|| unreachable!("the root sets the settings"))
}

#[hook]
pub(in crate::app) fn use_book() -> BookContext {
    use_context().unwrap_or_else(|| unreachable!("the root sets the book"))
}

#[hook]
pub(in crate::app) fn use_desk() -> DeskContext {
    use_context().unwrap_or_else(|| unreachable!("the root sets the desk"))
}

#[hook]
pub(in crate::app) fn use_people() -> PeopleContext {
    use_context().unwrap_or_else(|| unreachable!("the root sets the people"))
}

#[hook]
pub(in crate::app) fn use_keys_held() -> KeysContext {
    use_context().unwrap_or_else(|| unreachable!("the root sets the keys"))
}

#[hook]
pub(in crate::app) fn use_signed() -> SignedContext {
    use_context().unwrap_or_else(|| unreachable!("the root sets the sign-off book"))
}

#[hook]
pub(in crate::app) fn use_lock() -> LockContext {
    use_context().unwrap_or_else(|| unreachable!("the root sets the lock"))
}

#[hook]
pub(in crate::app) fn use_stricter() -> StricterContext {
    use_context().unwrap_or_else(|| unreachable!("the root sets what the shop asks for"))
}

#[hook]
pub(in crate::app) fn use_watching() -> WatchingContext {
    use_context().unwrap_or_else(|| unreachable!("the root sets the observations"))
}
