//! Smooth noise and chance, the same on every machine: whole-number hashing and a table.

use crate::number::{cell, coordinate, wrapped};
use crate::pause::worked;

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
pub(crate) fn hash(a: u32, b: u32) -> u32 {
    let mut h = a.wrapping_mul(0x9E37_79B1) ^ b.wrapping_mul(0x85EB_CA77);
    h = (h ^ (h >> 15)).wrapping_mul(0x2C1B_3C6D);
    h = (h ^ (h >> 12)).wrapping_mul(0x297A_2D39);
    h ^ (h >> 15)
}

/// Brings gradient noise to a standard deviation of about 0.85.
const CLOUD_GAIN: f32 = 4.0;

/// Gradient noise of cells one unit wide, smooth enough to be a height: mean 0, standard deviation about 0.85, nearly all
/// of it between -1.9 and 1.9.
pub(crate) fn cloud(seed: u32, u: f32, v: f32) -> f32 {
    worked();
    let ((x, fx), (y, fy)) = (cell(u), cell(v));
    let corner = |dx: u32, dy: u32, fx: f32, fy: f32| {
        let turn = hash(seed ^ x.wrapping_add(dx).wrapping_mul(0x27D4_EB2F), y.wrapping_add(dy)) >> 28;
        let [gx, gy] =
            usize::try_from(turn).ok().and_then(|turn| GRADIENTS.get(turn)).copied().unwrap_or([0.0, 0.0]);
        gx * fx + gy * fy
    };
    let fade = |t: f32| t * t * t * (t * (t * 6.0 - 15.0) + 10.0);
    let (su, sv) = (fade(fx), fade(fy));
    let upper = corner(0, 0, fx, fy);
    let upper = upper + (corner(1, 0, fx - 1.0, fy) - upper) * su;
    let lower = corner(0, 1, fx, fy - 1.0);
    let lower = lower + (corner(1, 1, fx - 1.0, fy - 1.0) - lower) * su;
    (upper + (lower - upper) * sv) * CLOUD_GAIN
}

/// The same without a direction: three layers of cells `size` wide, each turned against the others, so that no lattice shows
/// in a straight lamp edge that is mirrored in it.
pub(crate) fn soft(seed: u32, size: f32, x: f32, y: f32) -> f32 {
    /// Cosine and sine of 0.5, 2.9 and 5.3 radians.
    const TURNS: [(f32, f32); 3] = [(0.877_58, 0.479_43), (-0.970_96, 0.239_25), (0.554_37, -0.832_27)];
    /// One over the root of three.
    const SHARE: f32 = 0.577_35;
    let (u, v) = (x / size, y / size);
    let layer = |(seed, (cosine, sine)): (u32, (f32, f32))| {
        cloud(seed, u * cosine - v * sine + 17.3 * cosine, u * sine + v * cosine + 11.9 * sine)
    };
    let seeds = [seed, seed ^ 0x51ED_270B, seed ^ 0x2545_F491];
    SHARE * seeds.into_iter().zip(TURNS).map(layer).sum::<f32>()
}

/// A stream of chance.
#[derive(Debug, Clone)]
pub(crate) struct Chance(u32, u32);

impl Chance {
    pub(crate) const fn new(seed: u32) -> Self {
        Self(seed, 0)
    }

    /// Evenly from 0 to 1.
    pub(crate) fn even(&mut self) -> f32 {
        const STEPS: u16 = u16::MAX;
        self.1 = self.1.wrapping_add(1);
        let high = hash(self.0, self.1) >> 16;
        u16::try_from(high).map_or(0.0, |n| f32::from(n) / f32::from(STEPS))
    }

    /// About a normal deviate, never beyond 3.5: the sum of four even ones.
    pub(crate) fn normal(&mut self) -> f32 {
        const SUM_MEAN: f32 = 2.0;
        /// One over the standard deviation of the sum, root of 1/3.
        const SCALE: f32 = 1.732;
        (self.even() + self.even() + self.even() + self.even() - SUM_MEAN) * SCALE
    }

    /// Evenly between two values.
    pub(crate) fn between(&mut self, from: f32, to: f32) -> f32 {
        from + (to - from) * self.even()
    }

    /// Log-normal about a median.
    pub(crate) fn about(&mut self, median: f32, spread: f32) -> f32 {
        median * libm::expf(spread * self.normal())
    }
}

/// Gradient noise, read from a table that repeats.
pub(crate) struct Noise {
    table: Vec<f32>,
}

impl Noise {
    pub(crate) fn new(seed: u32) -> Self {
        let mut table = Vec::with_capacity(SIDE * SIDE);
        for row in 0..SIDE {
            for column in 0..SIDE {
                table.push(gradient_noise(seed, column, row));
            }
        }
        Self { table }
    }

    /// The noise at a place given in cells along and across the grain; about -1 to 1, mean 0.
    pub(crate) fn at(&self, along: f32, across: f32) -> f32 {
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
