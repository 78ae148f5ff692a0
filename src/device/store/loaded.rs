//! What is read of the database when the page is loaded: everything but the journal.

use super::journal::{FRONT, front, last_key, next_number};
use super::shelf::Files;
use super::{
    AIR, BEGUN, BOOK, CREW, JOURNAL, KEYS, SETTINGS, STATE, STRICTER, Shelf, Spot, Store, StoreError, read,
    read_or_new,
};
use crate::content::Stricter;
use crate::device::rest;
use crate::learn::Front;
use crate::people::Crew;
use crate::record::{Begun, Draft, Journal, MeasuredAir};
use idb::TransactionMode;
use serde::de::DeserializeOwned;
use wasm_bindgen::JsValue;

/// What was found when the page was loaded.
#[derive(Debug)]
pub struct Loaded<S> {
    /// The number behind all of the journal, which is read by itself; none where a key stands behind them that is no number.
    pub next: Option<u64>,
    /// What the first screen shows of the journal, where that is known.
    pub front: Option<Front>,
    /// Settings.
    pub settings: Option<S>,
    /// The card on the desk.
    pub draft: Option<Draft>,
    /// Observations that are being made.
    pub begun: Vec<Begun>,
    /// The card of a check.
    pub check_draft: Option<Draft>,
    /// The apprentices; none where what is stored of them cannot be read.
    pub crew: Option<Crew>,
    /// Wrapped keys, as their files; none where what is stored of them cannot be read.
    pub keys: Option<Vec<String>>,
    /// What the shop asks for more, oldest first; none where what is stored of it cannot be read.
    pub stricter: Option<Vec<Stricter>>,
    /// The air of the room as it was measured last.
    pub air: Option<MeasuredAir>,
    /// Records of the sign-off book, as they are stored, in their order.
    pub records: Vec<String>,
    /// Files of the shop's own sheets with their names.
    pub sheets: Vec<(String, String)>,
}

impl<S> Default for Loaded<S> {
    fn default() -> Self {
        Self {
            next: Some(Journal::FIRST),
            front: None,
            settings: None,
            draft: None,
            begun: Vec::new(),
            check_draft: None,
            crew: Some(Crew::default()),
            keys: Some(Vec::new()),
            stricter: Some(Vec::new()),
            air: None,
            records: Vec::new(),
            sheets: Vec::new(),
        }
    }
}

impl Store {
    /// Reads everything but the journal. A value that cannot be read any more is left out and stays stored.
    ///
    /// # Errors
    /// [`StoreError`] where the database cannot be read.
    pub async fn load<S: DeserializeOwned>(&self) -> Result<Loaded<S>, StoreError> {
        let stores = [JOURNAL, STATE, BOOK, Shelf::Sheets.store()];
        let transaction = self.database()?.transaction(&stores, TransactionMode::ReadOnly)?;
        let last = last_key(&transaction.object_store(JOURNAL)?)?;
        let records = transaction.object_store(BOOK)?.get_all(None, None)?;
        let state = transaction.object_store(STATE)?;
        let get = |name: &str| state.get(JsValue::from(name));
        let (settings, draft) = (get(SETTINGS)?, get(Spot::Practice.key())?);
        let check_draft = get(Spot::Check.key())?;
        let (crew, wrapped, stricter, begun) = (get(CREW)?, get(KEYS)?, get(STRICTER)?, get(BEGUN)?);
        let (air, stored_front) = (get(AIR)?, get(FRONT)?);
        let sheets = Files::asked(&transaction, Shelf::Sheets)?;
        // Awaited in the order in which they were asked: an answer that nobody waits for yet is lost.
        let next = next_number(last.await?)?;
        // What is no text is no record either: the book says so at its place.
        let records: Vec<_> =
            records.await?.iter().map(|value| value.as_string().unwrap_or_default()).collect();
        let (settings, draft, check_draft) = (settings.await?, draft.await?, check_draft.await?);
        let (crew, wrapped, stricter, begun) = (crew.await?, wrapped.await?, stricter.await?, begun.await?);
        let (air, stored_front, sheets) = (air.await?, stored_front.await?, sheets.come().await?);
        // What reads cards, people, keys and signatures is in the part of the program that comes behind the first one.
        let behind = [&draft, &check_draft, &crew, &wrapped, &stricter, &begun];
        if !records.is_empty() || !sheets.is_empty() || behind.into_iter().flatten().any(holds) {
            rest::there().await;
        }
        Ok(Loaded {
            next,
            settings: read(settings),
            draft: read(draft),
            check_draft: read(check_draft),
            crew: read_or_new(crew),
            keys: read_or_new(wrapped),
            stricter: read_or_new(stricter),
            begun: read(begun).unwrap_or_default(),
            air: read(air),
            front: front(stored_front, next),
            records,
            sheets,
        })
    }
}

/// Whether a stored value says anything.
fn holds(value: &JsValue) -> bool {
    value.as_string().is_none_or(|text| !["null", "[]"].contains(&text.as_str()))
}
