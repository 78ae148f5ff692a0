//! Where the faults that came to light are seen on the work, and what each looks like near.

use super::look::{looks, part_of, woods};
use super::story::Walk;
use crate::content::Content;
use crate::picture::instrument::{Part, PartKind, Point, View};
use crate::picture::{Fault, Recipe, Severity};

/// A fault at its place on the work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mark {
    /// Its place among all that showed.
    pub shown: usize,
    /// The part of the ticket that it is on.
    pub part: usize,
    /// The view that shows it, and the part of the outline.
    pub view: usize,
    /// The part of the outline.
    pub kind: PartKind,
    /// Where, mm of that view.
    pub at: Point,
    /// Where, as a share of the part from its left and from its top, 0 to 1.
    pub share: Point,
    /// How it is drawn; `None`: it cannot be.
    pub fault: Option<Fault>,
}

/// The faults that are in the open and not mended, once for each part that they are on.
#[must_use]
pub fn marks(walk: &Walk, views: &[View]) -> Vec<Mark> {
    let open = walk.shown().iter().enumerate().filter(|(_, shown)| shown.mended.is_none());
    open.flat_map(|(nth, shown)| {
        let faults = shown.defect.faults();
        let fault = faults.iter().find_map(|slug| Fault::ALL.iter().find(|one| one.slug() == *slug)).copied();
        let on = walk.lines().get(shown.defect.made).map(|line| line.parts.clone()).unwrap_or_default();
        on.into_iter().filter_map(move |part| mark(walk, views, nth, part, fault))
    })
    .collect()
}

fn mark(walk: &Walk, views: &[View], shown: usize, part: usize, fault: Option<Fault>) -> Option<Mark> {
    let is = |(_, of): &(usize, &Part)| part_of(walk.start(), of.kind) == Some(part);
    // The part that a view is there for shows most of it.
    let mut first = views.iter().enumerate().filter_map(|(nth, view)| Some((nth, view.parts.first()?)));
    let mut all = views.iter().enumerate().flat_map(|(nth, view)| view.parts.iter().map(move |of| (nth, of)));
    let (view, of) = first.find(is).or_else(|| all.find(is))?;
    let seed = u32::try_from(shown).map_or(walk.seed(), |nth| walk.seed().wrapping_add(nth));
    let at = fault.map_or_else(|| of.anchor(), |fault| of.fault_at(fault, seed));
    let ((left, top), (right, bottom)) = bounds(of);
    let share = ((at.0 - left) / (right - left).max(1.0), (at.1 - top) / (bottom - top).max(1.0));
    Some(Mark { shown, part, view, kind: of.kind, at, share, fault })
}

fn bounds(part: &Part) -> (Point, Point) {
    part.paths.iter().map(crate::picture::instrument::Path::bounds).fold(
        ((f32::INFINITY, f32::INFINITY), (f32::NEG_INFINITY, f32::NEG_INFINITY)),
        |(least, most), (from, to)| {
            ((least.0.min(from.0), least.1.min(from.1)), (most.0.max(to.0), most.1.max(to.1)))
        },
    )
}

/// The panel that shows a fault near, on the wood and the film of its part as they now are; `None`: it cannot be drawn.
#[must_use]
pub fn near(walk: &Walk, mark: &Mark, content: &Content) -> Option<Recipe> {
    let look = looks(walk).into_iter().find(|look| look.part == mark.kind)?;
    let wood = woods(walk.start(), walk.seed(), content).into_iter().find(|wood| wood.part == mark.kind)?;
    Some(look.near(&wood, Some((mark.fault?, Severity::Plain))))
}
