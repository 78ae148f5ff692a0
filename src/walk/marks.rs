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

/// How far apart marks lie, and from the middle of what they are on, mm, where there is room, and the places that are tried
/// for one: our own choice, so that rings round them can be told apart.
const APART_MM: f32 = 45.0;
const PLACES: u32 = 6;
/// Between the numbers by which the places of one fault are found: more than the faults of a walk.
const BETWEEN: u32 = 1000;

/// The faults that are in the open and not mended, once for each part that they are on.
#[must_use]
pub fn marks(walk: &Walk, views: &[View]) -> Vec<Mark> {
    let mut all: Vec<Mark> = Vec::new();
    for (nth, shown) in walk.shown().iter().enumerate() {
        let faults = shown.defect.faults();
        let fault = faults.iter().find_map(|slug| Fault::ALL.iter().find(|one| one.slug() == *slug)).copied();
        let on = walk.lines().get(shown.defect.made).map(|line| line.parts.clone()).unwrap_or_default();
        let found: Vec<Mark> =
            on.into_iter().filter_map(|part| mark(walk, views, &all, nth, part, fault)).collect();
        all.extend(found);
    }
    // A mark keeps its place when another is mended.
    all.retain(|mark| walk.shown().get(mark.shown).is_some_and(|shown| shown.mended.is_none()));
    all
}

/// A fault on a part, where it may be apart from those before it.
fn mark(
    walk: &Walk,
    views: &[View],
    before: &[Mark],
    shown: usize,
    part: usize,
    fault: Option<Fault>,
) -> Option<Mark> {
    let is = |(_, of): &(usize, &Part)| part_of(walk.start(), of.kind) == Some(part);
    // The part that a view is there for shows most of it.
    let mut first = views.iter().enumerate().filter_map(|(nth, view)| Some((nth, view.parts.first()?)));
    let mut all = views.iter().enumerate().flat_map(|(nth, view)| view.parts.iter().map(move |of| (nth, of)));
    let (view, of) = first.find(is).or_else(|| all.find(is))?;
    let seed = u32::try_from(shown).map_or(walk.seed(), |nth| walk.seed().wrapping_add(nth));
    let taken: Vec<Point> = before.iter().filter(|mark| mark.view == view).map(|mark| mark.at).collect();
    let at = fault.map_or_else(|| of.anchor(), |fault| place(of, fault, seed, &taken));
    let ((left, top), (right, bottom)) = bounds(of);
    let share = ((at.0 - left) / (right - left).max(1.0), (at.1 - top) / (bottom - top).max(1.0));
    Some(Mark { shown, part, view, kind: of.kind, at, share, fault })
}

/// Where a fault lies on a part: the first place that is apart from those that are taken and from its middle, else the one
/// that lies farthest from them.
fn place(of: &Part, fault: Fault, seed: u32, taken: &[Point]) -> Point {
    let far = |one: Point, other: Point| libm::hypotf(one.0 - other.0, one.1 - other.1);
    let room_at =
        |at: Point| taken.iter().chain([&of.anchor()]).map(|one| far(*one, at)).fold(f32::INFINITY, f32::min);
    let mut best = (f32::NEG_INFINITY, of.anchor());
    for nth in 0..PLACES {
        let at = of.fault_at(fault, seed.wrapping_add(nth.wrapping_mul(BETWEEN)));
        let room = room_at(at);
        if room > best.0 {
            best = (room, at);
        }
        if best.0 >= APART_MM {
            break;
        }
    }
    best.1
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
