//! The spot that a gun held still lays, and what it lays while it moves along a straight line.
//!
//! The spot is elliptical with film k (1 - r²)ⁿ, r counted from 0 in its middle to 1 at its edge (the elliptical double
//! beta form of coating papers with both exponents alike). Moving in whatever direction it lays a beta section with
//! β = n + 3/2. What a piece of a straight line lays is the integral along it, taken
//! from a table, so that a stroke comes out the same in however many pieces it is told.

use super::single;

/// Steps of the tables from the middle of the spot to its edge.
const STEPS: usize = 1_024;
/// Least length of a piece, in half widths of the spot: a shorter one is taken as standing still.
const STILL: f32 = 1e-4;
/// What the section's β is more than the exponent of the spot: one for β itself, a half for the sweep.
const RAISED: f64 = 1.5;

/// Tables of one taper.
#[derive(Debug, Clone)]
pub struct Spot {
    /// Exponent n.
    exponent: f64,
    /// (1 - q²)ⁿ over q².
    still: Vec<f32>,
    /// (1 - q²)^(n + 1/2) over q².
    swept: Vec<f32>,
    /// Integral of (1 - z²)ⁿ from 0 over z.
    along: Vec<f32>,
}

fn share(step: usize) -> f64 {
    step as f64 / STEPS as f64
}

impl Spot {
    /// The spot whose straight pass has a beta section with that β; sections flatter than that of an even disc (β 1.5) are
    /// taken as that.
    #[must_use]
    pub fn of_taper(beta: f64) -> Self {
        let exponent = (beta - RAISED).max(0.0);
        let power = |more: f64| {
            (0..=STEPS).map(|step| single(libm::pow(1.0 - share(step), exponent + more))).collect::<Vec<_>>()
        };
        let mut still = power(0.0);
        // At the very edge 0⁰ would be 1.
        if let Some(edge) = still.last_mut() {
            *edge = 0.0;
        }
        Self { exponent, still, swept: power(0.5), along: along(exponent) }
    }

    /// Film in the middle of the spot for a volume of 1 in a spot with half widths of 1: (n + 1) / π.
    #[must_use]
    pub fn peak(&self) -> f64 {
        (self.exponent + 1.0) / core::f64::consts::PI
    }

    /// What a piece of a line lays at a place, over what the spot lays in its middle if it stands still as long.
    ///
    /// `ahead` is how far the place lies ahead of the beginning of the piece, along it, `beside` how far beside it, and
    /// `length` how long the piece is, all in half widths of the spot.
    #[must_use]
    pub fn lays(&self, ahead: f32, beside: f32, length: f32) -> f32 {
        let square = beside * beside;
        if square >= 1.0 {
            return 0.0;
        }
        if length < STILL {
            return read(&self.still, ahead * ahead + square);
        }
        let half = (1.0 - square).sqrt();
        let until = self.integral(ahead / half);
        let from = self.integral((ahead - length) / half);
        read(&self.swept, square) * (until - from) / length
    }

    fn integral(&self, z: f32) -> f32 {
        read(&self.along, z.abs()).copysign(z)
    }
}

/// A table of [`STEPS`] read at a share of its length, straight between its entries; its last entry beyond it.
fn read(table: &[f32], at: f32) -> f32 {
    const SCALE: f32 = STEPS as f32;
    let place = (at * SCALE).min(SCALE);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to the number of steps")]
    let step = (place as usize).min(STEPS - 1);
    let Some([before, after]) = table.get(step..step + 2).and_then(|pair| pair.first_chunk::<2>()) else {
        return 0.0;
    };
    let rest = place - step as f32;
    before + (after - before) * rest
}

/// The integral of (1 - z²)ⁿ from 0 to 1, step by step: with z = sin φ it is that of cos^(2n + 1) φ, which is smooth up to
/// the edge, by Simpson's rule.
fn along(exponent: f64) -> Vec<f32> {
    /// Power of the cosine beside twice the exponent: one of the root, one of dz.
    const MORE: f64 = 1.0;
    /// Weight of the middle in Simpson's rule, and their sum.
    const MIDDLE: f64 = 4.0;
    const WEIGHTS: f64 = 6.0;
    let height = |angle: f64| libm::pow(libm::cos(angle).max(0.0), 2.0 * exponent + MORE);
    let mut sum = 0.0;
    let mut last = 0.0;
    let mut table = vec![0.0];
    for step in 1..=STEPS {
        let angle = libm::asin(share(step));
        let middle = f64::midpoint(last, angle);
        sum += (angle - last) * (height(last) + MIDDLE * height(middle) + height(angle)) / WEIGHTS;
        last = angle;
        table.push(single(sum));
    }
    table
}
