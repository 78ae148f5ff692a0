//! What several screens show of a shop sheet: a value with its limits, how two sheets differ, an edition before it is taken.

mod differ;
mod offer;
mod value;

pub(in crate::app) use differ::{Column, differ_table};
pub(in crate::app) use offer::SheetOffer;
pub(in crate::app) use value::{limits, origin, shown};
