//! Material that lies on the work: area of the parts times the wet film of each coat. What misses the work is not counted,
//! and a coat that tells no wet film counts with that of the sheet.

use super::story::Walk;
use crate::quantity::{Millilitres, SquareMetres};
use crate::rules::sequence::operation::{COATS, Operation};
use crate::rules::sheet::Setting;

/// What of a material was laid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Laid {
    /// In which operation.
    pub operation: Operation,
    /// Coats of it.
    pub coats: u32,
    /// As it left the gun onto the work.
    pub volume: Millilitres,
}

/// What was laid of each coat, in the order of the operations.
#[must_use]
pub fn laid(walk: &Walk) -> Vec<Laid> {
    let usual = walk.start().sheet.micrometres(Setting::ClearWet);
    let mut found = Vec::new();
    for operation in COATS {
        let lines = || walk.lines().iter().filter(|line| line.operation == *operation);
        let film = |line: &super::line::Line| {
            let area: f64 =
                line.parts.iter().map(|part| walk.start().area(*part)).map(SquareMetres::get).sum();
            // A square metre at one micrometre is one millilitre.
            area * line.wet.unwrap_or(usual).get()
        };
        let coats = u32::try_from(lines().count()).unwrap_or(u32::MAX);
        if coats > 0 {
            let volume = Millilitres::saturating(lines().map(film).sum());
            found.push(Laid { operation: *operation, coats, volume });
        }
    }
    found
}
