//! Files that are kept by their names, and walks among them, which other windows may go on with.

use super::{Store, StoreError, done, json, read};
use crate::device::rest;
use crate::walk::Kept as Walked;
use idb::request::{GetAllKeysStoreRequest, GetAllStoreRequest};
use idb::{Transaction, TransactionMode};
use wasm_bindgen::JsValue;

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
    pub(super) const fn store(self) -> &'static str {
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

/// A file that is put in the place of what lay there.
#[derive(Debug)]
pub struct Swapped {
    /// Its name.
    pub name: String,
    /// What it was made from; none where nothing of that name lay there.
    pub from: Option<String>,
    /// Its text.
    pub to: String,
}

impl Store {
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

    /// A file as it is stored now; none where there is none of that name.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn file(&self, shelf: Shelf, name: &str) -> Result<Option<String>, StoreError> {
        let transaction = self.database()?.transaction(&[shelf.store()], TransactionMode::ReadOnly)?;
        let stored = transaction.object_store(shelf.store())?.get(JsValue::from(name))?.await?;
        Ok(stored.and_then(|value| value.as_string()))
    }

    /// Puts files in the place of those that they were made from, all or none, if those are still there.
    ///
    /// # Errors
    /// [`StoreError::Changed`] where something else is there; then all stays as it is.
    pub async fn swap_files(&self, shelf: Shelf, files: &[Swapped]) -> Result<(), StoreError> {
        let transaction = self.database()?.transaction(&[shelf.store()], TransactionMode::ReadWrite)?;
        let store = transaction.object_store(shelf.store())?;
        for Swapped { name, from, .. } in files {
            let stored = store.get(JsValue::from(name.as_str()))?.await?;
            if stored.and_then(|value| value.as_string()) != *from {
                return Err(StoreError::Changed);
            }
        }
        for Swapped { name, to, .. } in files {
            store.put(&JsValue::from(to.as_str()), Some(&JsValue::from(name.as_str())))?.await?;
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
}

/// The files of a shelf, on their way.
pub(super) struct Files {
    texts: GetAllStoreRequest,
    names: GetAllKeysStoreRequest,
}

impl Files {
    pub(super) fn asked(transaction: &Transaction, shelf: Shelf) -> Result<Self, StoreError> {
        let files = transaction.object_store(shelf.store())?;
        Ok(Self { texts: files.get_all(None, None)?, names: files.get_all_keys(None, None)? })
    }

    /// With their names, in the order of their names.
    pub(super) async fn come(self) -> Result<Vec<(String, String)>, StoreError> {
        let (texts, names) = (self.texts.await?, self.names.await?);
        let text = |value: &JsValue| value.as_string().unwrap_or_default();
        Ok(names.iter().map(text).zip(texts.iter().map(text)).collect())
    }
}
