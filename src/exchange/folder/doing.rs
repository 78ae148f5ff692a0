//! What the machine waits to hear of.

use super::{Entry, Name};

/// What was asked last.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) enum Doing {
    /// Nothing.
    #[default]
    Nothing,
    /// The mark is put there.
    Marking,
    /// A file is put there.
    Putting(Name),
    /// A file that is said to be there already is looked at.
    Looking(Name),
    /// A folder is made, so many steps outwards.
    Making(usize),
    /// The folder is listed.
    Listing,
    /// A file is fetched.
    Fetching(Entry),
}
