//! What the ticket orders and the work lacks, as it lies there.

use super::story::Walk;
use crate::process::lying::Lying;
use crate::rules::sequence::operation::Operation;
use crate::rules::sequence::route::asks_for;

/// Something that was ordered and is not on the work, or not all of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Undone {
    /// What.
    pub operation: Operation,
    /// How often it was done where it was done least: coats of clear, else 0 or 1.
    pub done: u32,
    /// How often it was ordered.
    pub ordered: u32,
}

/// What is still to be done by the ticket. Steps that another right way leaves out are none of it (rows `sv` of the published
/// table: filling by finish alone, colour that seals by itself).
#[must_use]
pub fn undone(walk: &Walk) -> Vec<Undone> {
    let start = walk.start();
    let parts: Vec<Lying> = (0..start.parts()).filter_map(|part| walk.part(part)).collect();
    let least = |done: &dyn Fn(&Lying) -> u32| parts.iter().map(done).min().unwrap_or(0);
    // Colour may lie on some parts only, as the sample shows it.
    let most = |operation| parts.iter().map(|part| part.coats(operation)).max().unwrap_or(0);
    let one = |operation: Operation| {
        let (done, ordered) = match operation {
            Operation::Clear => (least(&|part| part.coats(operation)), start.info.ticket.clear_coats),
            Operation::Level => (least(&|part| u32::from(part.levelled)), 1),
            Operation::Buff => (least(&|part| u32::from(part.buffed)), 1),
            _ => (most(operation).min(1), 1),
        };
        (done < ordered).then_some(Undone { operation, done, ordered })
    };
    let ordered = [Operation::Colour, Operation::Shade, Operation::Clear, Operation::Level, Operation::Buff];
    let asked = ordered.into_iter().filter(|one| asks_for(&start.job, &start.sheet, *one));
    asked.filter_map(one).collect()
}
