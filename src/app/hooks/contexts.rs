//! The contexts, read. They stand around every screen; without them the program is put together wrongly and stops.

use crate::app::state::{BookContext, DeskContext, SettingsContext};
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
