//! The journals of several devices read as one.

use super::{Event, Journal, Moment};
use std::collections::{BTreeMap, BTreeSet};

/// Two different events with the same number of the same device: a journal was copied to another device and went on there,
/// or was changed.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error(
    "device `{device}` has two different events of number {sequence}; a number stands for one event: nothing was merged"
)]
pub struct Clash {
    /// The device.
    pub device: String,
    /// The number.
    pub sequence: u64,
}

/// Devices and numbers of events that were erased on one of them: a copy is not taken in again.
fn erased(journals: &[Journal]) -> BTreeSet<(&str, u64)> {
    let erased = journals.iter().flat_map(Journal::events).filter_map(|event| match event {
        Event::Erased(erased) => Some(erased),
        _ => None,
    });
    erased.flat_map(|one| one.names()).collect()
}

/// All events of several journals, each once. Those of a device stay in the order of their numbers, whatever its clock said;
/// between devices the clocks tell, and names where they agree: the result does not depend on the order of the journals.
///
/// # Errors
/// [`Clash`] where a number of a device stands for two different events.
pub fn merge(journals: &[Journal]) -> Result<Vec<Event>, Clash> {
    let mut all: BTreeMap<(&str, u64), &Event> = BTreeMap::new();
    let erased = erased(journals);
    for event in journals.iter().flat_map(Journal::events) {
        if erased.contains(&(event.stamp().device.as_str(), event.stamp().sequence)) {
            continue;
        }
        let stamp = event.stamp();
        let there = *all.entry((stamp.device.as_str(), stamp.sequence)).or_insert(event);
        if there != event {
            return Err(Clash { device: stamp.device.clone(), sequence: stamp.sequence });
        }
    }
    // The latest moment so far of a device: a clock set back moves nothing before what came earlier.
    let mut latest: BTreeMap<&str, Option<Moment>> = BTreeMap::new();
    let mut timed = BTreeMap::new();
    for ((device, sequence), event) in all {
        let at = latest.entry(device).or_default();
        *at = (*at).max(Moment::of(&event.stamp().at));
        timed.insert((*at, device, sequence), event);
    }
    Ok(timed.into_values().cloned().collect())
}
