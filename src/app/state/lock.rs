//! Whether the tablet asks who works before it shows anything.

use yew::prelude::*;

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct LockContext {
    pub(in crate::app) locked: bool,
    /// Locks it, keys of assessors too, or opens it.
    pub(in crate::app) set: Callback<bool>,
}
