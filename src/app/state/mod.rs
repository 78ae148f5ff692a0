//! What the screens share: content, settings, journal, the card on the desk, people, keys, the sign-off book, shop sheets, the air of the room and half-made
//! observations. Each is a context of its own, so that a change of one redraws only those who read it.

mod air;
mod book;
mod crew;
mod desk;
mod everything;
mod folder;
mod keys;
mod lock;
mod people;
mod sets;
mod settings;
mod shared;
mod sheets;
mod shop;
mod signed;
mod stricter;
mod told;
mod walks;
mod watching;

pub(super) use air::AirContext;
pub(super) use book::{Book, BookChange, BookContext, Saved};
pub(super) use crew::{Came, CrewContext, CrewView, NotIn};
pub(super) use desk::{Desk, DeskChange, DeskContext, OnDesk};
pub(super) use everything::Everything;
pub(super) use folder::{FolderAct, FolderContext, FolderView, KeptFolder};
pub(super) use keys::{KeysContext, Unlocked};
pub(super) use lock::LockContext;
pub(super) use people::{Keep, PeopleContext};
pub(super) use sets::{KeptSet, Origin, SetFile, SetsContext};
pub(super) use settings::{Light, Settings, SettingsContext};
pub(super) use shared::Shared;
pub(super) use sheets::SheetsContext;
pub(super) use shop::{ContentContext, Shop, use_shop};
pub(super) use signed::{Signed, SignedContext, Stored};
pub(super) use stricter::StricterContext;
pub(super) use told::Told;
pub(super) use walks::{Onward, WalksContext};
pub(super) use watching::{Watching, WatchingChange, WatchingContext};
