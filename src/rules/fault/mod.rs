//! Faults: which there are, what is seen of them, which one it is, which test tells, why it came and what mends it.

mod alike;
mod belief;
mod cause;
mod known;
mod observe;
mod probe;
mod remedy;
mod rework;
mod telling;
mod workup;

pub use alike::{Pair, Reading, deciding_probe, read, separates};
pub use belief::{Belief, Certainty, FITS_LEAST, SURE_LEAST, belief, diagnose};
pub use cause::{CAUSE_FALLS_BY, can_cause, first_cause, prevented_by, ranked_causes};
pub use known::{
    Cure, Fault, Light, Met, Need, Rework, Sign, Surface, found_before_clear, light, made_at, occurs,
};
pub use observe::{MISREAD, Observation, Seen, agrees, likelihood, speaks_of};
pub use probe::{Effort, Probe};
pub use remedy::{Later, Remedy, remedy, shows_later};
pub use rework::{Lies, Redo, STRIP_H, costs, hours, steps};
pub use telling::{Branch, Telling, entropy, ranked_probes, telling};
pub use workup::{Case, Test};
