//! The film on the work in figures.

use crate::spraying::film::Film;
use crate::spraying::grid::number;
use crate::spraying::setup::Setup;

/// Film on the work, µm of wet film as laid, and shares of its area.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FilmRead {
    /// All of it, summed over the cells, µm.
    pub laid: f64,
    /// Mean.
    pub mean: f64,
    /// Coefficient of variation: standard deviation over mean; 0 for a bare face.
    pub cv: f64,
    /// Thinnest place.
    pub least: f64,
    /// Thickest place.
    pub most: f64,
    /// Mean of what it leaves when it has dried, µm.
    pub dried: f64,
    /// Wettest that a place ever was.
    pub wettest: f64,
    /// Share of the area within the window; 1 where none is asked for.
    pub in_window: f64,
    /// Share thinner than the window.
    pub thin: f64,
    /// Share thicker than the window.
    pub heavy: f64,
    /// Share that ran.
    pub ran: f64,
    /// Share of the film that landed dry.
    pub dry: f64,
}

/// Measures the cells that are work.
pub(super) fn of(film: &Film, work: &[bool], setup: &Setup) -> FilmRead {
    let window = setup.window().unwrap_or((0.0, f64::INFINITY));
    let sag = setup.sag().unwrap_or(f64::INFINITY);
    let (mut count, mut laid, mut square, mut dry) = (0_usize, 0.0, 0.0, 0.0);
    let (mut least, mut most, mut wettest) = (f64::INFINITY, 0.0_f64, 0.0_f64);
    let (mut thin, mut heavy, mut ran) = (0_usize, 0_usize, 0_usize);
    let cells = film.laid().iter().zip(film.dry()).zip(film.wettest()).zip(work);
    for (((here, landed_dry), wet), _) in cells.filter(|(_, work)| **work) {
        let (here, wet) = (f64::from(*here), f64::from(*wet));
        count += 1;
        laid += here;
        square += here * here;
        dry += f64::from(*landed_dry);
        (least, most, wettest) = (least.min(here), most.max(here), wettest.max(wet));
        thin += usize::from(here < window.0);
        heavy += usize::from(here > window.1);
        ran += usize::from(wet >= sag);
    }
    let all = number(count.max(1));
    let mean = laid / all;
    let share = |count: usize| number(count) / all;
    let spread = (square / all - mean * mean).max(0.0).sqrt();
    FilmRead {
        laid,
        mean,
        cv: if mean > 0.0 { spread / mean } else { 0.0 },
        least: if count > 0 { least } else { 0.0 },
        most,
        dried: setup.dried(mean),
        wettest,
        in_window: 1.0 - share(thin) - share(heavy),
        thin: share(thin),
        heavy: share(heavy),
        ran: share(ran),
        dry: if laid > 0.0 { dry / laid } else { 0.0 },
    }
}
