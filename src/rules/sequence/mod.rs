//! Orders and timing: what may follow what, the published errors, and the legitimate variants, which are tested first.
//!
//! Facts stand in tables ([`operation`], [`error`], [`variant`]): what an operation does to the work, what an error
//! makes and where it shows, which variants belong to it. The shapes of the errors and the conditions of the variants
//! are functions over a [`plan::Plan`] for a [`job::Job`]; [`check::check`] brings them together.
//!
//! Source of errors and variants: the published rows `se-01` to `se-40` and `sv-01` to `sv-25`
//! (`tests/data/sequence-errors.csv`, with the source of each row). Values come from the shop sheet; where a shop sets
//! less than a floor, the floor counts.

pub mod check;
pub mod duration;
pub mod duty;
pub mod error;
pub mod job;
pub mod manner;
pub mod operation;
pub mod plan;
pub mod route;
pub mod shop;
pub mod variant;

mod clear;
mod colour;
mod filling;
mod finishing;
mod order;
mod preparation;
mod rags;
mod sealing;
mod trim;
mod variant_holds;
mod view;
