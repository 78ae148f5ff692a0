//! Spraying: the fan, what lands of it, the film of a pass, how evenly passes overlap, their ends, the angle and distance
//! of the gun, and the fade of a shaded edge.
//!
//! Overlap counts on the full width of the fan, where the film reaches nothing; the stripe that the eye sees is narrower
//! ([`fan::seen_overlap`]). Lengths along the work, not along the fan's cone.

pub mod angle;
pub mod crossing;
pub mod distance;
pub mod dry_spray;
pub mod fade;
pub mod fan;
pub mod flight;
pub mod overlap;
pub mod pass_film;
pub mod pattern;
pub mod trigger;
