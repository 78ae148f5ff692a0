//! Names of the trade that decisions are made of, for the screens: they ask no rule for them.

pub use crate::rules::contamination::Suit;
pub use crate::rules::drying::waits::DryTest;
pub use crate::rules::hazard::mask_kind::Protection;
pub use crate::rules::sequence::operation::Operation;
pub use crate::rules::sequence::plan::Climate;
