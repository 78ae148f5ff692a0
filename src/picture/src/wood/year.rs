//! What a year is made of: earlywood, and the line at its end. All shares are means over the width of a pixel, or the thin
//! lines would break up into beads where they run at a slant.

use super::{Cut, Growth, Place, Species};
use crate::noise::hash;
use crate::number::{cell, coordinate, smooth, whole};

/// Within a pixel one place is looked at for each of so many years, and never more than so many.
const STEP: f32 = 0.025;
const SAMPLES: usize = 7;
/// Width of the line at the end of a year, in years.
const LINE: f32 = 0.05;
/// Where a face only touches a ring, the line of it would be a spot: it fades there.
const TOUCHES: (f32, f32) = (0.02, 0.16);
/// How much of it is left.
const TOUCHED: f32 = 0.3;
/// How much darker than the mean the last wood of one year may be than that of another.
const YEAR_DARK: (f32, f32) = (0.72, 0.56);
/// Share of a conifer's darkness that comes slowly over the year; the rest is its line.
const SLOWLY: f32 = 0.34;

/// Shares at a place.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Year {
    /// Of earlywood.
    pub(crate) early: f32,
    /// Of the line at the end of the year.
    pub(crate) late: f32,
}

impl Year {
    /// Over a pixel of `scale` mm.
    pub(crate) fn at(species: &Species, cut: &Cut, place: &Place, scale: f32) -> Self {
        let width = place.pace * scale;
        let count = (1 + whole(width / STEP)).min(SAMPLES);
        let mut sum = Self { early: 0.0, late: 0.0 };
        for number in 0..count {
            let off = (coordinate(number) + 0.5) / coordinate(count) - 0.5;
            let (year, phase) = cell(place.years + width * off);
            let own = own(cut, year);
            sum.early += early(species, phase, own);
            sum.late += late(species, phase, own);
        }
        let share = 1.0 / coordinate(count);
        let whole = if species.growth == Growth::Conifer {
            1.0
        } else {
            let squarely = place.pace * species.ring;
            TOUCHED + (1.0 - TOUCHED) * smooth(TOUCHES.0, TOUCHES.1, squarely)
        };
        Self { early: sum.early * share, late: sum.late * share * whole }
    }
}

/// How thickly pores of a kind stand at a place, 0 to 1.
pub(crate) fn crowd(species: &Species, cut: &Cut, stand: Growth, (x, y): (f32, f32)) -> f32 {
    /// Outside their place in the year few stand.
    const FEW_RING: f32 = 0.02;
    const FEW_SEMI: f32 = 0.08;
    let phase = || cell(cut.place(x, y).years);
    match stand {
        Growth::Ring => {
            let (year, phase) = phase();
            FEW_RING + (1.0 - FEW_RING) * band(phase, species.early_share * spread(own(cut, year)))
        }
        Growth::SemiRing => (1.0 - 1.05 * phase().1).max(FEW_SEMI),
        Growth::Diffuse => cut.thick(x, y),
        Growth::Conifer => 0.0,
    }
}

/// A number of a year's own, 0 to 1.
fn own(cut: &Cut, year: u32) -> f32 {
    let high = u16::try_from(hash(cut.seed(3), year) >> 16).unwrap_or(0);
    f32::from(high) / f32::from(u16::MAX)
}

/// One year has more earlywood than another.
fn spread(own: f32) -> f32 {
    0.75 + 0.5 * own
}

fn early(species: &Species, phase: f32, own: f32) -> f32 {
    match species.growth {
        Growth::Conifer => 1.0 - phase,
        _ => band(phase, species.early_share * spread(own)),
    }
}

/// 0 at the start of the year, up at once, held, and down softly.
fn band(phase: f32, share: f32) -> f32 {
    smooth(0.0, 0.05, phase) * (1.0 - smooth(0.7 * share, 1.25 * share, phase))
}

fn late(species: &Species, phase: f32, own: f32) -> f32 {
    if species.growth == Growth::Conifer {
        // Slowly darker through the year, then a line, then at once the pale wood of the next.
        let share = (1.0 - species.early_share) * spread(own);
        let slow = SLOWLY * phase * phase * phase;
        let line = (1.0 - SLOWLY) * smooth(1.0 - share, 1.0 - 0.3 * share, phase);
        return species.contrast * (slow + line) * (YEAR_DARK.0 + YEAR_DARK.1 * own);
    }
    /// Beyond this many widths there is nothing of the line.
    const FAR: f32 = 3.0;
    let reach = (1.0 - phase) / LINE;
    if reach > FAR {
        return 0.0;
    }
    let dark = YEAR_DARK.0 + YEAR_DARK.1 * own;
    0.8 * dark * libm::expf(-reach * reach)
}
