//! Results of other tablets and what they say of everybody, as the screens see them. Read when a screen first asks for them.

use super::{ContentContext, Shared};
use crate::device::files::Picked;
use crate::exchange::Refused;
use crate::exchange::crew::{Added, Gathered, Glance, Person, Stuck};
use crate::record::Clash;
use std::rc::Rc;
use yew::prelude::*;

/// Everybody at a glance, as far as it is worked out.
#[derive(Debug, Clone, Default, PartialEq)]
pub(in crate::app) struct CrewView {
    /// The results that it was worked out from: where somebody's events stand, they stand in these.
    pub(in crate::app) gathered: Option<Shared<Gathered>>,
    /// Who there is.
    pub(in crate::app) people: Vec<Person>,
    /// How they stand, in the same order; fewer while it is being worked out.
    pub(in crate::app) glances: Vec<Glance>,
    /// What is misread; none while it is being worked out.
    pub(in crate::app) stuck: Option<Vec<Stuck>>,
}

impl CrewView {
    pub(in crate::app) fn person(&self, key: &str) -> Option<&Person> {
        self.people.iter().find(|one| one.key == key)
    }

    pub(in crate::app) fn glance(&self, key: &str) -> Option<&Glance> {
        self.glances.iter().find(|one| one.key == key)
    }
}

/// What came of one file.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Came {
    /// Its name.
    pub(in crate::app) name: String,
    pub(in crate::app) what: Result<Added, NotIn>,
}

/// Why a file was not taken in.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) enum NotIn {
    /// The browser could not read it.
    Unread,
    /// It is no such file, or something in it is not allowed.
    Refused(Refused),
    /// A journal was copied and went on elsewhere.
    Clash(Clash),
    /// It could not be stored.
    NotStored,
}

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct CrewContext {
    /// All results, those of this tablet among them; none before they were asked for.
    pub(in crate::app) gathered: Option<Shared<Gathered>>,
    /// What they say.
    pub(in crate::app) view: Option<Shared<CrewView>>,
    /// Content with the sheets that came with them.
    pub(in crate::app) content: ContentContext,
    /// Results that are kept here and could not be read.
    pub(in crate::app) broken: usize,
    /// What came of the files that were taken in since the page was opened, the latest first.
    pub(in crate::app) came: Rc<Vec<Came>>,
    /// Whether files are being read.
    pub(in crate::app) busy: bool,
    /// Asks for them.
    pub(in crate::app) load: Callback<()>,
    /// Takes files in.
    pub(in crate::app) take: Callback<Vec<Picked>>,
    /// Leaves out what came from a tablet.
    pub(in crate::app) forget: Callback<String>,
    /// Saves the results of this tablet as a file.
    pub(in crate::app) save: Callback<()>,
}
