//! How one person stands in one competency.

use super::book::Entry;
use super::verdict::{against_content, against_signer};
use super::{Book, Credential, Refusal, ShopNumber, When, Withdrawal};
use crate::content::Competency;
use crate::rules::term::Stage;

/// Days before its end from which on it is said that a sign-off runs out. Common practice, no source.
pub const SOON_DAYS: i32 = 60;

/// How one person stands in one competency on a day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Standing<'a> {
    /// Never signed off, up to that day.
    Never,
    /// Signed off, and it counts: [`super::verify`] accepts it too.
    Held(&'a Credential),
    /// Its time has run out: to be assessed again.
    Expired(&'a Credential),
    /// Withdrawn, by a record of the book or on the trust list.
    Withdrawn(&'a Credential, &'a Withdrawal),
    /// It stands in the book and does not count: by the trust list in force, as for a key whose end was brought forward, or
    /// by the content, which names or asks for the competency otherwise than when it was signed.
    Refused(&'a Credential, Vec<Refusal>),
}

impl Book {
    /// How somebody stands in a competency on a day, by the trust list in force and by the competencies as they are now.
    #[must_use]
    pub fn standing(
        &self,
        subject: &ShopNumber,
        competency: &str,
        competencies: &[Competency],
        on: &When,
    ) -> Standing<'_> {
        let theirs = |entry: &&Entry| entry.is_of(subject, competency) && entry.credential.from <= *on;
        let Some(entry) = self.entries.iter().rev().find(theirs) else { return Standing::Never };
        let one = &entry.credential;
        let mut withdrawn = entry.withdrawn.iter().chain(self.list.withdrawal(&one.id));
        if let Some(withdrawal) = withdrawn.find(|withdrawal| withdrawal.at <= *on) {
            return Standing::Withdrawn(one, withdrawal);
        }
        let mut reasons = against_signer(one, &self.list);
        reasons.extend(against_content(one, competencies));
        match reasons.as_slice() {
            [] if one.until <= *on => Standing::Expired(one),
            [] => Standing::Held(one),
            _ => Standing::Refused(one, reasons),
        }
    }

    /// The sign-off that stands for somebody in a competency, whether its time has run out or not: what a new one takes the
    /// place of.
    #[must_use]
    pub fn stands_for(&self, subject: &ShopNumber, competency: &str) -> Option<&Entry> {
        let theirs =
            |entry: &&Entry| entry.is_of(subject, competency) && !entry.replaced && entry.withdrawn.is_none();
        self.entries.iter().find(theirs)
    }

    /// Whether somebody holds every competency of a band on a day; of a band that has none nobody does.
    #[must_use]
    pub fn holds_band(
        &self,
        subject: &ShopNumber,
        band: Stage,
        competencies: &[Competency],
        on: &When,
    ) -> bool {
        let mut of_band = competencies.iter().filter(|one| one.band == band).peekable();
        of_band.peek().is_some()
            && of_band
                .all(|one| matches!(self.standing(subject, &one.slug, competencies, on), Standing::Held(_)))
    }
}
