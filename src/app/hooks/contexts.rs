//! The contexts, read. They stand around every screen; without them the program is put together wrongly and stops.

use crate::app::state::{
    AirContext, BookContext, CrewContext, DeskContext, Everything, FolderContext, KeysContext, LockContext,
    PeopleContext, SetsContext, SettingsContext, SheetsContext, SignedContext, StricterContext, WalksContext,
    WatchingContext,
};
use yew::prelude::*;

#[hook]
fn use_given<T: Clone + PartialEq + 'static>() -> T {
    use_context().unwrap_or_else(|| unreachable!("the root gives every context"))
}

#[hook]
pub(in crate::app) fn use_settings() -> SettingsContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_air() -> AirContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_sheets() -> SheetsContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_book() -> BookContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_desk() -> DeskContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_people() -> PeopleContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_folder() -> FolderContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_keys_held() -> KeysContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_sets() -> SetsContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_signed() -> SignedContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_lock() -> LockContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_stricter() -> StricterContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_walks() -> WalksContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_watching() -> WatchingContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_crew() -> CrewContext {
    use_given()
}

#[hook]
pub(in crate::app) fn use_everything() -> Everything {
    use_given()
}
