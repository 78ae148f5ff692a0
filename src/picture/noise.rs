//! Smooth noise and chance, the same on every machine: whole-number hashing and a table.

use super::number::{coordinate, wrapped};

/// Entries a side of the table, a power of two.
const SIDE: usize = 256;
/// Entries from one lattice point to the next.
const CELL: usize = 8;
/// Lattice points a side, after which the noise repeats.
const POINTS: usize = SIDE / CELL;
/// Brings gradient noise to about -1 to 1.
const GAIN: f32 = 1.7;
/// Cells that a layer is moved along the grain for each cell across it: the repeat of the table then falls elsewhere,
/// while streaks stay straight.
const SHEAR: f32 = 0.37;

/// One part of a diagonal of length one.
const DIAGONAL: f32 = core::f32::consts::FRAC_1_SQRT_2;

/// Sixteen directions, evenly turned.
const GRADIENTS: [[f32; 2]; 16] = [
    [1.0, 0.0],
    [0.9239, 0.3827],
    [DIAGONAL, DIAGONAL],
    [0.3827, 0.9239],
    [0.0, 1.0],
    [-0.3827, 0.9239],
    [-DIAGONAL, DIAGONAL],
    [-0.9239, 0.3827],
    [-1.0, 0.0],
    [-0.9239, -0.3827],
    [-DIAGONAL, -DIAGONAL],
    [-0.3827, -0.9239],
    [0.0, -1.0],
    [0.3827, -0.9239],
    [DIAGONAL, -DIAGONAL],
    [0.9239, -0.3827],
];

/// Mixes two numbers into one that looks random.
pub(super) fn hash(a: u32, b: u32) -> u32 {
    let mut h = a.wrapping_mul(0x9E37_79B1) ^ b.wrapping_mul(0x85EB_CA77);
    h = (h ^ (h >> 15)).wrapping_mul(0x2C1B_3C6D);
    h = (h ^ (h >> 12)).wrapping_mul(0x297A_2D39);
    h ^ (h >> 15)
}

/// A stream of chance.
pub(super) struct Chance(u32, u32);

impl Chance {
    pub(super) const fn new(seed: u32) -> Self {
        Self(seed, 0)
    }

    /// Evenly from 0 to 1.
    pub(super) fn even(&mut self) -> f32 {
        const STEPS: u16 = u16::MAX;
        self.1 = self.1.wrapping_add(1);
        let high = hash(self.0, self.1) >> 16;
        u16::try_from(high).map_or(0.0, |n| f32::from(n) / f32::from(STEPS))
    }

    /// About a normal deviate, never beyond 3.5: the sum of four even ones.
    pub(super) fn normal(&mut self) -> f32 {
        const SUM_MEAN: f32 = 2.0;
        /// One over the standard deviation of the sum, root of 1/3.
        const SCALE: f32 = 1.732;
        (self.even() + self.even() + self.even() + self.even() - SUM_MEAN) * SCALE
    }
}

/// Gradient noise, read from a table that repeats.
pub(super) struct Noise {
    table: Vec<f32>,
}

impl Noise {
    pub(super) fn new(seed: u32) -> Self {
        let mut table = Vec::with_capacity(SIDE * SIDE);
        for row in 0..SIDE {
            for column in 0..SIDE {
                table.push(gradient_noise(seed, column, row));
            }
        }
        Self { table }
    }

    /// The noise at a place given in cells along and across the grain; about -1 to 1, mean 0.
    pub(super) fn at(&self, along: f32, across: f32) -> f32 {
        const ENTRIES: f32 = 8.0;
        let (x, fx) = wrapped((along + SHEAR * across) * ENTRIES, SIDE);
        let (y, fy) = wrapped(across * ENTRIES, SIDE);
        let (right, below) = ((x + 1) & (SIDE - 1), (y + 1) & (SIDE - 1));
        let entry = |x: usize, y: usize| self.table.get(y * SIDE + x).copied().unwrap_or(0.0);
        let upper = entry(x, y) + (entry(right, y) - entry(x, y)) * fx;
        let lower = entry(x, below) + (entry(right, below) - entry(x, below)) * fx;
        upper + (lower - upper) * fy
    }
}

fn gradient_noise(seed: u32, column: usize, row: usize) -> f32 {
    let place = |n: usize| (n / CELL, coordinate(n % CELL) / coordinate(CELL));
    let ((x, fx), (y, fy)) = (place(column), place(row));
    let corner = |dx: usize, dy: usize| {
        let point = ((y + dy) % POINTS) * POINTS + (x + dx) % POINTS;
        let turn = hash(seed, u32::try_from(point).unwrap_or(0)) >> 28;
        let [gx, gy] =
            usize::try_from(turn).ok().and_then(|turn| GRADIENTS.get(turn)).copied().unwrap_or([0.0, 0.0]);
        gx * (fx - coordinate(dx)) + gy * (fy - coordinate(dy))
    };
    let fade = |t: f32| t * t * t * (t * (t * 6.0 - 15.0) + 10.0);
    let (u, v) = (fade(fx), fade(fy));
    let upper = corner(0, 0) + (corner(1, 0) - corner(0, 0)) * u;
    let lower = corner(0, 1) + (corner(1, 1) - corner(0, 1)) * u;
    (upper + (lower - upper) * v) * GAIN
}
