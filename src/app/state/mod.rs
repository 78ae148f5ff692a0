//! What the screens share: content, settings, journal, and the card on the desk. Four contexts, so that a change of one
//! redraws only those who read it.

mod book;
mod desk;
mod settings;
mod shop;

pub(super) use book::{Book, BookChange, BookContext, Saved};
pub(super) use desk::{Desk, DeskChange, DeskContext};
pub(super) use settings::{Light, Settings, SettingsContext};
pub(super) use shop::{ContentContext, Shop, use_shop};
