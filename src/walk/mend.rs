//! Mending: what takes a fault out of the work, done as real operations.

use super::line::Line;
use super::start::Start;
use super::surface::Shown;
use crate::content::Content;
use crate::rules::fault::{Lies, steps};
use crate::rules::sequence::operation::{LAID, Operation};

/// The operations that mend a fault, in their order; `None` stands for stripping. None where no fault is known to follow.
#[must_use]
pub fn operations(shown: &Shown, lines: &[Line], start: &Start, content: &Content) -> Vec<Option<Operation>> {
    let fault = shown.defect.faults().first().and_then(|fault| content.fault(fault));
    let Some((fault, line)) = fault.zip(lines.get(shown.defect.made)) else { return Vec::new() };
    let mut since = lines.iter().skip(shown.defect.made).take_while(|line| line.turn <= shown.turn);
    let covered = since.any(|line| LAID.contains(&line.operation));
    steps(&fault.rework, Lies { made: line.operation, covered }, &start.job, &start.sheet)
}

/// Steps of mending that are still to be done, on the part that has most of them before it.
#[must_use]
pub fn left(shown: &Shown, lines: &[Line], start: &Start, content: &Content) -> Vec<Option<Operation>> {
    let all = operations(shown, lines, start, content);
    let done = shown.steps.iter().flatten().min().copied().unwrap_or_default();
    if shown.mended.is_some() { Vec::new() } else { all.into_iter().skip(done).collect() }
}

/// Notes a line of the ticket; gives whether it mended the fault with that.
pub(super) fn note(shown: &mut Shown, line: &Line, lines: &[Line], start: &Start, content: &Content) -> bool {
    let steps = operations(shown, lines, start, content);
    if shown.mended.is_some() || steps.is_empty() {
        return false;
    }
    for (part, done) in shown.steps.iter_mut().enumerate() {
        if let Some(done) = done
            && line.touches(part)
            && steps.get(*done) == Some(&Some(line.operation))
        {
            *done += 1;
        }
    }
    shown.steps.iter().flatten().all(|done| *done >= steps.len())
}

/// A part was stripped: nothing that was in it is left. Gives whether the fault is mended with that.
pub(super) fn strip(shown: &mut Shown, part: usize) -> bool {
    if shown.mended.is_some() {
        return false;
    }
    if let Some(done) = shown.steps.get_mut(part) {
        *done = None;
    }
    shown.steps.iter().all(Option::is_none)
}
