//! A panel sprayed: a gun moved along a path in time, the film that it leaves, what came of it and what to do better.
//!
//! [`sprayer`] takes points one after another and lays what leaves the gun as a [`film`] on a [`grid`]; [`reading`]
//! measures it, [`mod@grade`] says whether it passes its task and [`mod@better`] names the one thing to do better. A path is that of
//! a hand, or of programmed passes ([`program`]); [`good`] is a run as the model would do it. Lengths in mm, x to the right of
//! the work's axis, y downwards from its top; films in µm of wet film as laid.
//!
//! It trains judgement and not the hand. It knows one flat face, one fan of a fixed angle and a flow that follows the
//! trigger; a gun that is heeled, the air of a booth and edges that are rounded are left out. The data sheets of gun and
//! material, the booth and the instructor decide.

pub mod better;
pub mod edge;
pub mod film;
pub mod good;
pub mod grade;
pub mod grid;
pub mod hand;
pub mod outcome;
pub mod outline;
pub mod point;
pub mod program;
pub mod reading;
pub mod replay;
pub mod run;
pub mod setup;
pub mod sprayer;
pub mod strokes;
pub mod told;

pub use better::{Advice, Better, better};
pub use grade::{Fault, Finding, grade};
pub use grid::Grid;
pub use outcome::Outcome;
pub use point::{NoPath, Path, Point};
pub use program::Passes;
pub use reading::{Reading, read};
pub use run::Run;
pub use setup::Setup;
pub use sprayer::Sprayer;
