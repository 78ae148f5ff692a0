//! The journal out of the browser's database, and what the first screen shows of it.

use super::{JOURNAL, STATE, Store, StoreError, done, json, number, read};
use crate::device::Slices;
use crate::learn::Front;
use crate::record::{Event, Journal};
use idb::request::OpenKeyCursorStoreRequest;
use idb::{CursorDirection, KeyCursor, KeyRange, ObjectStore, Query, TransactionMode};
use wasm_bindgen::JsValue;

/// What the first screen shows of the journal.
pub(super) const FRONT: &str = "front";
/// Events that are asked for at once: the page stands still while the browser hands them over.
const PART: u32 = 1_000;
/// Events that are read before the clock is looked at.
const AT_ONCE: usize = 100;

impl Store {
    /// Reads the journal in slices, as it is stored at one moment. A value that cannot be read any more is left out and stays
    /// stored; the journal knows its number.
    ///
    /// # Errors
    /// [`StoreError`] where the database cannot be read.
    pub async fn journal(&self, slices: &mut Slices) -> Result<Journal, StoreError> {
        let transaction = self.database()?.transaction(&[JOURNAL], TransactionMode::ReadOnly)?;
        let journal = transaction.object_store(JOURNAL)?;
        // One transaction lasts from request to request alone: all is fetched before anything else is waited for.
        let mut parts = Vec::new();
        let mut behind = None;
        loop {
            let (values, keys) =
                (journal.get_all(behind.clone(), Some(PART))?, journal.get_all_keys(behind, Some(PART))?);
            let (values, keys) = (values.await?, keys.await?);
            let Some(last) = keys.last() else { break };
            behind = Some(Query::from(KeyRange::lower_bound(last, Some(true))?));
            parts.push((keys, values));
        }
        let (mut events, mut unread) = (Vec::new(), Vec::new());
        for (keys, values) in parts {
            for (keys, values) in keys.chunks(AT_ONCE).zip(values.chunks(AT_ONCE)) {
                for (key, value) in keys.iter().zip(values) {
                    let (key, event) =
                        (number(key), value.as_string().and_then(|text| Event::read(&text).ok()));
                    match event {
                        // One under another number than its own is none that this program stored.
                        Some(event) if key == Some(event.stamp().sequence) => events.push(event),
                        _ => unread.extend(key),
                    }
                }
                slices.rest().await;
            }
        }
        Ok(Journal::stored(events, unread))
    }

    /// The number behind all of the journal as it is stored now; none where a key stands behind them that is no number.
    ///
    /// # Errors
    /// [`StoreError`] where the database cannot be read.
    pub async fn next(&self) -> Result<Option<u64>, StoreError> {
        let transaction = self.database()?.transaction(&[JOURNAL], TransactionMode::ReadOnly)?;
        next_number(last_key(&transaction.object_store(JOURNAL)?)?.await?)
    }

    /// Stores what the first screen shows of the journal, where that is the journal as it is stored now.
    ///
    /// # Errors
    /// [`StoreError::Changed`] where another window has stored something since.
    pub async fn put_front(&self, front: &Front) -> Result<(), StoreError> {
        let text = json(front)?;
        let transaction = self.database()?.transaction(&[JOURNAL, STATE], TransactionMode::ReadWrite)?;
        let last = last_key(&transaction.object_store(JOURNAL)?)?.await?;
        if next_number(last)? != Some(front.next()) {
            return Err(StoreError::Changed);
        }
        transaction.object_store(STATE)?.put(&text, Some(&JsValue::from(FRONT)))?;
        done(transaction.await?)
    }
}

/// Asks for the last key of the journal.
pub(super) fn last_key(journal: &ObjectStore) -> Result<OpenKeyCursorStoreRequest, StoreError> {
    Ok(journal.open_key_cursor(None, Some(CursorDirection::Prev))?)
}

/// The number behind all that are taken; `None` where a key stands behind them that [`Store::add`] never gives.
pub(super) fn next_number(last: Option<KeyCursor>) -> Result<Option<u64>, StoreError> {
    let Some(last) = last else { return Ok(Some(Journal::FIRST)) };
    Ok(number(&last.key()?).map(|last| last.saturating_add(1)))
}

/// What was stored for the first screen, where it fits the journal that ends before that number.
pub(super) fn front(stored: Option<JsValue>, next: Option<u64>) -> Option<Front> {
    read::<Front>(stored).filter(|front| front.fits(next))
}
