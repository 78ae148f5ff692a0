//! Why a record does not fit into the book where it stands.

use super::Refusal;
use crate::rules::term::Term;
use crate::terms;
use std::fmt;

terms! {
    /// Why. Text: `book.<slug>`.
    Fault {
        /// It cannot be read, its proof does not hold, or its line is not ended.
        Unreadable = "unreadable",
        /// Its number is not the next one.
        NumberWrong = "number-wrong",
        /// It holds another hash than that of the record before.
        PreviousWrong = "previous-wrong",
        /// It is dated before the record before.
        DateEarlier = "date-earlier",
        /// The first record is no trust list.
        ListMissing = "list-missing",
        /// A trust list that is refused, or does not follow the one before.
        ListRefused = "list-refused",
        /// A trust list without all that the book has withdrawn.
        WithdrawalMissing = "withdrawal-missing",
        /// The record is signed by a key that may not.
        NotTheirs = "not-theirs",
        /// A sign-off that is refused.
        CredentialRefused = "credential-refused",
        /// A sign-off of that name stands in the book already.
        CredentialTwice = "credential-twice",
        /// No sign-off of that name stands in the book.
        CredentialUnknown = "credential-unknown",
        /// A first sign-off where one stands, or a new assessment of one that does not.
        ReplacesWrong = "replaces-wrong",
        /// It was withdrawn before.
        WithdrawnTwice = "withdrawn-twice",
    }
}

/// The record at which a book breaks, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Broken {
    /// Its place, from 1.
    pub record: u32,
    /// Why.
    pub fault: Fault,
    /// What was found in it.
    pub reasons: Vec<Refusal>,
}

impl Fault {
    /// The fault of that record.
    pub(super) const fn of(self, record: u32, reasons: Vec<Refusal>) -> Broken {
        Broken { record, fault: self, reasons }
    }
}

impl fmt::Display for Broken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "record {}: {}", self.record, self.fault.slug())?;
        self.reasons.iter().try_for_each(|reason| write!(f, ", {reason}"))
    }
}

impl std::error::Error for Broken {}
