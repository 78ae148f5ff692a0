//! Names of the trade that decisions are made of, for the screens: they ask no rule for them.

pub use crate::rules::contamination::Suit;
pub use crate::rules::drying::waits::DryTest;
pub use crate::rules::hazard::mask_kind::Protection;
pub use crate::rules::sequence::operation::Operation;
pub use crate::rules::sequence::plan::Climate;

use crate::rules::sequence::error::OrderError;
use crate::rules::term::Term;
use crate::rules::verdict::RuleId;

/// The rules of order and timing.
pub fn rules_of_order() -> impl Iterator<Item = RuleId> {
    OrderError::ALL.iter().map(|error| RuleId(error.slug()))
}
