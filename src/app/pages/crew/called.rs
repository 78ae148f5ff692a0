//! Who there is, with the results that it was worked out from: known before anything else, and not changed by what follows.

use crate::app::state::{CrewView, Shared};
use crate::exchange::crew::{Gathered, Person};
use std::rc::Rc;
use yew::prelude::*;

/// The results and the people of them; none while they are read.
pub(super) type Called = Rc<Option<(Shared<Gathered>, Vec<Person>)>>;

#[hook]
pub(super) fn use_called(view: Option<Shared<CrewView>>) -> Called {
    use_memo(view, |view| {
        let view = view.as_ref()?;
        Some((view.gathered.clone()?, view.people.clone()))
    })
}
