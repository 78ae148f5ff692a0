//! What the shop asks for more than the content does, as the screens see it.

use super::Keep;
use crate::content::Stricter;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct StricterContext {
    /// All that was ever asked, oldest first; the last one of a competency counts.
    pub(in crate::app) asked: Rc<Vec<Stricter>>,
    /// Whether what is stored can be read; else nothing is stored over it.
    pub(in crate::app) readable: bool,
    pub(in crate::app) put: Callback<Keep<Vec<Stricter>>>,
}
