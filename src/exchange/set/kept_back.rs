//! Whether the answers of a set are kept back from somebody who is asked it.

use super::Set;
use crate::content::Purpose;

/// Who asks for the answers of a set, on which tablet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Asker {
    /// Whether the set was taken on the tablet, and neither made there nor shipped.
    pub taken: bool,
    /// Whether they have handed in its last card.
    pub handed_in: bool,
    /// Whether an instructor or assessor has opened a key.
    pub signs: bool,
}

impl Set {
    /// Whether it is done once: a check with the same cards for all. Whoever closes it half-way has handed it in, since its answers
    /// are told then.
    #[must_use]
    pub fn is_done_once(&self) -> bool {
        self.task.purpose == Purpose::Check && self.task.same_seed.is_some()
    }

    /// Whether its answers are kept back: worksheets and keys, its items for other programs, cards graded from paper, what
    /// others answered, and another set built on it.
    ///
    /// They are where a check that was taken asks everybody the same, so that whoever reads an answer knows it in the check.
    /// Cards of the shop's own are the same for all whatever the seed. A file can still be read by other programs: this keeps
    /// back what the app shows.
    #[must_use]
    pub fn keeps_back(&self, asker: Asker) -> bool {
        let same = self.task.same_seed.is_some() || !self.own_cards.is_empty();
        let asked = asker.taken && !asker.handed_in;
        self.task.purpose == Purpose::Check && same && asked && !asker.signs
    }
}
