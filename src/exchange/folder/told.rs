//! What the machine tells, and what it is told beside answers.

use super::machine::Folder;
use super::{Aside, Name, News, Outbox, Pause, Place, Stop};
use std::collections::BTreeSet;

impl Folder {
    /// Where it is.
    #[must_use]
    pub const fn place(&self) -> &Place {
        &self.place
    }

    /// The files that go there and those that went.
    #[must_use]
    pub const fn outbox(&self) -> &Outbox {
        &self.outbox
    }

    /// Files of the folder that were not taken, with why.
    pub fn aside(&self) -> impl Iterator<Item = (&Name, &Aside)> {
        self.aside.iter()
    }

    /// Why nothing goes on.
    #[must_use]
    pub const fn stopped(&self) -> Option<&Stop> {
        self.stopped.as_ref()
    }

    /// The wait after requests that came to nothing.
    #[must_use]
    pub const fn pause(&self) -> Pause {
        self.pause
    }

    /// Whether it was tried that the server keeps what is there.
    #[must_use]
    pub const fn proven(&self) -> bool {
        self.proven
    }

    /// When the folder was listed last, in milliseconds since 1970.
    #[must_use]
    pub const fn looked(&self) -> Option<u64> {
        self.looked
    }

    /// How many files are still to be fetched, as far as the last listing tells.
    #[must_use]
    pub fn coming(&self) -> usize {
        self.wanted.len()
    }

    /// Whether results of other tablets are fetched.
    #[must_use]
    pub const fn takes_results(&self) -> bool {
        self.takes_results
    }

    /// Sets whether results of other tablets are fetched; the folder is listed anew.
    pub const fn take_results(&mut self, takes: bool) {
        self.takes_results = takes;
        self.look = true;
    }

    /// Takes in a file that goes to the folder; false where it is there already.
    pub fn add(&mut self, name: Name) -> bool {
        self.outbox.add(name)
    }

    /// Takes the files over that lie on the tablet to be sent: those of which nothing was known wait, and what waits and does
    /// not lie there any more is let go of, since another window has sent it or it was erased.
    pub fn waits(&mut self, there: &BTreeSet<Name>) {
        self.outbox.only(|name| there.contains(name));
        for name in there {
            self.outbox.add(name.clone());
        }
        self.look_at = self.look_at.take().filter(|name| self.outbox.get(name).is_some());
    }

    /// A file of the folder was taken, or is wanted by nobody: it is not fetched again.
    pub fn leave(&mut self, name: Name) {
        self.left.insert(name);
    }

    /// Somebody has done something about it, or does not want to wait: everything is tried at once, and the folder listed.
    pub fn hurry(&mut self) {
        self.stopped = None;
        self.pause = Pause::default();
        self.make = Default::default();
        self.look = true;
        self.outbox.hurry();
    }

    /// The same, and whether the server keeps what is there is tried anew.
    pub fn prove(&mut self) {
        self.proven = false;
        self.marked = false;
        self.hurry();
    }

    /// A file that came is refused by who reads it.
    pub fn set_aside(&mut self, name: Name, why: Aside) -> News {
        self.aside.insert(name.clone(), why.clone());
        News::SetAside(name, why)
    }

    /// A refused file is sent again, one that was set aside fetched again.
    pub fn again(&mut self, name: &Name) {
        self.outbox.again(name);
        if self.aside.remove(name).is_some() {
            self.look = true;
        }
    }
}
