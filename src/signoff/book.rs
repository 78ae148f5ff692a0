//! The book: records in a chain, each signed and holding the hash of the one before. Added to, never changed.
//!
//! A changed, moved or missing record breaks the chain; records cut off at the end do not. Whoever wants to notice that
//! keeps number and hash of a record elsewhere, on paper for one, and asks [`Book::holds`].

use super::canonical::read_canonical_within;
use super::chain::suits;
use super::{
    Act, Broken, Credential, Fault, Hash, LIST_BYTES_MOST, PublicKey, Record, Refusal, SecretKey, ShopNumber,
    TrustList, When, Withdrawal,
};
use crate::content::Competency;
use serde_json::{Map, Value};

/// A sign-off in the book.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// What was signed.
    pub credential: Credential,
    /// Number of the record that it stands in.
    pub record: u32,
    /// Whether a later assessment took its place.
    pub replaced: bool,
    /// Its withdrawal, where the book has one.
    pub withdrawn: Option<Withdrawal>,
}

/// A book whose every record fits.
#[derive(Debug, Clone, PartialEq)]
pub struct Book {
    pub(super) records: Vec<Record>,
    pub(super) list: TrustList,
    pub(super) entries: Vec<Entry>,
}

/// What the first record holds in the place of a hash.
pub(super) const NOTHING: Hash = Hash([0; 32]);

impl Book {
    /// Begins a book with the first trust list of a shop, signed by its root key.
    ///
    /// # Errors
    /// Where the list is refused.
    pub fn begin(list: &TrustList, root: &SecretKey) -> Result<Self, Broken> {
        let text = trusted(list, root).and_then(|act| Record::signed(1, NOTHING, &list.issued, act, root));
        Self::first(&text.map_err(|reason| Fault::ListRefused.of(1, vec![reason]))?, None)
    }

    /// Opens a book from its file, one record a line, each line ended: every record is checked. Without a root the one
    /// that the first record names is taken; its fingerprint must be compared. What the content knows of competencies is not
    /// asked: it changes, and the book stays. [`Book::standing`] tells what no longer fits it.
    ///
    /// # Errors
    /// The first record that does not fit.
    pub fn open(text: &str, root: Option<&PublicKey>) -> Result<Self, Broken> {
        let mut lines = text.split_inclusive('\n').map(|line| line.strip_suffix('\n'));
        let whole =
            |line: Option<Option<_>>, record| line.flatten().ok_or(Fault::Unreadable.of(record, vec![]));
        let mut book = Self::first(whole(lines.next(), 1)?, root)?;
        for line in lines {
            let line = whole(Some(line), book.next_number())?;
            book.add(line)?;
        }
        Ok(book)
    }

    /// The book with one more record, signed by this key; a sign-off is held to its competency as the content has it now. The book as it was where the record does not fit.
    ///
    /// # Errors
    /// Why it does not fit.
    pub fn append(
        &self,
        act: Act,
        key: &SecretKey,
        at: &When,
        competencies: &[Competency],
    ) -> Result<Self, Broken> {
        let number = self.next_number();
        suits(&act, competencies).map_err(|reasons| Fault::CredentialRefused.of(number, reasons))?;
        let text = Record::signed(number, self.head().1, at, act, key);
        let text = text.map_err(|reason| Fault::Unreadable.of(number, vec![reason]))?;
        let mut book = self.clone();
        book.add(&text)?;
        Ok(book)
    }

    /// The book with one more trust list: these people, and all that the book has withdrawn.
    ///
    /// # Errors
    /// Why it does not fit.
    pub fn with_people(
        &self,
        people: Vec<super::Person>,
        root: &SecretKey,
        at: &When,
    ) -> Result<Self, Broken> {
        let list = self.list.next(at.clone(), people, self.withdrawn());
        let act =
            trusted(&list, root).map_err(|reason| Fault::ListRefused.of(self.next_number(), vec![reason]))?;
        self.append(act, root, at, &[])
    }

    /// The file: one record a line.
    #[must_use]
    pub fn text(&self) -> String {
        self.records.iter().map(|record| format!("{}\n", record.text)).collect()
    }

    /// The records, oldest first.
    #[must_use]
    pub fn records(&self) -> &[Record] {
        &self.records
    }

    /// The sign-offs, oldest first, with those that no longer count.
    #[must_use]
    pub fn sign_offs(&self) -> &[Entry] {
        &self.entries
    }

    /// The signed file of a sign-off as it stands in the book.
    #[must_use]
    pub fn file(&self, entry: &Entry) -> Option<&Map<String, Value>> {
        match &self.records.iter().find(|record| record.number == entry.record)?.act {
            Act::SignedOff { credential } | Act::Reassessed { credential, .. } => Some(credential),
            Act::Trusted { .. } | Act::Withdrawn { .. } => None,
        }
    }

    /// The signed trust list in force, as it stands in the book.
    #[must_use]
    pub fn list_file(&self) -> Option<&Map<String, Value>> {
        self.records.iter().rev().find_map(|record| match &record.act {
            Act::Trusted { list } => Some(list),
            _ => None,
        })
    }

    /// The trust list in force.
    #[must_use]
    pub const fn list(&self) -> &TrustList {
        &self.list
    }

    /// The trust list in force with all that the book has withdrawn since: no such list is signed, so that it is good for
    /// whoever has the book alone.
    #[must_use]
    pub fn list_now(&self) -> TrustList {
        let mut list = self.list.clone();
        list.withdrawn = self.withdrawn();
        list
    }

    /// All withdrawals, on the list or not yet.
    #[must_use]
    pub fn withdrawn(&self) -> Vec<Withdrawal> {
        self.entries.iter().filter_map(|entry| entry.withdrawn.clone()).collect()
    }

    /// Number and hash of the last record.
    #[must_use]
    pub fn head(&self) -> (u32, Hash) {
        self.records.last().map_or((0, NOTHING), |record| (record.number, record.hash))
    }

    /// Whether the book still holds a record whose number and hash were noted.
    #[must_use]
    pub fn holds(&self, number: u32, hash: Hash) -> bool {
        self.records.iter().any(|record| record.number == number && record.hash == hash)
    }

    pub(super) fn next_number(&self) -> u32 {
        self.head().0.saturating_add(1)
    }
}

impl Entry {
    pub(super) fn is_of(&self, subject: &ShopNumber, competency: &str) -> bool {
        self.credential.subject == *subject && self.credential.achievement.slug == competency
    }
}

fn trusted(list: &TrustList, root: &SecretKey) -> Result<Act, Refusal> {
    Ok(Act::Trusted { list: read_canonical_within(list.signed(root)?.as_bytes(), LIST_BYTES_MOST)? })
}
