//! The work as a state machine: parts with what lies on them, a clock, the air of the room, and faults that stay hidden
//! until a later operation shows them.
//!
//! [`run::Run`] takes operations one by one. Each has preconditions (`before`), effects (`effect`) and a duration
//! ([`duration`](crate::rules::sequence::duration)). A precondition that is not met does not stop the work: it leaves a defect, which shows at once or
//! stays hidden (`hidden`) until an operation uncovers or cures it, or until the work is handed over. Faults of
//! technique come from the values of the pass ([`technique`]).
//!
//! What a run finds is not looked up in [`crate::rules::sequence::check`]: the checker reads a finished plan forwards
//! and backwards, the run only knows what was done so far. The two share the tables of operations, errors and sheet
//! values, and the verdicts of wood, air and mixing, which outside tables hold; `tests/laws_process.rs` holds one
//! against the other.

pub mod act;
pub mod air;
pub mod defect;
pub mod lying;
pub mod next;
pub mod ready;
pub mod run;
pub mod shortest;
pub mod technique;

mod before;
mod effect;
mod hidden;
mod layer;
mod part;

pub use before::film_to_level;
