//! The model as a calculator: rules on named facts, for the bench screen, the command and the cards.

pub mod calculation;
pub mod facts;

pub use calculation::{Calculation, Gives, Needs, Outcome};
pub use facts::{FactValue, Facts};

mod air;
pub(crate) mod drying;
mod film;
pub(crate) mod shop;
mod wood;

/// Every calculation, by family.
#[must_use]
pub fn calculations() -> Vec<&'static Calculation> {
    [air::ALL, drying::ALL, film::ALL, shop::ALL, wood::ALL].concat().into_iter().collect()
}
