//! A shaded edge beside its target: the colour by zone, both sides beside each other, and bands along the edge.
//!
//! Colour by Beer-Lambert over the wood ([`crate::rules::optics::layer`]), differences by CIEDE2000 of its lightness.

use crate::content::ShadedEdge;
use crate::quantity::Millimetres;
use crate::rules::optics::difference::ciede2000;
use crate::rules::optics::lab::Lab;
use crate::rules::optics::layer::under;
use crate::rules::spray::fade::{Fade, depth};
use crate::rules::term::Term;
use crate::spraying::film::Film;
use crate::spraying::grid::{cells, number};
use crate::spraying::setup::Setup;
use crate::terms;

terms! {
    /// Zones of a shaded face, from the edge inwards.
    Zone {
        /// The outer third of the fade.
        Edge = "zone-edge",
        /// Its middle third.
        Middle = "zone-middle",
        /// Its inner third.
        Inner = "zone-inner",
        /// What is to stay clear.
        Centre = "zone-centre",
    }
}

/// Thirds of a fade.
const THIRDS: f64 = 3.0;
/// Parts that the edge is looked at in, once round.
const SECTORS: usize = 24;

/// A zone beside its target.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ZoneRead {
    /// Which.
    pub zone: Zone,
    /// Lightness L* there, mean over the cells.
    pub lightness: f64,
    /// Lightness that was wanted.
    pub wanted: f64,
    /// Difference of both, ΔE₀₀.
    pub difference: f64,
}

/// A shaded edge, measured.
#[derive(Debug, Clone, PartialEq)]
pub struct ShadeRead {
    /// The zones, from the edge inwards; those without a cell are left out.
    pub zones: Vec<ZoneRead>,
    /// Difference of the left fade to the right one, ΔE₀₀.
    pub sides: f64,
    /// Greatest difference of a part of the edge to the whole of it, ΔE₀₀.
    pub banding: f64,
}

/// Lightness of a film of transparent colour over wood, 0 to 100: film in µm wet as laid.
#[must_use]
pub fn lightness(film: f64, setup: &Setup, shade: ShadedEdge) -> f64 {
    under(shade.wood_reflectance, shade.coat_absorbance.get() * film / setup.coat()).lightness
}

/// Film that is wanted at a distance from the edge, µm wet as laid.
#[must_use]
pub fn wanted(from_edge: f64, setup: &Setup, shade: ShadedEdge) -> f64 {
    let fan = 2.0 * setup.held(setup.middle_distance(), 0.0).half_fan;
    let fade = Fade {
        width: shade.width_mm,
        coats: shade.coats,
        fan: Millimetres::saturating(fan),
        section: setup.section(),
    };
    shade.depth * setup.coat() * depth(fade, Millimetres::saturating(from_edge)).get()
}

/// How far from the edge the target reaches, mm: the last coat ends half a fan past its line.
#[must_use]
pub fn reach(setup: &Setup, shade: ShadedEdge) -> f64 {
    let soft = setup.held(setup.middle_distance(), 0.0).half_fan;
    shade.width_mm.get() * (1.0 - 1.0 / f64::from(shade.coats.max(1))) + soft
}

/// Difference of two greys of that lightness.
fn difference(one: f64, other: f64) -> f64 {
    let grey = |lightness: f64| Lab::new(lightness.clamp(0.0, Lab::LIGHTEST), 0.0, 0.0);
    match (grey(one), grey(other)) {
        (Ok(one), Ok(other)) => ciede2000(one, other),
        _ => 0.0,
    }
}

/// A mean that is being taken.
#[derive(Debug, Clone, Copy, Default)]
struct Mean {
    count: usize,
    sum: f64,
}

impl Mean {
    fn add(&mut self, value: f64) {
        self.count += 1;
        self.sum += value;
    }

    fn get(self) -> Option<f64> {
        (self.count > 0).then(|| self.sum / number(self.count))
    }
}

/// Measures the cells that are work.
pub(super) fn of(film: &Film, work: &[bool], setup: &Setup, shade: ShadedEdge) -> ShadeRead {
    let reach = reach(setup, shade);
    let grid = film.grid();
    let (least, most) = setup.outline.bounds();
    let centre_y = f64::midpoint(least.1, most.1);
    let mut zones = [(Mean::default(), Mean::default()); 4];
    let mut sides = [Mean::default(); 2];
    let mut sectors = [Mean::default(); SECTORS];
    let mut edge = Mean::default();
    for (cell, laid) in film.laid().iter().enumerate().filter(|(cell, _)| work.get(*cell) == Some(&true)) {
        let (x, y) = grid.middle(cell);
        let inwards = setup.outline.distance((x, y));
        let here = lightness(f64::from(*laid), setup, shade);
        let third = cells(inwards / reach * THIRDS).min(Zone::Centre as usize);
        if let Some((found, target)) = zones.get_mut(third) {
            found.add(here);
            target.add(lightness(wanted(inwards, setup, shade), setup, shade));
        }
        if third < Zone::Centre as usize {
            sides[usize::from(x > 0.0)].add(here);
        }
        if third == Zone::Edge as usize {
            edge.add(here);
            let turn = libm::atan2(y - centre_y, x) / core::f64::consts::TAU + 0.5;
            let sector = cells(turn * number(SECTORS)).min(SECTORS - 1);
            if let Some(mean) = sectors.get_mut(sector) {
                mean.add(here);
            }
        }
    }
    let read = |(zone, (found, target)): (&Zone, (Mean, Mean))| {
        let (lightness, wanted) = (found.get()?, target.get()?);
        Some(ZoneRead { zone: *zone, lightness, wanted, difference: difference(lightness, wanted) })
    };
    let [left, right] = sides.map(Mean::get);
    let apart = |mean: &Mean| Some(difference(mean.get()?, edge.get()?));
    ShadeRead {
        zones: Zone::ALL.iter().zip(zones).filter_map(read).collect(),
        sides: left.zip(right).map_or(0.0, |(left, right)| difference(left, right)),
        banding: sectors.iter().filter_map(apart).fold(0.0, f64::max),
    }
}
