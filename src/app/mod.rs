//! The screens. A page reads the contexts and asks the core; a part gets values and callbacks and draws them. Nothing
//! here computes anything about finishing.

mod hooks;
mod pages;
mod parts;
mod root;
mod route;
mod screen;
mod start;
mod state;

pub use start::start;
