//! Orders and timing against the published rows: every error found and its correction accepted, every variant accepted
//! by its condition and not without, every published schedule judged, and the facts of the trade.

#[path = "../support/mod.rs"]
mod support;

mod duties;
mod errors;
mod reader;
mod schedules;
mod trade;
mod variants;
mod work;
