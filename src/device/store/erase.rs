//! A person erased from the database.

use super::journal::FRONT;
use super::{JOURNAL, STATE, Shelf, Spot, Store, StoreError, done, json, key_of, read};
use crate::exchange::folder::{Name, Without, without};
use crate::record::{Draft, Erased, Event};
use crate::walk::Kept as Walked;
use idb::{ObjectStore, TransactionMode};
use wasm_bindgen::JsValue;

impl Store {
    /// Erases events of a person and what is kept of them for the first screen, the cards that lie on the desk for them, their
    /// walks and what waits of them to be carried to the shop's folder, and stores what says so, all or nothing.
    ///
    /// # Errors
    /// [`StoreError`]; then nothing is erased.
    pub async fn erase(&self, erased: &Erased, person: &str) -> Result<(), StoreError> {
        let event = json(&Event::from(erased.clone()))?;
        let (outbox, walks) = (Shelf::Outbox.store(), Shelf::Walks.store());
        let transaction =
            self.database()?.transaction(&[JOURNAL, STATE, outbox, walks], TransactionMode::ReadWrite)?;
        let (journal, state) = (transaction.object_store(JOURNAL)?, transaction.object_store(STATE)?);
        erase_cards(&state, person).await?;
        state.delete(JsValue::from(FRONT))?.await?;
        for number in &erased.numbers {
            journal.delete(key_of(*number))?.await?;
        }
        erase_waiting(&transaction.object_store(outbox)?, person).await?;
        erase_walks(&transaction.object_store(walks)?, person).await?;
        journal.add(&event, Some(&key_of(erased.stamp.sequence)))?.await?;
        done(transaction.await?)
    }
}

/// The cards that lie on the desk for them.
async fn erase_cards(state: &ObjectStore, person: &str) -> Result<(), StoreError> {
    for spot in [Spot::Practice, Spot::Check] {
        let key = JsValue::from(spot.key());
        if read::<Draft>(state.get(key.clone())?.await?).is_some_and(|draft| draft.person == person) {
            state.delete(key)?.await?;
        }
    }
    Ok(())
}

/// What waits of them to be carried to the shop's folder: files that hold others too stay without them.
async fn erase_waiting(outbox: &ObjectStore, person: &str) -> Result<(), StoreError> {
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
    Ok(())
}

async fn erase_walks(walks: &ObjectStore, person: &str) -> Result<(), StoreError> {
    for name in walks.get_all_keys(None, None)?.await? {
        let text = walks.get(name.clone())?.await?.and_then(|text| text.as_string());
        if text.as_deref().and_then(Walked::read).is_some_and(|walk| walk.person == person) {
            walks.delete(name)?.await?;
        }
    }
    Ok(())
}
