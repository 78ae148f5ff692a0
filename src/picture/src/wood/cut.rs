//! A panel as a plane through a log: where the rings, streaks and figure run.

use super::{Clouds, Fibre, Growth, Ring, Species, earlywood, layer};
use crate::noise::{cloud, hash};
use crate::number::smooth;

/// Length of the noise that makes fat and lean years, in rings.
const YEARS: f32 = 2.7;

/// A panel's place in its log.
#[derive(Debug, Clone)]
pub(crate) struct Cut {
    seed: u32,
    growth: Growth,
    ring: f32,
    depth: f32,
    taper: f32,
    pith: f32,
    early_share: f32,
    contrast: f32,
    wander: f32,
    ribbon: f32,
    curl: f32,
    /// Where along the log and across it the panel was sawn.
    along: f32,
    across: f32,
}

impl Cut {
    pub(crate) fn new(species: &Species, seed: u32) -> Self {
        /// How far panels of one wood differ: the line nearest to the pith by so many rings, the depth by a share.
        const RINGS: f32 = 3.0;
        const DEPTH: f32 = 0.35;
        let share = |number: u32| {
            let high = u16::try_from(hash(layer(seed, 100), number) >> 16).unwrap_or(0);
            f32::from(high) / f32::from(u16::MAX)
        };
        Self {
            seed,
            growth: species.growth,
            ring: species.ring,
            depth: species.depth * (1.0 + DEPTH * (share(1) - 0.5)),
            taper: species.taper * if share(2) < 0.5 { 1.0 } else { -1.0 },
            pith: species.pith + RINGS * species.ring * (share(3) - 0.5),
            early_share: species.early_share,
            contrast: species.contrast,
            wander: species.wander,
            ribbon: species.ribbon,
            curl: species.curl,
            along: 4_000.0 * share(4),
            across: 400.0 * share(5),
        }
    }

    /// The seed of one of its layers.
    pub(crate) fn seed(&self, number: u32) -> u32 {
        layer(self.seed, number)
    }

    /// Where a place lies in the log.
    pub(crate) fn ring(&self, x: f32, y: f32) -> Ring {
        let (years, crossing) = self.years(x, y);
        let floor = libm::floorf(years);
        let own = cloud(self.seed(3), floor * 1.37 + 0.5, 0.5) * 0.3 + 0.5;
        Ring { year: years, phase: years - floor, own: own.clamp(0.0, 1.0), crossing }
    }

    fn years(&self, x: f32, y: f32) -> (f32, f32) {
        let along = x + self.along;
        let bend = 1.6 * cloud(self.seed(1), along / 70.0, (y + self.across) / 45.0)
            + 0.35 * cloud(self.seed(2), along / 23.0, (y + self.across) / 14.0);
        let lift = 2.0 * cloud(self.seed(4), along / 60.0, (y + self.across) / 60.0);
        let side = y - self.pith + self.wander * bend;
        // The pith never comes to the face: a board is not sawn there.
        let depth = (self.depth + self.taper * (x - 60.0) + self.wander * lift).max(0.4 * self.depth);
        let radius = libm::hypotf(side, depth);
        let years = radius / self.ring
            + 0.36 * cloud(self.seed(5), radius / (YEARS * self.ring), 0.5)
            + 0.012 * cloud(self.seed(6), along / 6.0, y / 1.2);
        (years, side.abs() / radius)
    }

    /// Share of earlywood.
    pub(crate) fn early(&self, ring: Ring) -> f32 {
        match self.growth {
            Growth::Conifer => 1.0 - ring.phase,
            _ => earlywood(ring.phase, self.early_share * (0.75 + 0.5 * ring.own)),
        }
    }

    /// Share of the line at the end of the year.
    pub(crate) fn late(&self, ring: &Ring) -> f32 {
        let reach = (1.0 - ring.phase).max(0.0);
        match self.growth {
            Growth::Conifer => {
                let share = 1.0 - self.early_share * (0.85 + 0.3 * ring.own);
                let slow = smooth(0.25, 1.0, ring.phase) * 0.30;
                let line = smooth(1.0 - share, 1.0 - 0.25 * share, ring.phase) * 0.70;
                self.contrast * (slow + line) * (0.75 + 0.5 * ring.own)
            }
            // Where the face only touches a ring its line would be a spot.
            _ => {
                const LINE: f32 = 0.05;
                let line = libm::expf(-(reach / LINE) * (reach / LINE));
                0.8 * line * smooth(0.05, 0.35, ring.crossing)
            }
        }
    }

    /// Streaks along the grain: they follow the rings where these bend.
    pub(crate) fn fibre(&self, x: f32, y: f32, ring: Ring) -> Fibre {
        let (along, v) = (x + self.along, y + self.across + 0.25 * self.ring * (ring.own - 0.5));
        let streak = 0.6 * cloud(self.seed(11), along / 38.0, v / 1.1)
            + 0.55 * cloud(self.seed(12), along / 22.0, v / 0.45)
            + 0.7 * cloud(self.seed(13), along / 90.0, v / 5.0);
        let fine =
            cloud(self.seed(14), along / 3.2, v / 0.28) + 0.6 * cloud(self.seed(15), along / 1.1, v / 0.25);
        Fibre { streak: 0.6 * streak, fine: 0.6 * fine }
    }

    /// Share of dark cloud or line.
    pub(crate) fn clouded(&self, clouds: Clouds, ring: &Ring, at: (f32, f32)) -> f32 {
        let along = at.0 + self.along;
        let field = cloud(self.seed(21), along / 120.0, 0.55 * ring.year)
            + 0.6 * cloud(self.seed(22), along / 45.0, 1.7 * ring.year);
        if clouds.lines {
            const LINE: f32 = 0.10;
            let gate = smooth(0.0, 0.5, cloud(self.seed(23), along / 80.0, ring.year * 0.8) + clouds.share);
            return 0.85 * libm::expf(-(field / LINE) * (field / LINE)) * gate;
        }
        let from = 1.2 - 2.4 * clouds.share;
        0.8 * smooth(from, from + 1.2, field)
    }

    /// Tilt of the fibre out of the face.
    pub(crate) fn tilt(&self, x: f32, y: f32) -> f32 {
        let along = x + self.along;
        let mut tilt = 0.0;
        if self.ribbon > 0.0 {
            let v = y + self.across;
            tilt += self.ribbon
                * (cloud(self.seed(31), along / 160.0, v / 8.5)
                    + 0.35 * cloud(self.seed(32), along / 60.0, v / 3.5));
        }
        if self.curl > 0.0 {
            tilt += self.curl * self.wave(along, y);
        }
        tilt
    }

    /// The waves of curled grain: bands across the face that start and stop.
    fn wave(&self, along: f32, y: f32) -> f32 {
        const LENGTH: f32 = 8.5;
        const LEAN: f32 = 0.16;
        let phase = core::f32::consts::TAU * (along + LEAN * y) / LENGTH
            + cloud(self.seed(33), along / 40.0, y / 22.0)
            + 0.55 * cloud(self.seed(34), along / 14.0, y / 40.0)
            + 0.35 * cloud(self.seed(35), along / 9.0, y / 6.0);
        let strength =
            cloud(self.seed(36), along / 34.0, y / 12.0) + 0.5 * cloud(self.seed(37), along / 9.0, y / 3.2);
        let strength = 0.35 + 0.65 * smooth(-0.8, 0.9, strength);
        1.15 * strength * (libm::sinf(phase) + 0.18 * libm::sinf(2.0 * phase))
    }

    /// How thickly pores of a kind stand at a place, 0 to 1.
    pub(crate) fn crowd(&self, stand: Growth, x: f32, y: f32) -> f32 {
        let ring = self.ring(x, y);
        match stand {
            Growth::Ring => 0.03 + 0.97 * earlywood(ring.phase, self.early_share * (0.75 + 0.5 * ring.own)),
            Growth::SemiRing => (1.0 - 1.05 * ring.phase).max(0.08),
            Growth::Diffuse => {
                0.75 + 0.3 * cloud(self.seed(41), (x + self.along) / 30.0, (y + self.across) / 6.0)
            }
            Growth::Conifer => 0.0,
        }
    }

    /// Slope of the fibre against the panel.
    pub(crate) fn slope(&self, x: f32, y: f32) -> f32 {
        0.02 * cloud(self.seed(42), (x + self.along) / 70.0, (y + self.across) / 50.0)
    }
}
