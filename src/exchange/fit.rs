//! What may stand in any file of ours: text that shows as it is, and moments.

use super::Refused;
use crate::record::{Moment, is_plain};

/// Refuses text that does not show as it is, is too long, or is not there and should be.
pub(super) fn line(place: &str, text: &str, most: usize, may_be_empty: bool) -> Result<(), Refused> {
    if is_plain(text, most) && (may_be_empty || !text.is_empty()) {
        return Ok(());
    }
    let least = u32::from(!may_be_empty);
    let allowed = format!("text on one line that shows as it is, {least} to {most} characters");
    Err(Refused::value(place, text, allowed))
}

/// Refuses what is no moment in universal time.
pub(super) fn moment(place: &str, at: &str) -> Result<(), Refused> {
    if Moment::of(at).is_some() {
        return Ok(());
    }
    Err(Refused::value(place, at, "an instant like 2027-03-12T14:30:00Z is allowed"))
}
