//! What came of a run: the film on the work, its places, where the paint went, how the strokes were made.

pub mod film;
pub mod places;
pub mod shade;

pub use film::FilmRead;
pub use places::{Place, PlaceKind};
pub use shade::ShadeRead;

use super::point::Path;
use super::setup::{FILM_A_ML, Setup};
use super::sprayer::Sprayer;
use super::strokes::{Stroke, strokes};

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
}

impl PaintRead {
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
    let (setup, film) = (sprayer.setup(), sprayer.film());
    let grid = film.grid();
    let work = grid.work(&setup.outline);
    let read = film::of(film, &work, setup);
    let paint = sprayer.paint();
    let on_work = read.laid * grid.area() / FILM_A_ML;
    let span = path.points().first().zip(path.points().last());
    Reading {
        places: places::find(film, &work, setup),
        shade: setup.task.shade.map(|shade| shade::of(film, &work, setup, shade)),
        film: read,
        paint: PaintRead {
            sprayed: paint.sprayed,
            on_work,
            beside: paint.landed - on_work,
            lost: paint.lost,
        },
        strokes: strokes(path, setup),
        time: span.map_or(0.0, |(first, last)| last.t - first.t),
    }
}
