//! Job tickets: what is to be finished, of what wood, in which finish.

use crate::rules::term::{Binding, ColourPlan, Filler, Look, WorkClass};
use crate::rules::wood::Cut;
use serde::{Deserialize, Serialize};

/// One part of the work.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Part {
    /// Slug of the part: text `part.<slug>`.
    pub slug: String,
    /// Slug of its wood.
    pub wood: String,
    /// How it was cut.
    pub cut: Cut,
    /// Width across the grain in millimetres.
    pub width_mm: f64,
}

/// A job ticket. Text: `ticket.<slug>`, the instrument in words.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ticket {
    /// Slug of the ticket.
    pub slug: String,
    /// Number on the ticket.
    pub number: u32,
    /// Slug of the shop sheet it is finished on.
    pub sheet: String,
    /// Class of work.
    pub class: WorkClass,
    /// Look ordered.
    pub look: Look,
    /// Where the colour goes.
    pub colour: ColourPlan,
    /// Whether the edge is shaded.
    pub shaded: bool,
    /// Binding.
    pub binding: Binding,
    /// Filler used on open-grained parts.
    pub filler: Filler,
    /// Coats of clear ordered.
    pub clear_coats: u32,
    /// Days until delivery.
    pub days: u32,
    /// The parts, most visible first.
    pub parts: Vec<Part>,
}
