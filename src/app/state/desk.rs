//! The card on the desk: it stays there when the screen is left or the page is loaded again.

use crate::record::Draft;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct DeskContext {
    /// The card being answered.
    pub(in crate::app) draft: Option<Rc<Draft>>,
    /// Puts a card on the desk, or the same card with more of its answer.
    pub(in crate::app) put: Callback<Option<Draft>>,
}
