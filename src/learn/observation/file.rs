//! What is on file for a person.

use super::Strikes;
use crate::content::Competency;
use crate::record::{Event, Filing, LocalDate};

/// A paper that a competency asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Paper<'a> {
    /// What the assessor saw.
    pub filing: &'a Filing,
    /// Whether it is in force.
    pub in_force: bool,
}

/// The papers of a person, by shop number, that a competency asks for, as they were written down; what cannot be and what was struck out is left
/// out.
#[must_use]
pub fn on_file<'a>(
    events: &'a [Event],
    subject: &str,
    competency: &Competency,
    today: LocalDate,
) -> Vec<Paper<'a>> {
    let strikes = Strikes::of(events);
    let mut papers = Vec::new();
    for event in events {
        let Event::Filed(filing) = event else { continue };
        let wanted = filing.subject == subject && competency.on_file.contains(&filing.filed.what);
        let stands = filing.unfit().is_empty() && strikes.of_filing(filing).is_none();
        if wanted && stands {
            papers.push(Paper { filing, in_force: filing.filed.in_force(today) });
        }
    }
    papers
}
