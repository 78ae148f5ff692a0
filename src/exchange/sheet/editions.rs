//! The editions of the shop's own sheets that a tablet holds.

use super::{OwnSheet, own_slug};
use crate::rules::sorted::sorted;

/// The editions that a tablet holds, by name and number; no two of them have the same values.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Editions(Vec<OwnSheet>);

impl Editions {
    /// Puts editions in order; of those with the same values the first one stays.
    #[must_use]
    pub fn of(own: impl IntoIterator<Item = OwnSheet>) -> Self {
        let mut held: Vec<OwnSheet> = Vec::new();
        for one in own {
            if held.iter().all(|other| other.hash != one.hash) {
                held.push(one);
            }
        }
        Self(sorted(held, |a, b| (&a.name, a.edition, &a.at).cmp(&(&b.name, b.edition, &b.at))))
    }

    /// All of them.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = &OwnSheet> {
        self.0.iter()
    }

    /// The edition with that slug.
    #[must_use]
    pub fn get(&self, slug: &str) -> Option<&OwnSheet> {
        self.0.iter().find(|one| one.slug() == slug)
    }

    /// The number of the next edition of a name.
    #[must_use]
    pub fn next(&self, name: &str) -> u32 {
        let numbers = self.0.iter().filter(|one| one.name == name).map(|one| one.edition);
        numbers.max().unwrap_or(0).saturating_add(1)
    }

    /// Whether no edition of its name has a higher number.
    #[must_use]
    pub fn is_newest(&self, own: &OwnSheet) -> bool {
        self.next(&own.name) == own.edition.saturating_add(1)
    }

    /// An edition and those that it came from, the newest first, as far as they are here.
    #[must_use]
    pub fn line(&self, slug: &str) -> Vec<&OwnSheet> {
        let mut line: Vec<&OwnSheet> = Vec::new();
        let mut next = self.get(slug);
        // A file may name itself, or what came from it, as what it came from.
        while let Some(one) = next.filter(|one| !line.contains(one)) {
            line.push(one);
            next = one.before.as_ref().and_then(|hash| self.get(&own_slug(hash)));
        }
        line
    }
}
