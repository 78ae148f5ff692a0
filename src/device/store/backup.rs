//! Everything in the browser's database, taken out as one backup and put back from one.

use super::{
    BOOK, CREW, FOLDER, FOLDER_SETUP, JOURNAL, STATE, STORES, Shelf, Store, StoreError, done, key_of, number,
};
use crate::exchange::{Backup, Key, Refused, Values};
use idb::TransactionMode;
use std::collections::BTreeMap;
use wasm_bindgen::JsValue;

/// Stays on the tablet: how it reaches the shop's folder, with the password.
const STAYS: [&str; 2] = [FOLDER, FOLDER_SETUP];

/// How much is kept of what people know by name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Held {
    /// Events of the journal: answers, walks, what was watched.
    pub events: usize,
    /// Apprentices; none where they cannot be read.
    pub people: Option<usize>,
    /// Records of the sign-off book.
    pub records: usize,
    /// Walks, those under way among them.
    pub walks: usize,
}

/// Reads the file of a backup.
///
/// # Errors
/// [`Refused`], as [`Backup::read`] has it.
pub fn read_backup(bytes: &[u8]) -> Result<Backup, Refused> {
    Backup::read(bytes, &STORES)
}

/// What a backup holds.
#[must_use]
pub fn held(backup: &Backup) -> Held {
    let count = |store: &str| backup.values(store).len();
    Held {
        events: count(JOURNAL),
        people: backup.crew(STATE, CREW).map(|crew| crew.members().len()),
        records: count(BOOK),
        walks: count(Shelf::Walks.store()),
    }
}

impl Store {
    /// All values of all stores, as they are kept at one moment.
    ///
    /// # Errors
    /// [`StoreError`] where the database cannot be read.
    pub async fn everything(&self) -> Result<BTreeMap<String, Values>, StoreError> {
        let transaction = self.database()?.transaction(&STORES, TransactionMode::ReadOnly)?;
        let mut all = BTreeMap::new();
        for name in STORES {
            let store = transaction.object_store(name)?;
            let (texts, keys) = (store.get_all(None, None)?, store.get_all_keys(None, None)?);
            let (texts, keys) = (texts.await?, keys.await?);
            let values =
                keys.iter().zip(&texts).filter_map(|(key, text)| Some((told(key)?, text.as_string()?)));
            all.insert(name.to_owned(), values.filter(|(key, _)| name != STATE || leaves(key)).collect());
        }
        Ok(all)
    }

    /// Puts a backup in the place of everything that is here, all or nothing. What stays on a tablet stays.
    ///
    /// # Errors
    /// [`StoreError`]; then all is as it was.
    pub async fn put_back(&self, backup: &Backup) -> Result<(), StoreError> {
        let transaction = self.database()?.transaction(&STORES, TransactionMode::ReadWrite)?;
        for name in STORES {
            let store = transaction.object_store(name)?;
            if name == STATE {
                for key in store.get_all_keys(None, None)?.await? {
                    if told(&key).is_some_and(|key| leaves(&key)) {
                        store.delete(key)?.await?;
                    }
                }
            } else {
                store.clear()?.await?;
            }
            for (key, text) in backup.values(name) {
                if name == STATE && !leaves(key) {
                    continue;
                }
                let key = match key {
                    Key::Number(number) => key_of(*number),
                    Key::Name(name) => JsValue::from(name),
                };
                store.put(&JsValue::from(text), Some(&key))?.await?;
            }
        }
        done(transaction.await?)
    }
}

fn leaves(key: &Key) -> bool {
    !matches!(key, Key::Name(name) if STAYS.contains(&name.as_str()))
}

fn told(key: &JsValue) -> Option<Key> {
    key.as_string().map(Key::Name).or_else(|| number(key).map(Key::Number))
}
