//! Events, settings, people, keys, half-made observations and the sign-off book in the browser's database. Each write is one
//! short transaction, and it counts as saved only when that transaction is complete.

mod backup;
mod erase;
mod journal;
mod kept;
mod loaded;
mod shelf;

pub use backup::{Held, held, read_backup};
pub use kept::Kept;
pub use loaded::Loaded;
pub use shelf::{Shelf, Swapped};

use super::page;
use crate::record::{Begun, Draft, Event, MeasuredAir};
use crate::signoff::Record;
use idb::{Database, TransactionMode, TransactionResult};
use js_sys::Promise;
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::rc::Rc;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// Under which name `boot/start.js` leaves the promise of the open database, which `boot/database.js` makes with all stores that
/// are named here.
const OPENED: &str = "opened";
/// Events by sequence number.
const JOURNAL: &str = "journal";
/// Up to 2^53 a number of JavaScript tells each whole number from the next (ECMA-262, Number).
const LAST_WHOLE: f64 = 9_007_199_254_740_992.0;
/// Records of the sign-off book by their numbers.
const BOOK: &str = "book";
/// Single values by name.
const STATE: &str = "state";
/// All stores.
const STORES: [&str; 9] = [
    JOURNAL,
    STATE,
    BOOK,
    Shelf::Sheets.store(),
    Shelf::Sets.store(),
    Shelf::Results.store(),
    Shelf::Outbox.store(),
    Shelf::Offered.store(),
    Shelf::Walks.store(),
];
const SETTINGS: &str = "settings";
const DRAFT: &str = "draft";
const CREW: &str = "crew";
const KEYS: &str = "keys";
const STRICTER: &str = "stricter";
const BEGUN: &str = "begun";
const FOLDER: &str = "folder";
const FOLDER_SETUP: &str = "folder-setup";
const CHECK_DRAFT: &str = "check-draft";
const AIR: &str = "air";

/// Why something could not be stored or read.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// The database said no.
    #[error("{0}")]
    Database(#[from] idb::Error),
    /// A value could not be written as JSON.
    #[error("{0}")]
    Json(#[from] serde_json::Error),
    /// The transaction was given up by the browser.
    #[error("given up by the browser")]
    Aborted,
    /// Another window has stored something else.
    #[error("another window has stored something else")]
    Changed,
    /// The database could not be opened when the page was loaded.
    #[error("no database")]
    Closed,
}

/// Where a card being answered lies: those of practice and of a check do not mix.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spot {
    /// Practice.
    Practice,
    /// A check.
    Check,
}

impl Spot {
    const fn key(self) -> &'static str {
        match self {
            Self::Practice => DRAFT,
            Self::Check => CHECK_DRAFT,
        }
    }
}

/// The open database, or none where it could not be opened.
#[derive(Debug, Clone, Default)]
pub struct Store(Option<Rc<Database>>);

impl PartialEq for Store {
    fn eq(&self, other: &Self) -> bool {
        match (&self.0, &other.0) {
            (Some(a), Some(b)) => Rc::ptr_eq(a, b),
            (a, b) => a.is_none() && b.is_none(),
        }
    }
}

impl Store {
    /// Takes the database that was opened while the program was on its way.
    ///
    /// # Errors
    /// [`StoreError`] where the browser has no database or refuses it.
    pub async fn open() -> Result<Self, StoreError> {
        let opened = page::left_by_boot(OPENED).ok_or(StoreError::Closed)?;
        let opened = JsFuture::from(Promise::resolve(&opened)).await.map_err(|_| StoreError::Closed)?;
        Ok(Self(Some(Rc::new(Database::try_from(opened)?))))
    }

    fn database(&self) -> Result<&Database, StoreError> {
        self.0.as_deref().ok_or(StoreError::Closed)
    }

    /// Adds an event together with the card that lies on the desk after it, where it changes that one.
    ///
    /// # Errors
    /// [`StoreError`]; then neither is stored.
    pub async fn add(&self, event: &Event, after: Option<(Spot, Option<&Draft>)>) -> Result<(), StoreError> {
        let event_json = json(event)?;
        let after = after.map(|(spot, draft)| json(&draft).map(|json| (spot.key(), json))).transpose()?;
        let key = key_of(event.stamp().sequence);
        let transaction = self.database()?.transaction(&[JOURNAL, STATE], TransactionMode::ReadWrite)?;
        let added = transaction.object_store(JOURNAL)?.add(&event_json, Some(&key))?;
        if let Some((key, draft_json)) = after {
            transaction.object_store(STATE)?.put(&draft_json, Some(&JsValue::from(key)))?;
        }
        added.await?;
        done(transaction.await?)
    }

    /// Stores the card on the desk; `None` clears it.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn put_draft(&self, spot: Spot, draft: Option<&Draft>) -> Result<(), StoreError> {
        self.put(spot.key(), &draft).await
    }

    /// Stores the observations that are being made.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn put_begun(&self, begun: &[Begun]) -> Result<(), StoreError> {
        self.put(BEGUN, &begun).await
    }

    /// Stores the air of the room; `None` erases it.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn put_air(&self, air: Option<&MeasuredAir>) -> Result<(), StoreError> {
        self.put(AIR, &air).await
    }

    /// Stores the settings.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn put_settings(&self, settings: &impl Serialize) -> Result<(), StoreError> {
        self.put(SETTINGS, settings).await
    }

    /// Adds records to the sign-off book, all or none.
    ///
    /// # Errors
    /// [`StoreError`], as where another window has added one of that number.
    pub async fn add_records(&self, records: &[Record]) -> Result<(), StoreError> {
        let transaction = self.database()?.transaction(&[BOOK], TransactionMode::ReadWrite)?;
        let book = transaction.object_store(BOOK)?;
        for record in records {
            let key = JsValue::from(record.number);
            book.add(&JsValue::from(record.text.as_str()), Some(&key))?.await?;
        }
        done(transaction.await?)
    }

    /// What is stored of the shop's folder.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn folder<T: DeserializeOwned>(&self) -> Result<Option<T>, StoreError> {
        let transaction = self.database()?.transaction(&[STATE], TransactionMode::ReadOnly)?;
        Ok(read(transaction.object_store(STATE)?.get(JsValue::from(FOLDER))?.await?))
    }

    /// Stores how the shop's folder stands together with files that go there, and lets go of those that arrived, all or
    /// nothing.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn put_folder(
        &self,
        folder: &impl Serialize,
        files: &[(String, String)],
        arrived: &[String],
    ) -> Result<(), StoreError> {
        let outbox = Shelf::Outbox.store();
        let transaction = self.database()?.transaction(&[STATE, outbox], TransactionMode::ReadWrite)?;
        transaction.object_store(STATE)?.put(&json(folder)?, Some(&JsValue::from(FOLDER)))?;
        for (name, text) in files {
            let (name, text) = (JsValue::from(name.as_str()), JsValue::from(text.as_str()));
            transaction.object_store(outbox)?.put(&text, Some(&name))?;
        }
        for name in arrived {
            transaction.object_store(outbox)?.delete(JsValue::from(name.as_str()))?;
        }
        done(transaction.await?)
    }

    async fn put(&self, key: &str, value: &impl Serialize) -> Result<(), StoreError> {
        let value = json(value)?;
        let transaction = self.database()?.transaction(&[STATE], TransactionMode::ReadWrite)?;
        transaction.object_store(STATE)?.put(&value, Some(&JsValue::from(key)))?;
        done(transaction.await?)
    }
}

fn done(result: TransactionResult) -> Result<(), StoreError> {
    if result.is_committed() { Ok(()) } else { Err(StoreError::Aborted) }
}

fn json(value: &impl Serialize) -> Result<JsValue, StoreError> {
    Ok(JsValue::from(serde_json::to_string(value)?))
}

/// The key of an event in the journal.
#[allow(clippy::cast_precision_loss, reason = "a device gives far fewer than 2^53 events")]
fn key_of(sequence: u64) -> JsValue {
    JsValue::from_f64(sequence as f64)
}

/// The sequence number that a key of the journal is; `None` of a key that [`Store::add`] never gives.
fn number(key: &JsValue) -> Option<u64> {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and from 0 to 2^53")]
    let whole = |key: f64| (key.fract() == 0.0 && (0.0..=LAST_WHOLE).contains(&key)).then_some(key as u64);
    key.as_f64().and_then(whole)
}

fn read<T: DeserializeOwned>(value: Option<JsValue>) -> Option<T> {
    serde_json::from_str(&value?.as_string()?).ok()
}

/// What is stored, or the empty one where nothing is; `None` where it cannot be read.
fn read_or_new<T: DeserializeOwned + Default>(value: Option<JsValue>) -> Option<T> {
    if value.is_none() { Some(T::default()) } else { read(value) }
}
