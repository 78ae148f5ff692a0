//! What is at hand: always the whole list, grouped as a finish room is, with each of the values that are asked for.
//!
//! Nothing is left out for being wrong, and the order is always the same.

use crate::content::{Choice, Content, Number, Place};
use crate::quantity::Hours;
use crate::rules::sequence::duration::duration;
use crate::rules::sequence::operation::Operation;
use crate::rules::sheet::Sheet;
use crate::rules::term::Term;

/// A place of the finish room and what is done there.
#[derive(Debug, Clone, PartialEq)]
pub struct Bench<'a> {
    /// The place.
    pub place: Place,
    /// Its operations.
    pub operations: Vec<AtHand<'a>>,
}

/// An operation that is at hand.
#[derive(Debug, Clone, PartialEq)]
pub struct AtHand<'a> {
    /// Which.
    pub operation: Operation,
    /// Hours that it takes, one coat where it lays coats.
    pub takes: Hours,
    /// Numbers that it asks for.
    pub numbers: Vec<&'a Number>,
    /// Choices that it asks for.
    pub choices: Vec<&'a Choice>,
}

/// The benches of the room in their order.
#[must_use]
pub fn at_hand<'a>(content: &'a Content, sheet: &Sheet) -> Vec<Bench<'a>> {
    let bench = |place: &Place| {
        let here = |operation: &&Operation| place_of(content, **operation) == Some(*place);
        let one = |operation: &Operation| asked(content, sheet, *operation);
        Bench { place: *place, operations: Operation::ALL.iter().filter(here).map(one).collect() }
    };
    Place::ALL.iter().map(bench).collect()
}

/// Where an operation is done; `None`: it is a duty of the room.
#[must_use]
pub fn place_of(content: &Content, operation: Operation) -> Option<Place> {
    content.tools.iter().find(|tool| tool.operations.contains(&operation)).map(|tool| tool.place)
}

/// What an operation asks for.
#[must_use]
pub fn asked<'a>(content: &'a Content, sheet: &Sheet, operation: Operation) -> AtHand<'a> {
    let tools = || content.tools.iter().filter(|tool| tool.operations.contains(&operation));
    AtHand {
        operation,
        takes: duration(operation, sheet),
        numbers: tools().flat_map(|tool| &tool.numbers).collect(),
        choices: tools().flat_map(|tool| &tool.choices).collect(),
    }
}
