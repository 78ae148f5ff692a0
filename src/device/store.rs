//! Events and settings in the browser's database. Each write is one short transaction, and it counts as saved only
//! when that transaction is complete.

use crate::record::{Draft, Event, Journal};
use idb::{Database, DatabaseEvent, Factory, ObjectStoreParams, TransactionMode, TransactionResult};
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::rc::Rc;
use wasm_bindgen::JsValue;

const DATABASE: &str = "stepboard";
const VERSION: u32 = 1;
/// Events by sequence number.
const JOURNAL: &str = "journal";
/// Up to 2^53 a number of JavaScript tells each whole number from the next (ECMA-262, Number).
const LAST_WHOLE: f64 = 9_007_199_254_740_992.0;
/// Single values by name.
const STATE: &str = "state";
const SETTINGS: &str = "settings";
const DRAFT: &str = "draft";

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
    /// The database could not be opened when the page was loaded.
    #[error("no database")]
    Closed,
}

/// What was found when the page was loaded.
#[derive(Debug)]
pub struct Loaded<S> {
    /// What is stored of the journal, and which numbers hold something that cannot be read.
    pub journal: Journal,
    /// Settings.
    pub settings: Option<S>,
    /// The card on the desk.
    pub draft: Option<Draft>,
}

impl<S> Default for Loaded<S> {
    fn default() -> Self {
        Self { journal: Journal::default(), settings: None, draft: None }
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
    /// Opens the database, making it where there is none.
    ///
    /// # Errors
    /// [`StoreError`] where the browser has no database or refuses it.
    pub async fn open() -> Result<Self, StoreError> {
        let mut request = Factory::new()?.open(DATABASE, Some(VERSION))?;
        request.on_upgrade_needed(|event| {
            let Ok(database) = event.database() else { return };
            let names = database.store_names();
            for name in [JOURNAL, STATE] {
                if !names.iter().any(|there| there == name) {
                    // A refusal makes the opening itself fail, where it is told.
                    let _ = database.create_object_store(name, ObjectStoreParams::new());
                }
            }
        });
        Ok(Self(Some(Rc::new(request.await?))))
    }

    fn database(&self) -> Result<&Database, StoreError> {
        self.0.as_deref().ok_or(StoreError::Closed)
    }

    /// Reads everything. A value that cannot be read any more is left out and stays stored; the journal knows the numbers of
    /// its own.
    ///
    /// # Errors
    /// [`StoreError`] where the database cannot be read.
    pub async fn load<S: DeserializeOwned>(&self) -> Result<Loaded<S>, StoreError> {
        let transaction = self.database()?.transaction(&[JOURNAL, STATE], TransactionMode::ReadOnly)?;
        let journal = transaction.object_store(JOURNAL)?;
        let (values, keys) = (journal.get_all(None, None)?, journal.get_all_keys(None, None)?);
        let state = transaction.object_store(STATE)?;
        let (settings, draft) = (state.get(JsValue::from(SETTINGS))?, state.get(JsValue::from(DRAFT))?);
        let events = values.await?.into_iter().filter_map(|value| read(Some(value))).collect();
        let journal = Journal::stored(events, keys.await?.iter().filter_map(number));
        Ok(Loaded { journal, settings: read(settings.await?), draft: read(draft.await?) })
    }

    /// Adds an event together with the card on the desk that it belongs to.
    ///
    /// # Errors
    /// [`StoreError`]; then neither is stored.
    pub async fn add(&self, event: &Event, draft: Option<&Draft>) -> Result<(), StoreError> {
        let (event_json, draft_json) = (json(event)?, json(&draft)?);
        #[allow(clippy::cast_precision_loss, reason = "a device gives far fewer than 2^53 events")]
        let key = JsValue::from_f64(event.stamp().sequence as f64);
        let transaction = self.database()?.transaction(&[JOURNAL, STATE], TransactionMode::ReadWrite)?;
        let added = transaction.object_store(JOURNAL)?.add(&event_json, Some(&key))?;
        transaction.object_store(STATE)?.put(&draft_json, Some(&JsValue::from(DRAFT)))?;
        added.await?;
        done(transaction.await?)
    }

    /// Stores the card on the desk; `None` clears it.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn put_draft(&self, draft: Option<&Draft>) -> Result<(), StoreError> {
        self.put(DRAFT, &draft).await
    }

    /// Stores the settings.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn put_settings(&self, settings: &impl Serialize) -> Result<(), StoreError> {
        self.put(SETTINGS, settings).await
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

/// The sequence number that a key of the journal is; `None` of a key that [`Store::add`] never gives.
fn number(key: &JsValue) -> Option<u64> {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and from 0 to 2^53")]
    let whole = |key: f64| (key.fract() == 0.0 && (0.0..=LAST_WHOLE).contains(&key)).then_some(key as u64);
    key.as_f64().and_then(whole)
}

fn read<T: DeserializeOwned>(value: Option<JsValue>) -> Option<T> {
    serde_json::from_str(&value?.as_string()?).ok()
}
