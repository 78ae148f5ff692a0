//! The apprentices of this tablet as the screens see them.

use crate::people::Crew;
use std::rc::Rc;
use yew::prelude::*;

/// Something to be stored, and who is told whether it was.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Keep<T> {
    pub(in crate::app) what: T,
    /// Gets whether it is stored; where it is not, nothing has changed.
    pub(in crate::app) done: Callback<bool>,
}

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct PeopleContext {
    /// The apprentices; empty where what is stored of them cannot be read.
    pub(in crate::app) crew: Rc<Crew>,
    /// Whether what is stored can be read; else nothing is stored over it.
    pub(in crate::app) readable: bool,
    pub(in crate::app) put: Callback<Keep<Crew>>,
}
