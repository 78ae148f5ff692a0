//! The shelf of results: files taken in, read and written in slices, and left out.

use crate::app::state::NotIn;
use crate::device::Slices;
use crate::device::{Shelf, Store, StoreError, files};
use crate::exchange::crew::{Added, Gathered};
use crate::exchange::{RESULTS, Reading, Refused, Results, Writing, content_name};

/// Events that are read between two looks at the clock.
const EVENTS_AT_ONCE: usize = 50;

/// Takes one file in and stores what it changed, all or nothing; what came of it, and what is known now.
pub(super) async fn take_in(
    store: &Store,
    gathered: Gathered,
    bytes: Result<Vec<u8>, files::Unread>,
    slices: &mut Slices,
) -> (Result<Added, NotIn>, Gathered) {
    let Ok(bytes) = bytes else { return (Err(NotIn::Unread), gathered) };
    let results = match read_slowly(&bytes, slices).await {
        Ok(results) => results,
        Err(refused) => return (Err(NotIn::Refused(refused)), gathered),
    };
    let mut with = gathered.clone();
    let added = match with.take(results) {
        Ok(added) => added,
        Err(clash) => return (Err(NotIn::Clash(clash)), gathered),
    };
    let mut texts = Vec::new();
    for results in added.changed.iter().filter_map(|device| with.device(device)) {
        let Ok(text) = write_slowly(results, slices).await else { return (Err(NotIn::NotStored), gathered) };
        texts.push((shelf_name(&results.device), text));
    }
    match store.shelve(Shelf::Results, &texts).await {
        Ok(()) => (Ok(added), with),
        Err(_) => (Err(NotIn::NotStored), gathered),
    }
}

pub(super) async fn read_slowly(bytes: &[u8], slices: &mut Slices) -> Result<Results, Refused> {
    let mut reading = Reading::begin(bytes)?;
    while reading.read_some(EVENTS_AT_ONCE)? {
        slices.rest().await;
    }
    Ok(reading.results())
}

async fn write_slowly(results: &Results, slices: &mut Slices) -> Result<String, Refused> {
    let mut writing = Writing::begin(results)?;
    while writing.write_some(EVENTS_AT_ONCE)? {
        slices.rest().await;
    }
    Ok(writing.text())
}

/// Takes the results of a device off the shelf. A file that the shop's folder brought leaves its name there, so that it is not
/// fetched again.
pub(super) async fn leave_out(store: &Store, device: &str) -> Result<(), StoreError> {
    let mut slices = Slices::begin();
    for (name, text) in store.shelf(Shelf::Results).await? {
        if !Reading::begin(text.as_bytes()).is_ok_and(|reading| reading.head().device == device) {
            continue;
        }
        if name == shelf_name(device) {
            store.unshelve(Shelf::Results, &name).await?;
        } else {
            store.shelve(Shelf::Results, &[(name, String::new())]).await?;
        }
        slices.rest().await;
    }
    Ok(())
}

/// What the results of a device are kept under: the name of a device comes from a file and may be anything.
pub(super) fn shelf_name(device: &str) -> String {
    content_name(RESULTS, device.as_bytes())
}
