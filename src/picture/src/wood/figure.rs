//! How the fibre runs on a face: streaks, ribbon, curl, silk.

use super::{Cut, Place};
use crate::noise::cloud;
use crate::number::smooth;

/// Width of a ribbon, years.
const RIBBON: f32 = 1.25;
/// A quartered face shows silk and flakes only where it is this near to the rays (cosine).
const SILK_FROM: f32 = 0.9;

impl Cut {
    /// Streaks along the grain: slow along it, so that they need not be known at every pixel.
    pub(crate) fn streak(&self, x: f32, y: f32) -> f32 {
        let (u, v) = self.seat(x, y);
        if self.is_end() {
            return 0.5 * cloud(self.seed(13), u / 12.0, v / 12.0);
        }
        0.36 * cloud(self.seed(11), u / 38.0, v / 1.1)
            + 0.33 * cloud(self.seed(12), u / 22.0, v / 0.45)
            + 0.42 * cloud(self.seed(13), u / 90.0, v / 5.0)
    }

    /// Single fibres; cut across they are dots.
    pub(crate) fn fine(&self, x: f32, y: f32) -> f32 {
        let (u, v) = self.seat(x, y);
        if self.is_end() {
            return 0.6 * cloud(self.seed(14), u / 0.3, v / 0.3);
        }
        0.6 * cloud(self.seed(14), u / 3.2, v / 0.28) + 0.36 * cloud(self.seed(15), u / 1.1, v / 0.25)
    }

    /// Warmer here, cooler there, about -1 to 1.
    pub(crate) fn drift(&self, x: f32, y: f32) -> f32 {
        cloud(self.seed(7), x / 55.0, y / 9.0)
    }

    /// Tilt of the fibre out of the face where its lean turns from one layer of growth to the next.
    pub(crate) fn ribbon(&self, place: &Place) -> f32 {
        let species = &self.species;
        if self.is_end() || species.ribbon <= 0.0 {
            return 0.0;
        }
        let layers = place.radius / (RIBBON * species.ring);
        species.ribbon
            * (cloud(self.seed(31), place.along / 160.0, layers)
                + 0.35 * cloud(self.seed(32), place.along / 60.0, 2.4 * layers))
    }

    /// Tilt of the fibre where it runs in waves.
    pub(crate) fn curl(&self, x: f32, y: f32) -> f32 {
        let curl = self.species.curl;
        if self.is_end() || curl <= 0.0 { 0.0 } else { curl * self.wave(self.seat(x, y).0, y) }
    }

    /// Cross silk: short bright strokes across the grain, in patches, on a face that lies along the rays.
    pub(crate) fn silk(&self, place: &Place) -> f32 {
        if self.species.silk <= 0.0 || place.crossing < SILK_FROM || self.is_end() {
            return 0.0;
        }
        let patch = smooth(-0.2, 1.1, cloud(self.seed(38), place.along / 30.0, place.radius / 22.0));
        let stroke = cloud(self.seed(39), place.along / 0.9, place.radius / 5.0)
            + 0.6 * cloud(self.seed(40), place.along / 2.3, place.radius / 9.0);
        self.species.silk * patch * stroke
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

    /// Slope of the fibre against the panel.
    pub(crate) fn slope(&self, x: f32, y: f32) -> f32 {
        let (u, v) = self.seat(x, y);
        0.02 * cloud(self.seed(42), u / 70.0, v / 50.0)
    }

    /// Unevenness of a stand of pores that are spread over the whole year.
    pub(crate) fn thick(&self, x: f32, y: f32) -> f32 {
        let (u, v) = self.seat(x, y);
        0.75 + 0.3 * cloud(self.seed(41), u / if self.is_end() { 6.0 } else { 30.0 }, v / 6.0)
    }
}
