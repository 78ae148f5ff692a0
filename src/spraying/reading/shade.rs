//! A shaded edge beside its target: the colour by zone, both sides beside each other, and bands along the edge.
//!
//! Differences by CIEDE2000 of the lightness.

use super::target::{lightness, reach, wanted};
use crate::content::ShadedEdge;
use crate::rules::optics::difference::ciede2000;
use crate::rules::optics::lab::Lab;
use crate::rules::term::Term;
use crate::spraying::film::Film;
use crate::spraying::grid::{cells, number};
use crate::spraying::outline::Place;
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
/// Rings in a third of a fade, and in all of them and as much of the centre as a third.
const RINGS_A_THIRD: usize = 6;
const RINGS: usize = 4 * RINGS_A_THIRD;

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

/// Places equally far from the edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ring {
    /// How far, mm.
    pub inwards: f64,
    /// Lightness L* on the left side, mean over the cells; `None` without a cell.
    pub left: Option<f64>,
    /// Lightness on the right side.
    pub right: Option<f64>,
    /// Lightness that was wanted.
    pub wanted: f64,
}

/// A shaded edge, measured.
#[derive(Debug, Clone, PartialEq)]
pub struct ShadeRead {
    /// The zones, from the edge inwards; those without a cell are left out.
    pub zones: Vec<ZoneRead>,
    /// The fade from the edge inwards; rings without a cell are left out.
    pub rings: Vec<Ring>,
    /// Lightness of the parts of the edge, once round as it is seen, from the top to the right; `None` without a cell.
    pub round: Vec<Option<f64>>,
    /// Lightness of the whole edge.
    pub edge: f64,
    /// Difference of the left fade to the right one, ΔE₀₀.
    pub sides: f64,
    /// Greatest difference of a part of the edge to the whole of it, ΔE₀₀.
    pub banding: f64,
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

/// A shaded edge that is measured row by row.
#[derive(Debug)]
pub struct Measuring {
    shade: ShadedEdge,
    /// How far from the edge the target reaches, and how far down its middle lies, mm.
    reach: f64,
    centre_y: f64,
    /// The next row.
    next: usize,
    /// What was found, and what was wanted.
    zones: [(Mean, Mean); 4],
    /// What was found left and right, and what was wanted.
    rings: [([Mean; 2], Mean); RINGS],
    sides: [Mean; 2],
    sectors: [Mean; SECTORS],
    edge: Mean,
}

impl Measuring {
    /// Nothing is measured yet.
    pub(super) fn of(setup: &Setup, shade: ShadedEdge) -> Self {
        let (least, most) = setup.outline.bounds();
        Self {
            shade,
            reach: reach(setup, shade),
            centre_y: f64::midpoint(least.1, most.1),
            next: 0,
            zones: Default::default(),
            rings: Default::default(),
            sides: Default::default(),
            sectors: Default::default(),
            edge: Mean::default(),
        }
    }

    /// Measures the cells of the next row that are work; whether there was one.
    pub(super) fn row(&mut self, film: &Film, work: &[bool], setup: &Setup) -> bool {
        let columns = film.grid().columns;
        let cells = self.next * columns..(self.next + 1) * columns;
        self.next += 1;
        let Some(laid) = film.laid().get(cells.clone()) else { return false };
        for (cell, laid) in cells.zip(laid).filter(|(cell, _)| work.get(*cell) == Some(&true)) {
            self.cell(film.grid().middle(cell), f64::from(*laid), setup);
        }
        true
    }

    fn cell(&mut self, (x, y): Place, laid: f64, setup: &Setup) {
        let inwards = setup.outline.distance((x, y));
        let here = lightness(laid, setup, self.shade);
        let target = lightness(wanted(inwards, setup, self.shade), setup, self.shade);
        let side = usize::from(x > 0.0);
        let thirds = inwards / self.reach * THIRDS;
        let third = cells(thirds).min(Zone::Centre as usize);
        if let Some((found, wanted)) = self.zones.get_mut(third) {
            found.add(here);
            wanted.add(target);
        }
        if let Some((found, wanted)) = self.rings.get_mut(cells(thirds * number(RINGS_A_THIRD))) {
            found.get_mut(side).into_iter().for_each(|found| found.add(here));
            wanted.add(target);
        }
        if third < Zone::Centre as usize {
            self.sides.get_mut(side).into_iter().for_each(|side| side.add(here));
        }
        if third == Zone::Edge as usize {
            self.edge.add(here);
            // Once round from the top to the right.
            let turn = libm::atan2(x, self.centre_y - y) / core::f64::consts::TAU;
            let sector = cells((turn - libm::floor(turn)) * number(SECTORS)).min(SECTORS - 1);
            self.sectors.get_mut(sector).into_iter().for_each(|sector| sector.add(here));
        }
    }

    /// What came of it.
    pub(super) fn done(self) -> ShadeRead {
        let zone = |(zone, (found, target)): (&Zone, (Mean, Mean))| {
            let (lightness, wanted) = (found.get()?, target.get()?);
            Some(ZoneRead { zone: *zone, lightness, wanted, difference: difference(lightness, wanted) })
        };
        let ring = |(nth, ([left, right], wanted)): (usize, ([Mean; 2], Mean))| {
            let inwards = (number(nth) + 0.5) * self.reach / (THIRDS * number(RINGS_A_THIRD));
            Some(Ring { inwards, left: left.get(), right: right.get(), wanted: wanted.get()? })
        };
        let edge = self.edge.get();
        let [left, right] = self.sides.map(Mean::get);
        let apart = |mean: &Mean| Some(difference(mean.get()?, edge?));
        ShadeRead {
            zones: Zone::ALL.iter().zip(self.zones).filter_map(zone).collect(),
            rings: self.rings.into_iter().enumerate().filter_map(ring).collect(),
            round: self.sectors.into_iter().map(Mean::get).collect(),
            edge: edge.unwrap_or(0.0),
            sides: left.zip(right).map_or(0.0, |(left, right)| difference(left, right)),
            banding: self.sectors.iter().filter_map(apart).fold(0.0, f64::max),
        }
    }
}
