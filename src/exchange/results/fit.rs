//! What may stand in results.

use super::Results;
use super::walked::fit_walked;
use crate::exchange::Refused;
use crate::record::{Event, Moment};
use crate::spraying::run;
use std::collections::BTreeMap;

/// Bytes of an event, our own limit: the longest that a screen can make holds a run of up to [`run::BYTES_MOST`], the others
/// have some 4 kB.
const EVENT_MOST: usize = run::BYTES_MOST + 4 * 1024;
/// Bytes of the name of a device, of a person or of a set, our own limit; the fields in which they are typed take less.
const NAME_MOST: usize = 256;
/// The largest number of an event: whole numbers up to it are exact in every reader of JSON (RFC 8259, section 6).
const SEQUENCE_MOST: u64 = (1 << 53) - 1;

/// Checks all but the events.
pub(super) fn fit_head(results: &Results) -> Result<(), Refused> {
    name("device", &results.device)?;
    if Moment::of(&results.at).is_none() {
        let allowed = "a moment in universal time is allowed, as 2027-03-12T14:30:00Z";
        return Err(Refused::value("at", &results.at, allowed));
    }
    for (nth, one) in (1..).zip(&results.people) {
        name(&format!("people.{nth}.journal"), &one.journal)?;
        name(&format!("people.{nth}.number"), &one.number)?;
        name(&format!("people.{nth}.name"), &one.name)?;
    }
    for (nth, set) in (1..).zip(&results.sets) {
        name(&format!("sets.{nth}"), set)?;
    }
    Ok(())
}

pub(super) fn name(place: &str, text: &str) -> Result<(), Refused> {
    if text.is_empty() || text.len() > NAME_MOST {
        return Err(Refused::value(place, text, format!("1 to {NAME_MOST} bytes of text are allowed")));
    }
    Ok(())
}

/// The latest number of each device so far.
#[derive(Debug, Default)]
pub(super) struct Places(BTreeMap<String, u64>);

impl Places {
    /// Checks the next event.
    pub(super) fn fit(&mut self, place: &str, event: &Event, text: &str) -> Result<(), Refused> {
        let stamp = event.stamp();
        let at = |field: &str| format!("{place}.{field}");
        if text.len() > EVENT_MOST {
            let found = format!("{} bytes", text.len());
            return Err(Refused::value(place, found, format!("{EVENT_MOST} bytes at most are allowed")));
        }
        name(&at("device"), &stamp.device)?;
        if stamp.person.len() > NAME_MOST {
            let allowed = format!("{NAME_MOST} bytes of text at most are allowed");
            return Err(Refused::value(at("person"), &stamp.person, allowed));
        }
        let guess = event.answer().and_then(|entry| entry.guess).filter(|guess| !(0.0..=1.0).contains(guess));
        if let Some(guess) = guess {
            return Err(Refused::value(at("guess"), guess, "0 to 1 is allowed"));
        }
        if let Some(walked) = event.walked() {
            fit_walked(place, walked)?;
        }
        let before = match self.0.get_mut(&stamp.device) {
            Some(latest) => std::mem::replace(latest, stamp.sequence),
            None => {
                self.0.insert(stamp.device.clone(), stamp.sequence);
                0
            }
        };
        if stamp.sequence <= before || stamp.sequence > SEQUENCE_MOST {
            let allowed = format!("{} to {SEQUENCE_MOST} is allowed after the event before", before + 1);
            return Err(Refused::value(at("sequence"), stamp.sequence, allowed));
        }
        Ok(())
    }
}
