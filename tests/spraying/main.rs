//! A panel sprayed: the film of a path against closed forms, what is kept and what must not change it, good runs and bad ones.

#[path = "../support/mod.rs"]
mod support;

mod command;
mod conserved;
mod fan;
mod film;
mod graded;
mod programmed;
mod read;
mod refused;
mod repair;
mod replay;
mod sampled;
mod shade;
mod straight;
mod strokes;
mod tries;
