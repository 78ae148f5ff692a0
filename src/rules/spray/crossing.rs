//! A second set of passes: across the first, or along it and shifted by half a pitch.

use super::fan::Section;
use super::overlap::{Evenness, evenness, shown};
use crate::quantity::Overlap;
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// How a second coat is laid over the first.
    Second {
        /// Square across it.
        Across = "second-across",
        /// Along it, shifted by half the pitch.
        HalfPitch = "second-half-pitch",
        /// Along it, on the same lines.
        SameLines = "second-same-lines",
    }
    /// What the first coat shows.
    FirstShows {
        /// Even stripes, all over.
        Stripes = "first-striped",
        /// A strip that was left out.
        Missed = "first-missed-strip",
    }
}

/// How even two equal sets lie together.
///
/// Across: means add and the ripples are independent over the plane, so the spread falls by √2, while peak on peak and
/// valley on valley remain. Shifted by half a pitch: the same as one set at half the pitch. On the same lines: the ripple
/// adds and nothing is gained (superposition; computed).
#[must_use]
pub fn two_sets(section: Section, overlap: Overlap, second: Second) -> Ruling<Evenness> {
    let first = evenness(section, overlap);
    let both = match second {
        Second::Across => {
            let cv = first.answer.cv / core::f64::consts::SQRT_2;
            Ruling::by("spray.cross-hatch", Evenness { cv, ..first.answer })
        }
        Second::HalfPitch => {
            let halved = Overlap::saturating((1.0 + overlap.get()) / 2.0);
            Ruling::by("spray.half-pitch", evenness(section, halved).answer)
        }
        Second::SameLines => Ruling::by("spray.same-lines", first.answer),
    };
    let cv = both.answer.cv;
    both.step("unevenness-one", "", shown(first.answer.cv)).step("unevenness-both", "", shown(cv))
}

/// The second coat that leaves the least stripes of a fan at an overlap: crossing also guards against a missed strip and
/// faults of one direction, which this does not count (common practice, no source).
#[must_use]
pub fn least_stripes(section: Section, overlap: Overlap) -> Ruling<Second> {
    let cv = |second| two_sets(section, overlap, second).answer.cv;
    let best = if cv(Second::HalfPitch) <= cv(Second::Across) { Second::HalfPitch } else { Second::Across };
    let deciding = two_sets(section, overlap, best);
    deciding.map(|_| best)
}

/// How the second coat is laid over what the first one shows: stripes are met by whichever leaves least of them, a strip
/// left out by crossing, which no pass of the second coat can miss along its whole length.
///
/// Source: superposition for stripes; crossing over a missed strip is common practice, no source.
#[must_use]
pub fn second_for(shows: FirstShows, section: Section, overlap: Overlap) -> Ruling<Second> {
    match shows {
        FirstShows::Stripes => least_stripes(section, overlap),
        FirstShows::Missed => Ruling::by("spray.cross-over-a-gap", Second::Across),
    }
}
