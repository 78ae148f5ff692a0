//! Whether a set may be begun.

use super::Set;
use crate::record::LocalDate;
use crate::terms;

terms! {
    /// Whether a set may be begun. Text: `app.sets.validity.<slug>`.
    Validity {
        /// It may.
        Open = "open",
        /// Its first day has not come.
        NotYet = "not-yet",
        /// Its last day is over.
        Over = "over",
        /// Who made it has withdrawn it.
        Withdrawn = "withdrawn",
    }
}

impl Validity {
    /// Whether a set may be begun on that local day; where the clock tells none, its days are not asked.
    #[must_use]
    pub fn of(set: &Set, withdrawn: bool, today: Option<LocalDate>) -> Self {
        let early = set.from.zip(today).is_some_and(|(from, today)| today < from);
        let late = set.until.zip(today).is_some_and(|(until, today)| today > until);
        match (withdrawn, early, late) {
            (true, _, _) => Self::Withdrawn,
            (false, true, _) => Self::NotYet,
            (false, false, true) => Self::Over,
            (false, false, false) => Self::Open,
        }
    }
}
