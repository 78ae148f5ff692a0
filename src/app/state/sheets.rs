//! The shop's own sheets of this tablet as the screens see them.

use super::Keep;
use crate::exchange::{Editions, OwnSheet, SheetDraft};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct SheetsContext {
    /// The editions, whether this program can use them or not.
    pub(in crate::app) editions: Rc<Editions>,
    /// Stored files that this program cannot read; they stay.
    pub(in crate::app) unread: usize,
    /// The sheet that is being edited.
    pub(in crate::app) draft: Option<Rc<SheetDraft>>,
    /// Keeps a new edition, one that was made here or taken.
    pub(in crate::app) put: Callback<Keep<OwnSheet>>,
    /// Reads the editions anew, since one came otherwise: with a set that stands on it.
    pub(in crate::app) reread: Callback<Callback<bool>>,
    /// Takes an edition off the tablet, by its slug.
    pub(in crate::app) let_go: Callback<Keep<String>>,
    /// Keeps the sheet that is being edited.
    pub(in crate::app) edit: Callback<Option<SheetDraft>>,
}
