//! Which card families bear on a competency.

use crate::content::Content;
use crate::record::{Event, WalkStep};
use crate::rules::term::Severity;
use std::collections::BTreeSet;

/// Card families that are evidence for a competency, and those among them about safety.
#[derive(Debug, Clone)]
pub(super) struct Families<'a> {
    pub(super) all: BTreeSet<&'a str>,
    pub(super) safety: BTreeSet<&'a str>,
}

impl<'a> Families<'a> {
    pub(super) fn of(content: &'a Content, competency: &'a str) -> Self {
        let of = |safety_alone: bool| {
            let fits = content
                .evidence_for(competency)
                .filter(move |family| !safety_alone || family.severity == Severity::Safety);
            fits.map(|family| family.id.as_str()).collect()
        };
        Self { all: of(false), safety: of(true) }
    }

    /// Whether an event can bear on them.
    pub(super) fn concerns(&self, event: &Event) -> bool {
        match event {
            Event::Answered(entry) => self.all.contains(entry.family.as_str()),
            Event::Taught(taught) => self.safety.contains(taught.family.as_str()),
            Event::Attempt(_) => true,
            Event::Walked(walked) => match &walked.step {
                WalkStep::Decided(decided) => {
                    decided.exercised.iter().any(|one| self.all.contains(one.family.as_str()))
                }
                WalkStep::Inspected(_) => true,
                WalkStep::LetGo => false,
            },
            Event::Observed(_) | Event::Filed(_) | Event::Struck(_) | Event::Erased(_) | Event::Voided(_) => {
                false
            }
        }
    }
}
