//! Places of the work that stand out: what is missed, thin, heavy, dry, and what ran.

use crate::spraying::film::Film;
use crate::spraying::grid::number;
use crate::spraying::setup::Setup;
use crate::terms;

terms! {
    /// Why a place stands out.
    PlaceKind {
        /// The film runs there.
        Run = "place-run",
        /// As good as nothing lies there.
        Missed = "place-missed",
        /// Thinner than the window.
        Thin = "place-thin",
        /// Thicker than the window.
        Heavy = "place-heavy",
        /// Much of it landed dry.
        Dry = "place-dry",
    }
}

/// Smaller places are not told, mm²: a spot of 5 mm by 5 (an assumption, no source).
const LEAST_MM2: f64 = 25.0;
/// Most places of a kind that are told.
const MOST: usize = 5;
/// Under so much of the thinnest film that is asked for a place counts as missed (an assumption, no source).
pub const MISSED: f64 = 0.5;

/// Cells that stand out for one reason and touch each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// Why.
    pub kind: PlaceKind,
    /// Their middle, mm.
    pub x: f64,
    /// Their middle, mm.
    pub y: f64,
    /// Their area, mm².
    pub area: f64,
    /// Mean film there, µm wet as laid.
    pub film: f64,
}

/// The largest places of a kind.
pub(super) fn of_kind(kind: PlaceKind, film: &Film, work: &[bool], setup: &Setup) -> Vec<Place> {
    let window = setup.window();
    let sag = setup.sag();
    let dry_most = setup.task.limits.dry.get();
    let stands_out = |cell: usize| {
        let read = |values: &[f32]| values.get(cell).copied().map_or(0.0, f64::from);
        let laid = read(film.laid());
        match kind {
            PlaceKind::Run => sag.is_some_and(|sag| read(film.wettest()) >= sag),
            PlaceKind::Missed => window.is_some_and(|(from, _)| laid < MISSED * from),
            PlaceKind::Thin => window.is_some_and(|(from, _)| laid < from && laid >= MISSED * from),
            PlaceKind::Heavy => window.is_some_and(|(_, to)| laid > to),
            PlaceKind::Dry => laid > 0.0 && read(film.dry()) > dry_most * laid,
        }
    };
    let mut found = vec![false; work.len()];
    for (cell, found) in found.iter_mut().enumerate() {
        *found = work.get(cell) == Some(&true) && stands_out(cell);
    }
    let mut places = together(kind, film, found);
    places.retain(|place| place.area >= LEAST_MM2);
    places.sort_by(|a, b| b.area.total_cmp(&a.area));
    places.truncate(MOST);
    places
}

/// Cells that touch by their sides, taken together.
fn together(kind: PlaceKind, film: &Film, mut found: Vec<bool>) -> Vec<Place> {
    let grid = film.grid();
    let mut places = Vec::new();
    for first in 0..found.len() {
        let (mut count, mut laid, mut x, mut y) = (0_usize, 0.0, 0.0, 0.0);
        let mut open = vec![first];
        while let Some(cell) = open.pop() {
            let Some(here) = found.get_mut(cell).filter(|here| **here) else { continue };
            *here = false;
            let middle = grid.middle(cell);
            count += 1;
            laid += film.laid().get(cell).copied().map_or(0.0, f64::from);
            (x, y) = (x + middle.0, y + middle.1);
            let column = cell % grid.columns;
            open.extend((column > 0).then(|| cell - 1));
            open.extend((column + 1 < grid.columns).then(|| cell + 1));
            open.extend(cell.checked_sub(grid.columns));
            open.push(cell + grid.columns);
        }
        if count > 0 {
            let all = number(count);
            places.push(Place { kind, x: x / all, y: y / all, area: all * grid.area(), film: laid / all });
        }
    }
    places
}
