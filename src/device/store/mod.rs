//! Events, settings, people, keys, half-made observations and the sign-off book in the browser's database. Each write is one
//! short transaction, and it counts as saved only when that transaction is complete.

mod backup;
mod journal;

pub use backup::{Held, held, read_backup};
use journal::{FRONT, front, last_key, next_number};

use super::{page, rest};
use crate::content::Stricter;
use crate::exchange::folder::{Name, Without, without};
use crate::learn::Front;
use crate::people::Crew;
use crate::record::{Begun, Draft, Erased, Event, Journal, MeasuredAir};
use crate::signoff::Record;
use crate::walk::Kept as Walked;
use idb::request::{GetAllKeysStoreRequest, GetAllStoreRequest};
use idb::{Database, Transaction, TransactionMode, TransactionResult};
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

/// Values that are stored whole and changed from more windows than one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kept {
    /// The apprentices.
    Crew,
    /// Wrapped keys, as their files.
    Keys,
    /// What the shop asks for more.
    Stricter,
    /// How the shop's folder is used.
    Folder,
}

impl Kept {
    const fn key(self) -> &'static str {
        match self {
            Self::Crew => CREW,
            Self::Keys => KEYS,
            Self::Stricter => STRICTER,
            Self::Folder => FOLDER_SETUP,
        }
    }
}

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

/// Files that are kept by their names, each as its text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shelf {
    /// Shop sheets of the shop's own.
    Sheets,
    /// Scenario sets that were made here or taken.
    Sets,
    /// What came from other tablets.
    Results,
    /// What waits to be carried to the shop's folder.
    Outbox,
    /// Sets, sheets and withdrawals of the shop's folder that nobody has taken yet.
    Offered,
    /// Jobs that are walked or were.
    Walks,
}

impl Shelf {
    const fn store(self) -> &'static str {
        match self {
            Self::Sheets => "sheets",
            Self::Sets => "sets",
            Self::Results => "results",
            Self::Outbox => "outbox",
            Self::Offered => "offered",
            Self::Walks => "walks",
        }
    }
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

    /// A value as it is stored now, or the empty one where there is none.
    ///
    /// # Errors
    /// [`StoreError::Changed`] where a value is there that cannot be read; it stays.
    pub async fn kept<T: DeserializeOwned + Default>(&self, kept: Kept) -> Result<T, StoreError> {
        let transaction = self.database()?.transaction(&[STATE], TransactionMode::ReadOnly)?;
        let value = transaction.object_store(STATE)?.get(JsValue::from(kept.key()))?.await?;
        read_or_new(value).ok_or(StoreError::Changed)
    }

    /// Puts a value in the place of another, if that one is still there: another window may have stored something since.
    ///
    /// # Errors
    /// [`StoreError::Changed`] where another value is there, or one that cannot be read; then it stays.
    pub async fn swap<T>(&self, kept: Kept, from: &T, to: &T) -> Result<(), StoreError>
    where
        T: Serialize + DeserializeOwned + Default + PartialEq,
    {
        let to = json(to)?;
        let transaction = self.database()?.transaction(&[STATE], TransactionMode::ReadWrite)?;
        let state = transaction.object_store(STATE)?;
        let key = JsValue::from(kept.key());
        if read_or_new::<T>(state.get(key.clone())?.await?).as_ref() != Some(from) {
            return Err(StoreError::Changed);
        }
        state.put(&to, Some(&key))?.await?;
        done(transaction.await?)
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

    /// Erases events of a person and what is kept of them for the first screen, the cards that lie on the desk for them, their walks and what waits of them to be carried to
    /// the shop's folder, and stores what says so, all or nothing.
    ///
    /// # Errors
    /// [`StoreError`]; then nothing is erased.
    pub async fn erase(&self, erased: &Erased, person: &str) -> Result<(), StoreError> {
        let event = json(&Event::from(erased.clone()))?;
        let stores = [JOURNAL, STATE, Shelf::Outbox.store(), Shelf::Walks.store()];
        let transaction = self.database()?.transaction(&stores, TransactionMode::ReadWrite)?;
        let (journal, state) = (transaction.object_store(JOURNAL)?, transaction.object_store(STATE)?);
        let outbox = transaction.object_store(Shelf::Outbox.store())?;
        for spot in [Spot::Practice, Spot::Check] {
            let key = JsValue::from(spot.key());
            if read::<Draft>(state.get(key.clone())?.await?).is_some_and(|draft| draft.person == person) {
                state.delete(key)?.await?;
            }
        }
        state.delete(JsValue::from(FRONT))?.await?;
        for number in &erased.numbers {
            journal.delete(key_of(*number))?.await?;
        }
        for name in outbox.get_all_keys(None, None)?.await? {
            let text = outbox.get(name.clone())?.await?.and_then(|text| text.as_string()).unwrap_or_default();
            let less = match name.as_string().as_deref().and_then(Name::parse) {
                Some(name) => without(&name, &text, person),
                None => Without::Nothing,
            };
            if less != Without::Same {
                outbox.delete(name)?.await?;
            }
            if let Without::Less(name, text) = less {
                outbox.put(&JsValue::from(text.as_str()), Some(&JsValue::from(name.as_str())))?.await?;
            }
        }
        let walks = transaction.object_store(Shelf::Walks.store())?;
        for name in walks.get_all_keys(None, None)?.await? {
            let text = walks.get(name.clone())?.await?.and_then(|text| text.as_string());
            if text.as_deref().and_then(Walked::read).is_some_and(|walk| walk.person == person) {
                walks.delete(name)?.await?;
            }
        }
        journal.add(&event, Some(&key_of(erased.stamp.sequence)))?.await?;
        done(transaction.await?)
    }

    /// The files of a shelf with their names, in the order of their names, once the part of the program is there that reads
    /// such files.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn shelf(&self, shelf: Shelf) -> Result<Vec<(String, String)>, StoreError> {
        rest::there().await;
        let transaction = self.database()?.transaction(&[shelf.store()], TransactionMode::ReadOnly)?;
        Files::asked(&transaction, shelf)?.come().await
    }

    /// The names of the files of a shelf.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn names(&self, shelf: Shelf) -> Result<Vec<String>, StoreError> {
        let transaction = self.database()?.transaction(&[shelf.store()], TransactionMode::ReadOnly)?;
        let names = transaction.object_store(shelf.store())?.get_all_keys(None, None)?.await?;
        Ok(names.iter().filter_map(JsValue::as_string).collect())
    }

    /// Puts a file on a shelf where none of its name is; one that is there stays as it is.
    ///
    /// # Errors
    /// [`StoreError`]; then it is not stored.
    pub async fn shelve_new(&self, shelf: Shelf, name: &str, text: &str) -> Result<(), StoreError> {
        let transaction = self.database()?.transaction(&[shelf.store()], TransactionMode::ReadWrite)?;
        let (store, key) = (transaction.object_store(shelf.store())?, JsValue::from(name));
        if store.get(key.clone())?.await?.is_none() {
            store.put(&JsValue::from(text), Some(&key))?.await?;
        }
        done(transaction.await?)
    }

    /// Puts files on a shelf, all or none; one of the same name is replaced.
    ///
    /// # Errors
    /// [`StoreError`]; then none is stored.
    pub async fn shelve(&self, shelf: Shelf, files: &[(String, String)]) -> Result<(), StoreError> {
        let transaction = self.database()?.transaction(&[shelf.store()], TransactionMode::ReadWrite)?;
        let store = transaction.object_store(shelf.store())?;
        for (name, text) in files {
            store.put(&JsValue::from(text.as_str()), Some(&JsValue::from(name.as_str())))?.await?;
        }
        done(transaction.await?)
    }

    /// A walk as it is stored now; none where there is none of that id, or one that cannot be read.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn walk(&self, id: &str) -> Result<Option<Walked>, StoreError> {
        let walks = Shelf::Walks.store();
        let transaction = self.database()?.transaction(&[walks], TransactionMode::ReadOnly)?;
        Ok(read(transaction.object_store(walks)?.get(JsValue::from(id))?.await?))
    }

    /// Puts a walk in the place of the one that it was made from, if that one is still there: another window may have gone on
    /// with it since, or have left it out. Without one nothing may be there.
    ///
    /// # Errors
    /// [`StoreError::Changed`] where something else is there; then it stays.
    pub async fn swap_walk(&self, from: Option<&Walked>, to: &Walked) -> Result<(), StoreError> {
        let (text, key) = (json(to)?, JsValue::from(to.id.as_str()));
        let transaction =
            self.database()?.transaction(&[Shelf::Walks.store()], TransactionMode::ReadWrite)?;
        let walks = transaction.object_store(Shelf::Walks.store())?;
        let stored = walks.get(key.clone())?.await?;
        let there = stored.is_some();
        if there != from.is_some() || read::<Walked>(stored).as_ref() != from {
            return Err(StoreError::Changed);
        }
        walks.put(&text, Some(&key))?.await?;
        done(transaction.await?)
    }

    /// Takes a file from a shelf; one that is not there is no error.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn unshelve(&self, shelf: Shelf, name: &str) -> Result<(), StoreError> {
        let transaction = self.database()?.transaction(&[shelf.store()], TransactionMode::ReadWrite)?;
        transaction.object_store(shelf.store())?.delete(JsValue::from(name))?.await?;
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

/// The files of a shelf, on their way.
struct Files {
    texts: GetAllStoreRequest,
    names: GetAllKeysStoreRequest,
}

impl Files {
    fn asked(transaction: &Transaction, shelf: Shelf) -> Result<Self, StoreError> {
        let files = transaction.object_store(shelf.store())?;
        Ok(Self { texts: files.get_all(None, None)?, names: files.get_all_keys(None, None)? })
    }

    /// With their names, in the order of their names.
    async fn come(self) -> Result<Vec<(String, String)>, StoreError> {
        let (texts, names) = (self.texts.await?, self.names.await?);
        let text = |value: &JsValue| value.as_string().unwrap_or_default();
        Ok(names.iter().map(text).zip(texts.iter().map(text)).collect())
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

/// Whether a stored value says anything.
fn holds(value: &JsValue) -> bool {
    value.as_string().is_none_or(|text| !["null", "[]"].contains(&text.as_str()))
}

fn read<T: DeserializeOwned>(value: Option<JsValue>) -> Option<T> {
    serde_json::from_str(&value?.as_string()?).ok()
}

/// What is stored, or the empty one where nothing is; `None` where it cannot be read.
fn read_or_new<T: DeserializeOwned + Default>(value: Option<JsValue>) -> Option<T> {
    if value.is_none() { Some(T::default()) } else { read(value) }
}
