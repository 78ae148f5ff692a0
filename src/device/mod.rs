//! The browser boundary: storage, clock, files, the page itself. The screens reach the browser only through here.

pub mod canvas;
pub mod carry;
pub mod clock;
pub mod files;
mod frames;
pub mod lasting;
pub mod page;
pub mod pointer;
pub mod rest;
pub mod session;
pub mod share;
mod shown;
mod slices;
mod store;
mod watch;

pub use frames::NextFrame;
pub use shown::Shown;
pub use slices::{Slices, once_drawn};
pub use store::{Held, Kept, Loaded, Shelf, Spot, Store, StoreError, Swapped, held, read_backup};
pub use watch::Watch;
