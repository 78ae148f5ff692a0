//! Everything that this tablet keeps, as the menu takes it out and puts it back.

use crate::device::{Store, StoreError, clock, page};
use crate::exchange::Backup;

/// The open database.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Everything(Store);

impl Everything {
    pub(in crate::app) const fn of(store: Store) -> Self {
        Self(store)
    }

    /// All of it as one backup of the tablet of that name; in words why it cannot be had.
    pub(in crate::app) async fn backup(&self, device: &str) -> Result<Backup, String> {
        let all = self.0.everything().await.map_err(|error| error.to_string())?;
        Backup::of(device, &clock::now(), all).map_err(|refused| refused.to_string())
    }

    /// Puts a backup in the place of all of it, under another name of the tablet.
    pub(in crate::app) async fn put_back(&self, backup: &Backup) -> Result<(), StoreError> {
        self.0.put_back(backup, &page::random_name()).await
    }
}
