//! Values that are stored whole and changed from more windows than one: what another window stored is never stored over.

use super::{CREW, FOLDER_SETUP, KEYS, STATE, STRICTER, Store, StoreError, done, json, read_or_new};
use idb::TransactionMode;
use serde::Serialize;
use serde::de::DeserializeOwned;
use wasm_bindgen::JsValue;

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

impl Store {
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
}
