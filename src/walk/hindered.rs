//! What keeps an operation from a part: there is nothing that it could act on.

use super::impossible::Why;
use super::start::Start;
use crate::process::lying::Lying;
use crate::rules::sequence::operation::{BARE_WOOD, COATS, Operation};

/// What keeps an operation from a part: there is nothing that it could act on.
pub(super) fn hinders(operation: Operation, part: &Lying, start: &Start) -> Option<Why> {
    let filler = part.laid.last().filter(|top| top.operation == Operation::Fill);
    let stain = part.laid.last().filter(|top| top.operation == Operation::Stain);
    let coloured = part.laid.iter().any(|laid| COATS.contains(&laid.operation));
    match operation {
        op if BARE_WOOD.contains(&op) && part.is_coated() => Some(Why::FilmOverWood),
        Operation::WipeFiller | Operation::SandFiller if filler.is_none() => Some(Why::NoFiller),
        Operation::WipeFiller if filler.is_some_and(|filler| filler.wiped) => Some(Why::FillerWiped),
        Operation::SandBack if stain.is_none() => Some(Why::NoStain),
        Operation::Unmask if part.masks == 0 => Some(Why::NoMask),
        Operation::Trim | Operation::Scrape if !start.job.is_bound() => Some(Why::NoTrim),
        Operation::Scrape if !coloured => Some(Why::NothingOnTrim),
        Operation::Scuff | Operation::Level | Operation::Rework if !part.is_coated() => Some(Why::NoFilm),
        Operation::Buff if part.clear.get() <= 0.0 => Some(Why::NoClear),
        _ => None,
    }
}
