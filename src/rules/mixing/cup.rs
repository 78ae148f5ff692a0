//! Efflux cups: which there are stands in `content/cups.toml`; here, what a cup reads and which one is finer or coarser.
//!
//! Cups of different series have nothing to do with each other but for the viscosity they stand for (ASTM D4212, note 1).

use crate::quantity::{Celsius, Seconds, Viscosity};
use serde::{Deserialize, Serialize};

/// The series that a reading is moved to where a cup's own series ends: made to one standard, with ranges that join.
const STANDARD_SERIES: &str = "iso";
/// A cup that reaches less than this share beyond another is not worth the change: common practice, no source.
const REACH: f64 = 0.1;

/// An efflux cup. Seconds turn into viscosity by `slope × (t − offset) − drag / t`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cup {
    /// Slug; text `term.<slug>`.
    pub slug: String,
    /// Series: cups that one standard describes.
    pub series: String,
    /// The standard.
    pub standard: String,
    /// mm²/s for each second.
    pub slope: f64,
    /// Seconds taken off first; 0 where there are none.
    #[serde(default)]
    pub offset: f64,
    /// mm² of the term that falls with time; 0 where there is none.
    #[serde(default)]
    pub drag: f64,
    /// Shortest time that the cup reads.
    pub least_s: f64,
    /// Longest time that the cup reads.
    pub most_s: f64,
    /// Temperature of the liquid for which the constants are stated.
    pub at_c: f64,
    /// Where the constants were read.
    pub source: String,
}

impl Cup {
    /// Viscosity by the cup's equation, whether or not the time lies in its range.
    fn equation(&self, seconds: f64) -> f64 {
        self.slope * (seconds - self.offset) - self.drag / seconds
    }

    /// Whether the cup reads so long a time.
    #[must_use]
    pub fn reads(&self, seconds: Seconds) -> bool {
        (self.least_s..=self.most_s).contains(&seconds.get())
    }

    /// Viscosity of a liquid that runs out in so long a time; `None` outside the cup's range.
    #[must_use]
    pub fn viscosity(&self, seconds: Seconds) -> Option<Viscosity> {
        self.reads(seconds).then(|| Viscosity::saturating(self.equation(seconds.get())))
    }

    /// Time in which a liquid of that viscosity runs out; `None` outside the cup's range.
    #[must_use]
    pub fn seconds(&self, viscosity: Viscosity) -> Option<Seconds> {
        if !(self.thinnest()..=self.thickest()).contains(&viscosity) {
            return None;
        }
        // slope·t² − (slope·offset + ν)·t − drag = 0, the root above 0.
        let middle = self.slope * self.offset + viscosity.get();
        let root = libm::sqrt(middle * middle + 4.0 * self.slope * self.drag);
        Some(Seconds::saturating((middle + root) / (2.0 * self.slope)))
    }

    /// Viscosity at the shortest time.
    #[must_use]
    pub fn thinnest(&self) -> Viscosity {
        Viscosity::saturating(self.equation(self.least_s))
    }

    /// Viscosity at the longest time.
    #[must_use]
    pub fn thickest(&self) -> Viscosity {
        Viscosity::saturating(self.equation(self.most_s))
    }

    /// Shortest and longest time that the cup reads.
    #[must_use]
    pub const fn range(&self) -> (Seconds, Seconds) {
        (Seconds::saturating(self.least_s), Seconds::saturating(self.most_s))
    }

    /// Temperature of the liquid for which the constants are stated.
    #[must_use]
    pub const fn at(&self) -> Celsius {
        Celsius::saturating(self.at_c)
    }

    /// The next finer cup: one that joins this one's range and reads thinner liquid. Of its own series, else of
    /// `STANDARD_SERIES`; `None` when nothing finer is worth the change.
    #[must_use]
    pub fn finer<'a>(&self, cups: &'a [Self]) -> Option<&'a Self> {
        let end = self.thinnest().get();
        let joins = |cup: &&Self| cup.thinnest().get() <= end * (1.0 - REACH) && cup.thickest().get() >= end;
        let nearest = |series: &str| {
            let of = cups.iter().filter(|cup| cup.series == series).filter(joins);
            of.max_by(|a, b| a.thickest().get().total_cmp(&b.thickest().get()))
        };
        nearest(&self.series).or_else(|| nearest(STANDARD_SERIES).filter(|_| self.series != STANDARD_SERIES))
    }

    /// The next coarser cup, found as [`Cup::finer`] is.
    #[must_use]
    pub fn coarser<'a>(&self, cups: &'a [Self]) -> Option<&'a Self> {
        let end = self.thickest().get();
        let joins = |cup: &&Self| cup.thickest().get() >= end * (1.0 + REACH) && cup.thinnest().get() <= end;
        let nearest = |series: &str| {
            let of = cups.iter().filter(|cup| cup.series == series).filter(joins);
            of.min_by(|a, b| a.thickest().get().total_cmp(&b.thickest().get()))
        };
        nearest(&self.series).or_else(|| nearest(STANDARD_SERIES).filter(|_| self.series != STANDARD_SERIES))
    }
}
