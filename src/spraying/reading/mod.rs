//! What came of a run: the film on the work, its places, where the paint went, how the strokes were made.

pub mod film;
pub mod places;
pub mod shade;
pub mod target;

pub use film::FilmRead;
pub use places::{Place, PlaceKind};
pub use shade::ShadeRead;

use super::point::Path;
use super::setup::{FILM_A_ML, Setup};
use super::sprayer::Sprayer;
use super::strokes::{Stroke, strokes};
use crate::rules::term::Term;

/// A run, measured.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// The film.
    pub film: FilmRead,
    /// Places that stand out, by kind and the largest first.
    pub places: Vec<Place>,
    /// A shaded edge beside its target.
    pub shade: Option<ShadeRead>,
    /// Where the paint went.
    pub paint: PaintRead,
    /// The strokes.
    pub strokes: Vec<Stroke>,
    /// Time from the first point to the last, s.
    pub time: f64,
}

/// Where the paint went, mL.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PaintRead {
    /// Left the gun.
    pub sprayed: f64,
    /// Lies on the work.
    pub on_work: f64,
    /// Landed beside the work.
    pub beside: f64,
    /// Never landed on the face.
    pub lost: f64,
    /// Of what landed beside a repaired place, what lies farther out than its film may fade; 0 where nothing is repaired.
    pub past: f64,
}

impl PaintRead {
    /// Share of what landed that lies past where the film of a repaired place may fade out; 0 where nothing landed.
    #[must_use]
    pub fn strayed(&self) -> f64 {
        let landed = self.on_work + self.beside;
        if landed > 0.0 { self.past / landed } else { 0.0 }
    }

    /// Share of what left the gun that is not on the work; 0 where nothing was sprayed.
    #[must_use]
    pub fn wasted(&self) -> f64 {
        if self.sprayed > 0.0 { 1.0 - self.on_work / self.sprayed } else { 0.0 }
    }
}

/// Sprays a path on the grid that holds the work and half a fan beside it, and measures what came of it.
#[must_use]
pub fn read(setup: &Setup, path: &Path) -> Reading {
    measure(&Sprayer::spray(setup, setup.grid(), path), path)
}

/// Measures what a path left on a face.
#[must_use]
pub fn measure(sprayer: &Sprayer, path: &Path) -> Reading {
    let mut measuring = Measuring::of(sprayer);
    while measuring.go_on() {}
    measuring.done(path)
}

/// A face that is measured in turns, so that a screen can go on meanwhile.
#[derive(Debug)]
pub struct Measuring<'r> {
    sprayer: &'r Sprayer,
    work: Vec<bool>,
    shade: Option<shade::Measuring>,
    kinds: core::slice::Iter<'r, PlaceKind>,
    places: Vec<Place>,
}

impl<'r> Measuring<'r> {
    /// Nothing is measured yet.
    #[must_use]
    pub fn of(sprayer: &'r Sprayer) -> Self {
        let setup = sprayer.setup();
        let work = sprayer.film().grid().work(&setup.outline);
        let shade = setup.task.shade.map(|shade| shade::Measuring::of(setup, shade));
        Self { sprayer, work, shade, kinds: PlaceKind::ALL.iter(), places: Vec::new() }
    }

    /// Measures a row of a shaded edge, or places of a kind; whether there was any left.
    pub fn go_on(&mut self) -> bool {
        let (setup, film) = (self.sprayer.setup(), self.sprayer.film());
        if self.shade.as_mut().is_some_and(|shade| shade.row(film, &self.work, setup)) {
            return true;
        }
        let kind = self.kinds.next();
        self.places.extend(kind.into_iter().flat_map(|kind| places::of_kind(*kind, film, &self.work, setup)));
        kind.is_some()
    }

    /// What came of the run along a path.
    #[must_use]
    pub fn done(self, path: &Path) -> Reading {
        let (setup, film, paint) = (self.sprayer.setup(), self.sprayer.film(), self.sprayer.paint());
        let read = film::of(film, &self.work, setup);
        let on_work = read.laid * film.grid().area() / FILM_A_ML;
        let span = path.points().first().zip(path.points().last());
        Reading {
            places: self.places,
            shade: self.shade.map(shade::Measuring::done),
            film: read,
            paint: PaintRead {
                sprayed: paint.sprayed,
                on_work,
                beside: paint.landed - on_work,
                lost: paint.lost,
                past: past(self.sprayer, &self.work, paint.landed - on_work),
            },
            strokes: strokes(path, setup),
            time: span.map_or(0.0, |(first, last)| last.t - first.t),
        }
    }
}

/// What of the mL beside a repaired place lies past where its film may fade out.
fn past(sprayer: &Sprayer, work: &[bool], beside: f64) -> f64 {
    let (setup, film) = (sprayer.setup(), sprayer.film());
    let Some(repair) = setup.task.repair else { return 0.0 };
    let grid = film.grid();
    let fades = |cell: usize| setup.outline.distance(grid.middle(cell)) <= repair.fades_mm.get();
    let around = film.laid().iter().zip(work).enumerate();
    let around = around.filter(|(cell, (laid, work))| !**work && **laid > 0.0 && fades(*cell));
    let faded: f64 = around.map(|(_, (laid, _))| f64::from(*laid)).sum();
    (beside - faded * grid.area() / FILM_A_ML).max(0.0)
}
