//! A part of the work: its wood, what was done to it, what lies on it, what is hidden in it.

use super::hidden::Hidden;
use super::layer::Layer;
use crate::quantity::Micrometres;
use crate::rules::sequence::job::Part;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{CLEARS, COATS, FILM_COLOUR, Operation};

/// Coats of the day on which a part was last coated.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Day {
    /// Clear coats.
    pub(super) clears: u32,
    /// Whether one of its coats was heavy.
    pub(super) heavy: bool,
}

/// The last levelling.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Levelled {
    /// Last paper, P grade, where it was told.
    pub(super) grit: Option<u32>,
    /// A grit of the ladder was left out.
    pub(super) skipped: bool,
}

/// A mask.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Mask {
    /// The operation that laid it, by place in the run.
    pub(super) made: usize,
    /// Colour lies over it.
    pub(super) coloured: bool,
    /// It covers a glue seat or a part that stays bare.
    pub(super) over_bare_part: bool,
}

/// The state of a part.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct PartState {
    pub(super) about: Part,
    /// Operations done on it, in order.
    pub(super) done: Vec<Operation>,
    pub(super) laid: Vec<Layer>,
    pub(super) day: Day,
    /// Clear over the colour, less what levelling took. Where the count was left to the sheet, it is what the sheet asks.
    pub(super) clear: Micrometres,
    pub(super) levelled: Option<Levelled>,
    pub(super) masks: Vec<Mask>,
    pub(super) hidden: Vec<Hidden>,
}

impl PartState {
    pub(super) fn new(about: Part) -> Self {
        Self {
            about,
            done: Vec::new(),
            laid: Vec::new(),
            day: Day::default(),
            clear: Micrometres::saturating(0.0),
            levelled: None,
            masks: Vec::new(),
            hidden: Vec::new(),
        }
    }

    /// Whether one of those operations was done.
    pub(super) fn did(&self, operations: &[Operation]) -> bool {
        self.done.iter().any(|done| operations.contains(done))
    }

    /// What was laid last.
    pub(super) fn top(&self) -> Option<&Layer> {
        self.laid.last()
    }

    /// The layers of those operations, from the wood up.
    pub(super) fn layers(&self, operations: &'static [Operation]) -> impl DoubleEndedIterator<Item = &Layer> {
        self.laid.iter().filter(|layer| operations.contains(&layer.operation))
    }

    /// The last coat.
    pub(super) fn film(&self) -> Option<&Layer> {
        self.layers(COATS).next_back()
    }

    /// The last filling.
    pub(super) fn filling(&self) -> Option<&Layer> {
        self.layers(&[Operation::Fill]).next_back()
    }

    /// Whether colour lies in the film.
    pub(super) fn is_coloured(&self) -> bool {
        self.layers(FILM_COLOUR).next().is_some()
    }

    /// Whether all the clear on it is one thin protective coat.
    pub(super) fn only_protected(&self) -> bool {
        let clears: Vec<&Layer> = self.layers(CLEARS).collect();
        matches!(clears.as_slice(), [one] if one.operation == Operation::Protect && one.coats == 1 && !one.is(Manner::Heavy))
    }

    /// Whether its first filling was tinted to colour flats and pores together, on an approved sample.
    pub(super) fn is_filled_as_stain(&self) -> bool {
        let first = self.layers(&[Operation::Fill]).next();
        first.is_some_and(tints_flats)
    }
}

/// Whether a filling is tinted to colour flats and pores together, on an approved sample.
pub(super) fn tints_flats(filling: &Layer) -> bool {
    [Manner::Coloured, Manner::ColoursFlats, Manner::SameWipe, Manner::Sample]
        .into_iter()
        .all(|manner| filling.is(manner))
}
