//! A turn: one decision, when it was carried out, and what came of it.

use super::decision::Decision;
use super::lapse::Lapse;
use crate::quantity::MoistureContent;
use crate::rules::drying::waits::DryTest;
use crate::rules::sequence::plan::Climate;

/// One decision carried out.
#[derive(Debug, Clone, PartialEq)]
pub struct Turn {
    /// The decision.
    pub decision: Decision,
    /// When it began, in hours after the first midnight.
    pub begun: f64,
    /// When it ended.
    pub ended: f64,
    /// The air of the room when it ended.
    pub air: Option<Climate>,
    /// Lines of the ticket that it wrote: from, and up to before.
    pub lines: (usize, usize),
    /// What came to light in it, by place among all that showed.
    pub shown: Vec<usize>,
    /// What was mended in it, by place among all that showed.
    pub mended: Vec<usize>,
    /// Duties left undone.
    pub lapses: Vec<Lapse>,
    /// What was read.
    pub read: Vec<Read>,
}

/// Something that was read or tried.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Read {
    /// Air, humidity and surface of the work.
    Air(Climate),
    /// The filter gauge: past the mark, or under it.
    Gauge {
        /// Past the mark.
        past: bool,
    },
    /// What the moisture meter reads; `None`: it lies in the band of the sheet.
    Meter {
        /// The part.
        part: usize,
        /// Moisture content.
        moisture: Option<MoistureContent>,
    },
    /// A test of the film said so.
    Test(DryTest),
}
