//! A panel as a plane through a log: where it lies, and how the fibre runs there.

use super::{Face, Species, layer};
use crate::noise::{cloud, hash};
use crate::number::hypotenuse;

/// Distance of a quartered or rift-sawn board from the middle of its log, and of an end's corner, mm.
const FAR: f32 = 260.0;
const FAR_END: f32 = 120.0;
/// How far a quartered face is from the plane through the middle of the log, and how it leans away along it.
const OFF_QUARTER: f32 = 6.0;
const LEAN_QUARTER: f32 = 0.05;
/// And how it leans away across it: flakes then cross the grain at a slant.
const SLANT_QUARTER: f32 = 0.024;
/// Boards of one wood differ in depth by this share, and in where the arches stand by this share of the panel.
const DEPTH_SPREAD: f32 = 0.35;
const ARCH: (f32, f32) = (0.2, 0.8);
/// The middle of the log never comes to the face: it stays this share of the depth away.
const LEAST_DEPTH: f32 = 0.4;
/// A panel is this long, about: its depth is as given in its middle.
const MIDDLE: f32 = 60.0;
/// How a log is not straight, mm.
const BEND: f32 = 1.6;
const BEND_SHORT: f32 = 0.35;
const LIFT: f32 = 2.0;
const LIFT_SIZE: f32 = 60.0;
const LIFT_QUARTER: f32 = 150.0;
/// On a flat-sawn face less than it would take to turn the taper back, mm for each unit of it: arches stay open, one in the
/// other, and eyes and saddles are rare.
const LIFT_FLAT: f32 = 7.0;
/// Across the log it is rounder than along it straight; a board that was sawn for its straight lines has straighter ones.
const END_WANDER: f32 = 0.5;
const SAWN_STRAIGHT: f32 = 0.55;
/// Fat and lean years, in years: over many, and from one to the next.
const SLOW_YEARS: f32 = 7.0;
const SLOW: f32 = 1.2;
const NEXT_YEARS: f32 = 1.9;
const NEXT: f32 = 0.35;
/// Single fibres end a little before or behind the ring, years.
const FRAYED: f32 = 0.006;

/// A panel's place in its log.
#[derive(Debug, Clone)]
pub(crate) struct Cut {
    seed: u32,
    face: Face,
    pub(super) species: Species,
    /// Of the panel's corner: along the log, along the ring, and out from its middle.
    along: f32,
    side: f32,
    depth: f32,
    /// How the depth changes along the panel, and across it.
    taper: f32,
    slant: f32,
}

/// How the log is not straight at a place, mm, and how the fibres end before or behind the ring, years.
#[derive(Debug, Clone, Copy)]
struct Sway {
    bend: f32,
    lift: f32,
    fray: f32,
}

/// A place in the log.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Place {
    /// Along the log, mm.
    pub(crate) along: f32,
    /// From the middle, mm.
    pub(crate) radius: f32,
    /// Along the ring, mm.
    pub(crate) round: f32,
    /// Years from the middle.
    pub(crate) years: f32,
    /// How squarely the face cuts the rings, 0 where it only touches them, 1 where it stands on them.
    pub(crate) crossing: f32,
    /// How many years, and how many mm along the ring, one mm on the face is.
    pub(crate) pace: f32,
    pub(crate) pace_round: f32,
}

impl Cut {
    pub(crate) fn new(species: &Species, face: Face, seed: u32, tall: f32) -> Self {
        let share = |number: u32| {
            let high = u16::try_from(hash(layer(seed, 100), number) >> 16).unwrap_or(0);
            f32::from(high) / f32::from(u16::MAX)
        };
        let way = if share(2) < 0.5 { 1.0 } else { -1.0 };
        let spread = 1.0 + DEPTH_SPREAD * (share(1) - 0.5);
        let half = core::f32::consts::FRAC_1_SQRT_2;
        let far = FAR * spread;
        let (side, depth, taper) = match face {
            Face::Flat => {
                let arch = ARCH.0 + (ARCH.1 - ARCH.0) * share(3);
                (-arch * tall, species.depth * spread, way * species.taper)
            }
            Face::Rift => (far * half, far * half, 0.0),
            Face::Quartered => (far, way * OFF_QUARTER * spread, LEAN_QUARTER * way),
            Face::End => (-MIDDLE * (0.5 + share(3)), FAR_END * spread, 0.0),
        };
        let slant = if share(6) < 0.5 { SLANT_QUARTER } else { -SLANT_QUARTER };
        Self { seed, face, species: species.clone(), along: 4_000.0 * share(4), side, depth, taper, slant }
    }

    /// The seed of one of its layers.
    pub(crate) fn seed(&self, number: u32) -> u32 {
        layer(self.seed, number)
    }

    pub(crate) const fn is_end(&self) -> bool {
        matches!(self.face, Face::End)
    }

    /// How the log wanders at a place of the panel: slow along the grain.
    fn sway(&self, x: f32, y: f32) -> Sway {
        // A tree leans and swells along its height more than round it.
        let round = if self.face == Face::Quartered { LIFT_QUARTER } else { LIFT_SIZE };
        let lift = if self.face == Face::Flat { LIFT_FLAT * self.species.taper } else { LIFT };
        let (u, v) = self.seat(x, y);
        Sway {
            bend: BEND * cloud(self.seed(1), u / 70.0, v / 45.0)
                + BEND_SHORT * cloud(self.seed(2), u / 23.0, v / 14.0),
            lift: lift * cloud(self.seed(4), u / LIFT_SIZE, v / round),
            fray: FRAYED * cloud(self.seed(6), u / 6.0, v / 1.2),
        }
    }

    /// Where a place of the panel is among the bends of the log: on an end they are dents in the rings.
    pub(super) fn seat(&self, x: f32, y: f32) -> (f32, f32) {
        if self.is_end() { (self.side + x, self.depth + y) } else { (x + self.along, y + self.side) }
    }

    /// Where a place of the panel lies in the log.
    pub(crate) fn place(&self, x: f32, y: f32) -> Place {
        let species = &self.species;
        let sway = self.sway(x, y);
        let (along, level) =
            if self.is_end() { (self.along, self.depth + y) } else { (x + self.along, self.depth) };
        let straight = match self.face {
            Face::Flat => 1.0,
            Face::Rift | Face::Quartered => SAWN_STRAIGHT,
            Face::End => END_WANDER,
        };
        let wander = straight * species.wander;
        let side = self.side + if self.is_end() { x } else { y } + wander * sway.bend;
        let depth = level + self.taper * (x - MIDDLE) + wander * sway.lift;
        let depth = match self.face {
            Face::Flat => soft_least(depth, LEAST_DEPTH * self.depth),
            Face::Quartered => depth + self.slant * y,
            Face::Rift | Face::End => depth,
        };
        let radius = hypotenuse(side, depth).max(1.0);
        let rings = radius / species.ring;
        let (across, round) = (side.abs() / radius, depth.abs() / radius);
        let years = rings
            + species.uneven
                * (SLOW * cloud(self.seed(5), rings / SLOW_YEARS, 0.5)
                    + NEXT * cloud(self.seed(8), rings / NEXT_YEARS, 0.5))
            + sway.fray * if self.is_end() { 1.0 } else { across };
        let (pace, pace_round) = if self.is_end() {
            (1.0, 1.0)
        } else {
            (hypotenuse(across, self.taper * round), hypotenuse(round, self.taper * across))
        };
        Place {
            along,
            radius,
            // The taper of a flat-sawn board is stretched for a small panel; its rays run straight all the same.
            round: libm::atan2f(if self.face == Face::Flat { level } else { depth }, side)
                * self.middle_radius(),
            years,
            crossing: if self.is_end() { 1.0 } else { across },
            pace: pace / species.ring,
            pace_round,
        }
    }

    /// Distance of the middle of the panel from that of the log, about.
    fn middle_radius(&self) -> f32 {
        hypotenuse(self.side, self.depth)
    }
}

/// The greater of two lengths, without a kink where they are equal.
fn soft_least(value: f32, least: f32) -> f32 {
    let off = value - least;
    least + 0.5 * (off + (off * off + 0.25 * least * least).sqrt())
}
