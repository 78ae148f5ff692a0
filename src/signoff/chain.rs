//! What each record must be to stand where it stands.

use super::book::{Entry, NOTHING};
use super::verdict::{against_content, against_signer, proven};
use super::words::{REASON_MOST, fit_within};
use super::{Act, Book, Broken, Fault, PublicKey, Record, Refusal, TrustList, Withdrawal};
use crate::content::Competency;
use serde_json::{Map, Value};

type Members = Map<String, Value>;
/// A fault without its place.
type Misfit = (Fault, Vec<Refusal>);

impl Book {
    /// The book of a first record.
    pub(super) fn first(text: &str, root: Option<&PublicKey>) -> Result<Self, Broken> {
        let broken = |(fault, reasons): Misfit| fault.of(1, reasons);
        let record = Record::read(text).map_err(|reason| Fault::Unreadable.of(1, vec![reason]))?;
        linked(&record, (1, NOTHING.to_string())).map_err(broken)?;
        let Act::Trusted { list } = &record.act else { return Err(Fault::ListMissing.of(1, vec![])) };
        let list = read_list(list, root, &record).map_err(broken)?;
        Ok(Self { records: vec![record], list, entries: Vec::new() })
    }

    /// Adds a record; a book to which one did not fit is to be dropped.
    pub(super) fn add(&mut self, text: &str) -> Result<(), Broken> {
        let number = self.next_number();
        let record = Record::read(text).map_err(|reason| Fault::Unreadable.of(number, vec![reason]))?;
        self.take(&record).map_err(|(fault, reasons)| fault.of(number, reasons))?;
        self.records.push(record);
        Ok(())
    }

    fn take(&mut self, record: &Record) -> Result<(), Misfit> {
        linked(record, (self.next_number(), self.head().1.to_string()))?;
        if self.records.last().is_some_and(|last| record.at < last.at) {
            return Err((Fault::DateEarlier, vec![]));
        }
        match &record.act {
            Act::Trusted { list } => self.trust(list, record),
            Act::SignedOff { credential } => self.sign_off(credential, None, record),
            Act::Reassessed { credential, replaces } => self.sign_off(credential, Some(replaces), record),
            Act::Withdrawn { credential, reason } => self.withdraw(credential, reason, record),
        }
    }

    fn trust(&mut self, list: &Members, record: &Record) -> Result<(), Misfit> {
        let list = read_list(list, Some(&self.list.root), record)?;
        list.follows(&self.list).map_err(|reason| (Fault::ListRefused, vec![reason]))?;
        if self.withdrawn().iter().any(|one| !list.withdrawn.contains(one)) {
            return Err((Fault::WithdrawalMissing, vec![]));
        }
        self.list = list;
        Ok(())
    }

    fn sign_off(
        &mut self,
        signed: &Members,
        replaces: Option<&String>,
        record: &Record,
    ) -> Result<(), Misfit> {
        let refused = |reasons| (Fault::CredentialRefused, reasons);
        let (credential, _) = proven(signed).map_err(|reason| refused(vec![reason]))?;
        let reasons = against_signer(&credential, &self.list);
        if !reasons.is_empty() {
            return Err(refused(reasons));
        }
        // Trusted when it was signed, and when it is written down: a key that has ended adds nothing, whatever it dates back.
        let trusted = self.list.person(&record.by).is_some_and(|person| person.trusted_at(&record.at));
        if !trusted || record.by != credential.assessor.key || record.at < credential.from {
            return Err((Fault::NotTheirs, vec![]));
        }
        if self.entries.iter().any(|entry| entry.credential.id == credential.id) {
            return Err((Fault::CredentialTwice, vec![]));
        }
        let stands = |entry: &&mut Entry| {
            let theirs = entry.is_of(&credential.subject, &credential.achievement.slug);
            theirs && !entry.replaced && entry.withdrawn.is_none()
        };
        match (self.entries.iter_mut().find(stands), replaces) {
            (None, None) => {}
            (Some(entry), Some(id)) if entry.credential.id == *id => entry.replaced = true,
            _ => return Err((Fault::ReplacesWrong, vec![])),
        }
        self.entries.push(Entry { credential, record: record.number, replaced: false, withdrawn: None });
        Ok(())
    }

    /// By the root, or by anybody on the list that day but the person it is about.
    fn withdraw(&mut self, id: &str, reason: &str, record: &Record) -> Result<(), Misfit> {
        fit_within(reason, "/act/withdrawn/reason", REASON_MOST)
            .map_err(|reason| (Fault::Unreadable, vec![reason]))?;
        let found = self.entries.iter_mut().find(|entry| entry.credential.id == *id);
        let Some(entry) = found else { return Err((Fault::CredentialUnknown, vec![])) };
        let person = self.list.person(&record.by).filter(|person| person.trusted_at(&record.at));
        let may = person.is_some_and(|person| person.number != entry.credential.subject);
        if !may && record.by != self.list.root {
            return Err((Fault::NotTheirs, vec![]));
        }
        if entry.withdrawn.is_some() {
            return Err((Fault::WithdrawnTwice, vec![]));
        }
        let (credential, reason) = (id.to_owned(), reason.to_owned());
        entry.withdrawn = Some(Withdrawal { credential, at: record.at.clone(), reason });
        Ok(())
    }
}

/// Whether a sign-off that is to be added suits its competency as the content has it now.
pub(super) fn suits(act: &Act, competencies: &[Competency]) -> Result<(), Vec<Refusal>> {
    let (Act::SignedOff { credential } | Act::Reassessed { credential, .. }) = act else { return Ok(()) };
    let (credential, _) = proven(credential).map_err(|reason| vec![reason])?;
    let reasons = against_content(&credential, competencies);
    if reasons.is_empty() { Ok(()) } else { Err(reasons) }
}

fn linked(record: &Record, (number, previous): (u32, String)) -> Result<(), Misfit> {
    if record.number != number {
        return Err((Fault::NumberWrong, vec![]));
    }
    if record.previous == previous { Ok(()) } else { Err((Fault::PreviousWrong, vec![])) }
}

/// A list that the root signed, in a record that it signed too.
fn read_list(list: &Members, root: Option<&PublicKey>, record: &Record) -> Result<TrustList, Misfit> {
    let list = TrustList::proven(list, root).map_err(|reason| (Fault::ListRefused, vec![reason]))?;
    if record.by != list.root || record.at < list.issued {
        return Err((Fault::NotTheirs, vec![]));
    }
    Ok(list)
}
