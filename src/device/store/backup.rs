//! Everything in the browser's database, taken out as one backup and put back from one.

use super::journal::FRONT;
use super::{
    BOOK, CREW, FOLDER, FOLDER_SETUP, JOURNAL, SETTINGS, STATE, STORES, Shelf, Store, StoreError, done,
    key_of, number,
};
use crate::exchange::{Backup, Key, Refused, Values};
use idb::TransactionMode;
use serde_json::Value;
use std::collections::BTreeMap;
use wasm_bindgen::JsValue;

/// Leaves no tablet: how it reaches the shop's folder, with the password, and how far it has handed in there; and what is
/// worked out from the journal again.
const LEAVES_NOT: [&str; 3] = [FOLDER, FOLDER_SETUP, FRONT];
/// Member of the settings that names the tablet.
const DEVICE: &str = "device";

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
    /// Whatever else would be replaced: keys, sets, sheets, results of other tablets, what is half done.
    pub others: usize,
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
    let told = [JOURNAL, BOOK, Shelf::Walks.store(), STATE];
    let shelves =
        STORES.iter().filter(|store| !told.contains(store)).map(|store| count(store)).sum::<usize>();
    // Settings are on each tablet from its first start.
    let own = |key: &Key| matches!(key, Key::Name(name) if name == SETTINGS || name == CREW);
    let empty = |text: &str| matches!(text, "null" | "[]" | "{}");
    let state = backup.values(STATE).iter().filter(|(key, text)| !own(key) && !empty(text)).count();
    Held {
        events: count(JOURNAL),
        people: backup.crew(STATE, CREW).map(|crew| crew.members().len()),
        records: count(BOOK),
        walks: count(Shelf::Walks.store()),
        others: shelves + state,
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

    /// Puts a backup in the place of everything that is here, all or nothing; how the shop's folder is reached stays. From then
    /// on the tablet goes by another name: what the old one gave after the backup has the same numbers as what comes now.
    ///
    /// # Errors
    /// [`StoreError`]; then all is as it was.
    pub async fn put_back(&self, backup: &Backup, device: &str) -> Result<(), StoreError> {
        let transaction = self.database()?.transaction(&STORES, TransactionMode::ReadWrite)?;
        for name in STORES {
            let store = transaction.object_store(name)?;
            if name == STATE {
                for key in store.get_all_keys(None, None)?.await? {
                    if key.as_string().as_deref() != Some(FOLDER_SETUP) {
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
                let text = if name == STATE { renamed(key, text, device) } else { text.clone() };
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
    !matches!(key, Key::Name(name) if LEAVES_NOT.contains(&name.as_str()))
}

/// The settings with another name of the tablet; any other value, or settings that cannot be read, as they are.
fn renamed(key: &Key, text: &str, device: &str) -> String {
    let settings = matches!(key, Key::Name(name) if name == SETTINGS);
    match serde_json::from_str(text) {
        Ok(Value::Object(mut all)) if settings => {
            all.insert(DEVICE.to_owned(), device.into());
            Value::Object(all).to_string()
        }
        _ => text.to_owned(),
    }
}

fn told(key: &JsValue) -> Option<Key> {
    key.as_string().map(Key::Name).or_else(|| number(key).map(Key::Number))
}
