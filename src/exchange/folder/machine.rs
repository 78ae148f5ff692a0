//! What to ask next.

use super::doing::Doing;
use super::make::Make;
use super::{Aside, Ask, Entry, Name, Outbox, Pause, Place, Refusal, Sort, Stop};
use crate::exchange::write;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet, VecDeque};

/// After so many milliseconds the folder is listed again by itself: our own choice.
const LOOK_EVERY_MS: u64 = 5 * 60 * 1000;

/// The folder as this tablet knows it. As JSON it is what must be stored to go on after a restart.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Folder {
    pub(super) place: Place,
    /// Whether results of other tablets are fetched.
    #[serde(default)]
    pub(super) takes_results: bool,
    #[serde(default)]
    pub(super) outbox: Outbox,
    /// Files of the folder that were not taken.
    #[serde(default)]
    pub(super) aside: BTreeMap<Name, Aside>,
    /// Files of the folder that were taken, or that nobody wants.
    #[serde(default)]
    pub(super) left: BTreeSet<Name>,
    #[serde(default)]
    pub(super) pause: Pause,
    #[serde(default)]
    pub(super) stopped: Option<Stop>,
    /// Whether it was tried that the server keeps what is there.
    #[serde(default)]
    pub(super) proven: bool,
    /// When the folder was listed last.
    #[serde(default)]
    pub(super) looked: Option<u64>,
    /// Whether the mark was put there and is to be refused the second time.
    #[serde(skip)]
    pub(super) marked: bool,
    #[serde(skip)]
    pub(super) doing: Doing,
    /// A file of which the server says that it is there.
    #[serde(skip)]
    pub(super) look_at: Option<Name>,
    #[serde(skip)]
    pub(super) make: Make,
    /// What is still to be fetched.
    #[serde(skip)]
    pub(super) wanted: VecDeque<Entry>,
    #[serde(skip)]
    pub(super) look: bool,
}

/// The files of this tablet.
pub trait Shelves {
    /// The text of a file that goes to the folder.
    fn text(&self, name: &Name) -> Option<String>;
    /// Whether a file that lies in the folder is here already.
    fn has(&self, name: &Name) -> bool;
}

/// What to do next.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Step {
    /// Ask this, and tell [`Folder::heard`] what came of it.
    Ask(Ask),
    /// This happened without asking.
    Told(News),
    /// Nothing before that moment, unless something is added.
    Wait(u64),
    /// Nothing until somebody does something about [`Folder::stopped`].
    Stopped,
    /// What was asked last has not been answered.
    Busy,
}

/// What happened.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum News {
    /// The server keeps what is there.
    Proven,
    /// A file is in the folder: its text need not be kept any longer.
    Arrived(Name),
    /// A file is not sent again by itself.
    Refused(Name, Refusal),
    /// The folder was listed; so many files are to be fetched.
    Looked(usize),
    /// A file came, and is what its name says.
    Come(Name, String),
    /// A file of the folder was not taken.
    SetAside(Name, Aside),
    /// Nothing goes on.
    Stopped(Stop),
}

impl News {
    /// The file that arrived, where one did.
    #[must_use]
    pub const fn arrived(&self) -> Option<&Name> {
        match self {
            Self::Arrived(name) => Some(name),
            _ => None,
        }
    }
}

impl Folder {
    /// A folder of which nothing is known yet.
    #[must_use]
    pub fn new(place: Place) -> Self {
        Self {
            place,
            takes_results: false,
            outbox: Outbox::default(),
            aside: BTreeMap::new(),
            left: BTreeSet::new(),
            pause: Pause::default(),
            stopped: None,
            proven: false,
            looked: None,
            marked: false,
            doing: Doing::Nothing,
            look_at: None,
            make: Make::default(),
            wanted: VecDeque::new(),
            look: false,
        }
    }

    /// What to ask of the server at that moment, in milliseconds since 1970.
    pub fn next(&mut self, now: u64, shelves: &impl Shelves) -> Step {
        if self.doing != Doing::Nothing {
            return Step::Busy;
        }
        if self.stopped.is_some() {
            return Step::Stopped;
        }
        if !self.pause.over(now) {
            return Step::Wait(self.pause.until());
        }
        if let Some(outwards) = self.make.next() {
            let path = self.place.outwards().get(outwards).copied().unwrap_or_default().to_owned();
            return self.ask(Doing::Making(outwards), Ask::make(path));
        }
        if !self.proven {
            let (name, text) = mark();
            return self.ask(Doing::Marking, Ask::put(self.place.of(&name), text));
        }
        if let Some(name) = self.look_at.take() {
            let ask = Ask::get(self.place.of(&name), name.sort().most());
            return self.ask(Doing::Looking(name), ask);
        }
        if let Some(name) = self.outbox.take(now) {
            return self.put(name, shelves);
        }
        if self.look || self.looked.is_none_or(|at| now < at || now >= at.saturating_add(LOOK_EVERY_MS)) {
            self.look = false;
            return self.ask(Doing::Listing, Ask::list(self.place.as_str().to_owned()));
        }
        while let Some(entry) = self.wanted.pop_front() {
            if !self.wants(&entry.name, shelves) {
                continue;
            }
            let most = entry.name.sort().most();
            if entry.bytes.is_some_and(|bytes| usize::try_from(bytes).is_ok_and(|bytes| bytes > most)) {
                return Step::Told(self.set_aside(entry.name, Aside::TooLarge));
            }
            let ask = Ask::get(self.place.of(&entry.name), most);
            return self.ask(Doing::Fetching(entry), ask);
        }
        let look = self.looked.unwrap_or(now).saturating_add(LOOK_EVERY_MS);
        Step::Wait(self.outbox.first().map_or(look, |first| first.min(look)))
    }

    fn ask(&mut self, doing: Doing, ask: Ask) -> Step {
        self.doing = doing;
        Step::Ask(ask)
    }

    fn put(&mut self, name: Name, shelves: &impl Shelves) -> Step {
        let text = shelves.text(&name).filter(|text| name.fits(text.as_bytes()));
        let refused = match &text {
            None => Some(Refusal::NotItsName),
            Some(text) => (text.len() > name.sort().most()).then_some(Refusal::TooLarge),
        };
        if let Some(why) = refused {
            self.outbox.refused(&name, why);
            return Step::Told(News::Refused(name, why));
        }
        let ask = Ask::put(self.place.of(&name), text.unwrap_or_default());
        self.ask(Doing::Putting(name), ask)
    }

    /// Whether a file that lies in the folder is to be fetched.
    pub(super) fn wants(&self, name: &Name, shelves: &impl Shelves) -> bool {
        let sort = match name.sort() {
            Sort::Mark => false,
            Sort::Results => self.takes_results,
            Sort::Set | Sort::Sheet | Sort::Withdrawal => true,
        };
        let known = self.aside.contains_key(name) || self.left.contains(name);
        let here = self.outbox.get(name).is_some() || known || shelves.has(name);
        sort && !here
    }
}

/// The mark with its name.
pub(super) fn mark() -> (Name, String) {
    #[derive(Serialize)]
    struct Nothing {}
    // Two plain members can always be written.
    let text = write(&Nothing {}, Sort::Mark.kind()).unwrap_or_default();
    (Name::of(Sort::Mark, &text), text)
}
