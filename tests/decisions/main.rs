//! Each arm of the decision tables that no outside table covers. Where a published statement lies behind an arm its test
//! names it; the rest is common practice, no source, and only held still here.

#[path = "../support/mod.rs"]
mod support;

mod binding;
mod contamination;
mod drying;
mod finish_room;
mod hazard;
mod inspection;
mod ladder;
mod planning;
mod route;
mod vapour;
