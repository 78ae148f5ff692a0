//! Walks: right ones and wrong ones, what is refused, what is kept, and laws over random decisions.

#[path = "../support/mod.rs"]
mod support;

mod command;
mod conditions;
mod evidence;
mod laws;
mod planted;
mod refused;
mod right;
mod room;
mod steps;
mod wrong;
