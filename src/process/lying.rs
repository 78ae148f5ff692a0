//! A part as it lies there, for those who look at the work: what can be seen or known, and nothing that is hidden.

use super::layer::Layer;
use super::part::PartState;
use crate::quantity::{Hours, Micrometres};
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{COATS, Operation};

/// A part.
#[derive(Debug, Clone, PartialEq)]
pub struct Lying {
    /// What lies on the wood, from the wood up.
    pub laid: Vec<Laid>,
    /// Operations done since the wood was bare, in order.
    pub done: Vec<Operation>,
    /// Masks on it.
    pub masks: usize,
    /// Clear over the colour, less what levelling took.
    pub clear: Micrometres,
    /// Levelled since the last coat was laid.
    pub levelled: bool,
    /// Buffed since the last coat was laid.
    pub buffed: bool,
    /// The binding was scraped since the last colour was laid.
    pub scraped: bool,
}

/// Something that was laid.
#[derive(Debug, Clone, PartialEq)]
pub struct Laid {
    /// What.
    pub operation: Operation,
    /// Coats of it.
    pub coats: u32,
    /// Dry film of all its coats; of stain and filler it means nothing.
    pub dry: Micrometres,
    /// Remarks on how it was laid.
    pub manners: Vec<Manner>,
    /// Hours since its last coat.
    pub age: Hours,
    /// Scuffed or levelled since.
    pub abraded: bool,
    /// Filler that was wiped off.
    pub wiped: bool,
    /// Sanded since.
    pub sanded: bool,
}

impl Lying {
    pub(super) fn of(part: &PartState, now: f64) -> Self {
        let since =
            |of: &[Operation]| part.done.iter().rposition(|done| of.contains(done)).map_or(0, |at| at + 1);
        let after = |at: usize, operation| part.done.iter().skip(at).any(|done| *done == operation);
        let coated = since(COATS);
        Self {
            laid: part.laid.iter().map(|layer| Laid::of(layer, now)).collect(),
            done: part.done.clone(),
            masks: part.masks.len(),
            clear: part.clear,
            levelled: after(coated, Operation::Level),
            buffed: after(coated, Operation::Buff),
            scraped: after(since(&[Operation::Colour, Operation::Shade]), Operation::Scrape),
        }
    }

    /// Whether a coat lies on the wood.
    #[must_use]
    pub fn is_coated(&self) -> bool {
        self.laid.iter().any(|laid| COATS.contains(&laid.operation))
    }

    /// The last one of an operation that was laid.
    #[must_use]
    pub fn last(&self, operation: Operation) -> Option<&Laid> {
        self.laid.iter().rfind(|laid| laid.operation == operation)
    }

    /// Coats of an operation.
    #[must_use]
    pub fn coats(&self, operation: Operation) -> u32 {
        self.laid.iter().filter(|laid| laid.operation == operation).map(|laid| laid.coats).sum()
    }

    /// The last coat.
    #[must_use]
    pub fn film(&self) -> Option<&Laid> {
        self.laid.iter().rfind(|laid| COATS.contains(&laid.operation))
    }
}

impl Laid {
    fn of(layer: &Layer, now: f64) -> Self {
        Self {
            operation: layer.operation,
            coats: layer.coats,
            dry: layer.dry,
            manners: layer.manners.clone(),
            age: Hours::saturating(now - layer.ended),
            abraded: layer.abraded,
            wiped: layer.wiped.is_some(),
            sanded: layer.sanded,
        }
    }
}
