//! What was struck out, and by whom it may be.

use super::demonstration::{fit, same};
use crate::record::{AssessorName, Event, EventName, Filing, Observed, Struck};
use std::collections::BTreeMap;

/// What was struck out in a journal, or in several merged ones.
#[derive(Debug, Clone, Default)]
pub struct Strikes<'a>(BTreeMap<EventName, Vec<&'a Struck>>);

impl<'a> Strikes<'a> {
    /// Everything that these events strike out.
    #[must_use]
    pub fn of(events: &'a [Event]) -> Self {
        let mut all: BTreeMap<EventName, Vec<&Struck>> = BTreeMap::new();
        for event in events {
            if let Event::Struck(struck) = event
                && struck.unfit().is_empty()
            {
                all.entry(struck.strikes.clone()).or_default().push(struck);
            }
        }
        Self(all)
    }

    /// By what an observation is struck out, if it is. Nobody strikes out what the other one said of a demonstration that both
    /// watched: that is talked over. `together` are the observations of the same demonstration.
    #[must_use]
    pub fn of_observed(&self, one: &Observed, together: &[&Observed]) -> Option<&'a Struck> {
        self.find(&one.stamp.name(), &one.subject, &one.by, together)
    }

    /// Each observation among events that is struck out, by its name, with what strikes it out, whichever comes first.
    #[must_use]
    pub fn of_observations(events: &'a [Event]) -> BTreeMap<EventName, &'a Struck> {
        let (strikes, all): (_, Vec<&Observed>) = (Self::of(events), fit(events).collect());
        let struck = |one: &&Observed| {
            let name = one.stamp.name();
            // What nobody strikes at needs no look at the others.
            strikes.0.get(&name)?;
            let together: Vec<&Observed> = all.iter().copied().filter(|other| same(one, other)).collect();
            Some((name, strikes.of_observed(one, &together)?))
        };
        all.iter().filter_map(struck).collect()
    }

    /// By what a filing is struck out, if it is.
    #[must_use]
    pub fn of_filing(&self, one: &Filing) -> Option<&'a Struck> {
        self.find(&one.stamp.name(), &one.subject, &one.by, &[])
    }

    fn find(
        &self,
        name: &EventName,
        subject: &str,
        by: &AssessorName,
        together: &[&Observed],
    ) -> Option<&'a Struck> {
        let may = |one: &&&Struck| may_strike(&one.by.number, &by.number, together);
        self.0.get(name)?.iter().find(|one| one.subject == subject && may(one)).copied()
    }
}

/// Whether somebody may strike out what another wrote down.
#[must_use]
pub(super) fn may_strike(number: &str, author: &str, together: &[&Observed]) -> bool {
    number == author || together.iter().all(|other| other.by.number != number)
}
