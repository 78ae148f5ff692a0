//! The shelf of results: files taken in, read and written in slices, and left out.

use crate::app::state::NotIn;
use crate::device::Slices;
use crate::device::{Shelf, Store, StoreError, Swapped, files};
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
    match store_joined(store, &mut with, &added.changed, slices).await {
        Ok(()) => (Ok(added), with),
        Err(why) => (Err(why), gathered),
    }
}

/// Stores what is known of these devices now. Another window may have taken in more of them: what lies there is joined with it
/// first, and never stored over.
async fn store_joined(
    store: &Store,
    with: &mut Gathered,
    devices: &[String],
    slices: &mut Slices,
) -> Result<(), NotIn> {
    let mut there = Vec::new();
    for device in devices {
        let name = shelf_name(device);
        let text = store.file(Shelf::Results, &name).await.map_err(|_| NotIn::NotStored)?;
        if let Some(text) = &text
            && let Ok(results) = read_slowly(text.as_bytes(), slices).await
        {
            with.take(results).map_err(NotIn::Clash)?;
        }
        there.push((name, text));
    }
    let mut files = Vec::new();
    for ((name, from), device) in there.into_iter().zip(devices) {
        let Some(results) = with.device(device) else { continue };
        let to = write_slowly(results, slices).await.map_err(|_| NotIn::NotStored)?;
        files.push(Swapped { name, from, to });
    }
    store.swap_files(Shelf::Results, &files).await.map_err(|_| NotIn::NotStored)
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
