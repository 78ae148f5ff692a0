//! Effects that several screens need.

mod contexts;
mod keeper;
mod keys;
mod route;
mod size;
mod version;
mod writer;

pub(super) use contexts::{use_book, use_desk, use_settings};
pub(super) use keeper::{Keeper, use_keeper};
pub(super) use keys::use_keys;
pub(super) use route::use_route;
pub(super) use size::use_size;
pub(super) use version::use_new_version;
