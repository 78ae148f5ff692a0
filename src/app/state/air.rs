//! The air of the room as the screens see it.

use super::Keep;
use crate::record::MeasuredAir;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct AirContext {
    /// As it was measured last; none where nobody did, or it was erased.
    pub(in crate::app) now: Option<Rc<MeasuredAir>>,
    pub(in crate::app) put: Callback<Keep<Option<MeasuredAir>>>,
}
