//! Mending: what takes a fault out of the work, done as real operations.

use super::line::Line;
use super::surface::Shown;
use crate::content::{Content, Mend, MendStep};
use crate::rules::sequence::operation::{LAID, Operation};

/// What mends a fault that showed; `None` where no fault is known to follow from it, or nothing is to be mended.
#[must_use]
pub fn mends<'a>(shown: &Shown, content: &'a Content) -> Option<&'a Mend> {
    content.mend(shown.defect.faults().first()?)
}

/// What is done to the wood itself: to do it again all that lies over it comes off.
const IN_WOOD: [Operation; 8] = [
    Operation::Sand,
    Operation::Damp,
    Operation::GlueCheck,
    Operation::Stain,
    Operation::SandBack,
    Operation::Fill,
    Operation::WipeFiller,
    Operation::SandFiller,
];

/// The operations that mend a fault, in their order; `None` stands for stripping.
#[must_use]
pub fn operations(shown: &Shown, lines: &[Line], content: &Content) -> Vec<Option<Operation>> {
    let steps = mends(shown, content).map(|mend| mend.steps.as_slice()).unwrap_or_default();
    let made = lines.get(shown.defect.made).map(|line| line.operation);
    if !steps.is_empty() && made.is_some_and(|made| IN_WOOD.contains(&made)) {
        let laid = lines.iter().skip(shown.defect.made).filter(|line| line.turn <= shown.turn);
        let is_bare = !laid.into_iter().any(|line| LAID.contains(&line.operation));
        if is_bare || steps.contains(&MendStep::Again) {
            return (!is_bare).then_some(None).into_iter().chain([made]).collect();
        }
    }
    let one = |step: &MendStep| match step {
        MendStep::Strip => Some(None),
        MendStep::Again => made.map(Some),
        MendStep::Do(operation) => Some(Some(*operation)),
    };
    steps.iter().filter_map(one).collect()
}

/// Steps of mending that are still to be done, on the part that has most of them before it.
#[must_use]
pub fn left(shown: &Shown, lines: &[Line], content: &Content) -> Vec<Option<Operation>> {
    let all = operations(shown, lines, content);
    let done = shown.steps.iter().flatten().min().copied().unwrap_or_default();
    if shown.mended.is_some() { Vec::new() } else { all.into_iter().skip(done).collect() }
}

/// Notes a line of the ticket; gives whether it mended the fault with that.
pub(super) fn note(shown: &mut Shown, line: &Line, lines: &[Line], content: &Content) -> bool {
    let steps = operations(shown, lines, content);
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
