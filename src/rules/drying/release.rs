//! How much solvent has left a film: diffusion in a plane sheet with one face sealed.
//!
//! Crank, The Mathematics of Diffusion, 2nd edition (1975), p. 48, and p. 60 with resistance at the surface. Real films
//! stiffen as they dry and hold their last solvent longer than this, so only ratios are used for decisions.

use crate::quantity::{Biot, Fourier, Fraction, Measure, Unit};
use crate::rules::verdict::Ruling;
use crate::terms;
use core::f64::consts::{FRAC_PI_2, PI};

terms! {
    /// Which time is compared when the same film is laid in another number of coats.
    Compared {
        /// The wait after each coat.
        EachWait = "each-wait",
        /// All waits together.
        AllWaits = "all-waits",
    }
}

/// Below this Fourier number [`short_time`] is used: it is within 1e-10 of the series there.
pub const SHORT_TIME_TO: f64 = 0.05;
/// From this Fourier number on [`long_time`] is used: the second term of the series is under 1e-12 there.
pub const LONG_TIME_FROM: f64 = 1.2;
/// Terms of the series; from the thirteenth on they vanish at [`SHORT_TIME_TO`] and above.
const SERIES_TERMS: u32 = 16;
/// Most terms with resistance at the surface; the sum stops as soon as a term no longer counts.
const RESISTANCE_TERMS: u32 = 400;
/// A term below this no longer changes the sum.
const VANISHED: f64 = 1e-17;
/// Halvings of an interval until it is as narrow as the number format allows.
const HALVINGS: u32 = 60;

/// Share of the solvent that has left the film, 0 to 1.
///
/// Switches from [`short_time`] to [`series`] at [`SHORT_TIME_TO`] and to [`long_time`] at [`LONG_TIME_FROM`].
#[must_use]
pub fn released(fo: Fourier) -> Ruling<Fraction> {
    let share = share(fo.get());
    Ruling::by("drying.release-curve", share)
        .step("released", "U(Fo)", Measure::new(share.get(), Unit::Ratio, 3))
        .given(&[("Fo", Measure::new(fo.get(), Unit::Ratio, 3))])
}

fn share(fo: f64) -> Fraction {
    if fo < SHORT_TIME_TO {
        short_time(fo)
    } else if fo < LONG_TIME_FROM {
        series(fo)
    } else {
        long_time(fo)
    }
}

/// The whole series: `U = 1 - sum 8/((2n+1)^2 pi^2) exp(-(2n+1)^2 pi^2 Fo/4)`. Meant for [`SHORT_TIME_TO`] and above;
/// below, more terms than are summed would be needed.
#[must_use]
pub fn series(fo: f64) -> Fraction {
    let held: f64 = (0..SERIES_TERMS).map(|n| term(n, fo)).sum();
    Fraction::saturating(1.0 - held)
}

/// First term alone: `U = 1 - 8/pi^2 exp(-pi^2 Fo/4)`. Off by 0.21 % at Fo 0.2, by under 0.002 % beyond 0.4.
#[must_use]
pub fn long_time(fo: f64) -> Fraction {
    Fraction::saturating(1.0 - term(0, fo))
}

/// As if the film had no bottom: `U = 2 sqrt(Fo/pi)`. Off by under 0.02 % up to U 0.44, by 0.35 % at Fo 0.25.
#[must_use]
pub fn short_time(fo: f64) -> Fraction {
    Fraction::saturating(2.0 * libm::sqrt(fo / PI))
}

fn term(n: u32, fo: f64) -> f64 {
    let odd = f64::from(2 * n + 1) * PI;
    8.0 / (odd * odd) * libm::exp(-odd * odd * fo / 4.0)
}

/// The Fourier number at which that share has left; at most the greatest that [`Fourier`] allows.
#[must_use]
pub fn time_for(share_wanted: Fraction) -> Fourier {
    let found = bisect(Fourier::MIN, Fourier::MAX, |fo| share(fo).get() < share_wanted.get());
    Fourier::saturating(found)
}

/// Share that has left when still air or a skin holds solvent back at the surface.
///
/// `U = 1 - sum 2 Bi^2 exp(-b^2 Fo) / (b^2 (b^2 + Bi^2 + Bi))` over the positive roots of `b tan b = Bi`.
#[must_use]
pub fn released_with_resistance(fo: Fourier, biot: Biot) -> Ruling<Fraction> {
    let share = share_with_resistance(fo.get(), biot.get());
    Ruling::by("drying.surface-resistance", share)
        .and("drying.release-curve")
        .step("released", "U(Fo, Bi)", Measure::new(share.get(), Unit::Ratio, 3))
        .given(&[
            ("Fo", Measure::new(fo.get(), Unit::Ratio, 3)),
            ("Bi", Measure::new(biot.get(), Unit::Ratio, 3)),
        ])
}

fn share_with_resistance(fo: f64, biot: f64) -> Fraction {
    if fo == 0.0 {
        return Fraction::saturating(0.0);
    }
    let mut held = 0.0;
    for n in 0..RESISTANCE_TERMS {
        let b = root(n, biot);
        let square = b * b;
        let term = 2.0 * biot * biot * libm::exp(-square * fo) / (square * (square + biot * biot + biot));
        held += term;
        if term < VANISHED {
            break;
        }
    }
    Fraction::saturating(1.0 - held)
}

/// The n-th positive root of `b tan b = Bi`: it lies in the quarter turn above `n pi`.
fn root(n: u32, biot: f64) -> f64 {
    let from = f64::from(n) * PI;
    let sign = if n.is_multiple_of(2) { 1.0 } else { -1.0 };
    bisect(from, from + FRAC_PI_2, |b| sign * (b * libm::sin(b) - biot * libm::cos(b)) < 0.0)
}

/// How many times as long the waits become when the same film is laid in `heavy` coats instead of `light` ones and every
/// coat is left until it has released the same share: each wait goes with the square of the coat (equal Fourier number,
/// Crank 1975, p. 48). No coats at all count as one.
#[must_use]
pub fn fewer_coats(light: u32, heavy: u32, compared: Compared) -> Ruling<f64> {
    let thicker = f64::from(light.max(1)) / f64::from(heavy.max(1));
    let (factor, formula) = match compared {
        Compared::EachWait => (thicker * thicker, "(n1 / n2)^2"),
        Compared::AllWaits => (thicker, "(n1 / n2)^2 × n2 / n1"),
    };
    Ruling::by("drying.thickness-square", factor)
        .and("drying.release-curve")
        .step("thicker", "n1 / n2", Measure::new(thicker, Unit::Ratio, 2))
        .given(&[
            ("n1", Measure::count(f64::from(light.max(1)))),
            ("n2", Measure::count(f64::from(heavy.max(1)))),
        ])
        .step("longer", formula, Measure::new(factor, Unit::Ratio, 2))
        .given(&[
            ("n1", Measure::count(f64::from(light.max(1)))),
            ("n2", Measure::count(f64::from(heavy.max(1)))),
        ])
}

/// The place between two ends where `below` turns from true to false.
fn bisect(mut low: f64, mut high: f64, below: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if below(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}
