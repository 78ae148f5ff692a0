//! The files that go to the folder.

use super::{Filed, Name, Refusal, State};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, VecDeque};

/// The files that go to the folder, and those that went. Their texts lie elsewhere.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(from = "BTreeMap<Name, Filed>", into = "BTreeMap<Name, Filed>")]
pub struct Outbox {
    files: BTreeMap<Name, Filed>,
    /// Those that wait; one that failed goes behind the others, so that it holds up none.
    queue: VecDeque<Name>,
}

impl Outbox {
    /// Takes a file in; one that is there already stays as it stands. Says whether it is new.
    pub fn add(&mut self, name: Name) -> bool {
        let new = !self.files.contains_key(&name);
        if new {
            self.files.insert(name.clone(), Filed::default());
            self.queue.push_back(name);
        }
        new
    }

    /// Lets go of files that wait and are not `there`.
    pub(super) fn only(&mut self, there: impl Fn(&Name) -> bool) {
        let waits = |filed: &Filed| matches!(filed.state, State::Waits | State::OnItsWay);
        self.files.retain(|name, filed| !waits(filed) || there(name));
        self.queue.retain(|name| self.files.contains_key(name));
    }

    /// All files with how they stand, in the order of their names.
    pub fn files(&self) -> impl Iterator<Item = (&Name, &Filed)> {
        self.files.iter()
    }

    /// How a file stands.
    #[must_use]
    pub fn get(&self, name: &Name) -> Option<&Filed> {
        self.files.get(name)
    }

    /// How many wait or are on their way.
    #[must_use]
    pub fn waiting(&self) -> usize {
        let on = |filed: &&Filed| matches!(filed.state, State::Waits | State::OnItsWay);
        self.files.values().filter(on).count()
    }

    /// Lets a refused file be tried again.
    pub fn again(&mut self, name: &Name) {
        if let Some(filed) = self.files.get_mut(name)
            && matches!(filed.state, State::Refused(_))
        {
            *filed = Filed::default();
            self.queue.push_back(name.clone());
        }
    }

    /// All waits of single files are over.
    pub(super) fn hurry(&mut self) {
        for filed in self.files.values_mut() {
            filed.pause = Default::default();
        }
    }

    /// The next file that may be sent now; it is on its way then.
    pub(super) fn take(&mut self, now: u64) -> Option<Name> {
        for _ in 0..self.queue.len() {
            let name = self.queue.pop_front()?;
            match self.files.get_mut(&name) {
                Some(filed) if filed.pause.over(now) => {
                    filed.state = State::OnItsWay;
                    return Some(name);
                }
                Some(_) => self.queue.push_back(name),
                None => {}
            }
        }
        None
    }

    /// When the first of those that wait by themselves may be sent.
    pub(super) fn first(&self) -> Option<u64> {
        self.queue.iter().filter_map(|name| self.files.get(name)).map(|filed| filed.pause.until()).min()
    }

    /// The file waits again, behind the others.
    pub(super) fn back(&mut self, name: &Name) {
        if let Some(filed) = self.files.get_mut(name) {
            filed.state = State::Waits;
            self.queue.push_back(name.clone());
        }
    }

    /// The file waits by itself, longer each time.
    pub(super) fn later(&mut self, name: &Name, now: u64, luck: u64, retry_after: Option<&str>) {
        if let Some(filed) = self.files.get_mut(name) {
            filed.pause = filed.pause.longer(now, luck, retry_after);
        }
        self.back(name);
    }

    /// The file is in the folder.
    pub(super) fn arrived(&mut self, name: &Name, now: u64) {
        self.end(name, State::Arrived(now));
    }

    /// The file is not sent again by itself.
    pub(super) fn refused(&mut self, name: &Name, why: Refusal) {
        self.end(name, State::Refused(why));
    }

    fn end(&mut self, name: &Name, state: State) {
        if let Some(filed) = self.files.get_mut(name) {
            *filed = Filed { state, ..Filed::default() };
        }
    }
}

impl From<BTreeMap<Name, Filed>> for Outbox {
    /// What was on its way when the state was stored waits again: nobody knows whether it arrived.
    fn from(mut files: BTreeMap<Name, Filed>) -> Self {
        let mut queue = VecDeque::new();
        for (name, filed) in &mut files {
            if matches!(filed.state, State::Waits | State::OnItsWay) {
                filed.state = State::Waits;
                queue.push_back(name.clone());
            }
        }
        Self { files, queue }
    }
}

impl From<Outbox> for BTreeMap<Name, Filed> {
    fn from(outbox: Outbox) -> Self {
        outbox.files
    }
}
