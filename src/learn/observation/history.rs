//! Everything that was written down of a person at a competency, with what was struck out.

use super::demonstration::{fit, same};
use super::strikes::{Strikes, may_strike};
use crate::content::Competency;
use crate::record::{Event, Observed, Struck};

/// One thing that was written down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line<'a> {
    /// What: an observation or a filing.
    pub event: &'a Event,
    /// By what it is struck out, if it is.
    pub struck: Option<&'a Struck>,
    /// Whether the assessor who asks may strike it out.
    pub may_strike: bool,
}

/// What was written down of a person, by shop number, at a competency, newest first, as an assessor of that number sees it.
#[must_use]
pub fn history<'a>(
    events: &'a [Event],
    subject: &str,
    competency: &Competency,
    assessor: &str,
) -> Vec<Line<'a>> {
    let all: Vec<&Observed> = fit(events).collect();
    let strikes = Strikes::of(events);
    let line = |event: &'a Event| {
        let (by, struck, together) = match event {
            Event::Observed(one) if one.subject == subject && one.competency == competency.slug => {
                let together: Vec<_> = all.iter().copied().filter(|other| same(one, other)).collect();
                (&one.by, strikes.of_observed(one, &together), together)
            }
            Event::Filed(one) if one.subject == subject && competency.on_file.contains(&one.filed.what) => {
                (&one.by, strikes.of_filing(one), Vec::new())
            }
            _ => return None,
        };
        let may = struck.is_none() && assessor != subject && may_strike(assessor, &by.number, &together);
        Some(Line { event, struck, may_strike: may })
    };
    events.iter().rev().filter_map(line).collect()
}
