//! Effects that several screens need.

mod contexts;
mod keeper;
mod keys;

pub(super) use contexts::{use_book, use_desk, use_settings};
pub(super) use keeper::{Keeper, use_keeper};
pub(super) use keys::use_keys;
