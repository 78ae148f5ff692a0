//! The one thing to do better next time: what most likely made the gravest finding, read off the strokes.
//!
//! Causes are asked in the order in which they are put right at the gun: how it stands still, its distance, its fan, how it is
//! tilted, its ends, the overlap, the speed (the order is common practice, no source).

mod means;

use super::grade::{Fault, Finding};
use super::reading::Reading;
use super::setup::Setup;
use crate::rules::verdict::RuleId;
use crate::terms;
use means::Means;
pub use means::OVERLAPS;

terms! {
    /// What to do better.
    Better {
        /// Let the trigger go before the gun stops.
        KeepMoving = "better-keep-moving",
        /// Hold the gun farther off.
        GoBack = "better-go-back",
        /// Hold the gun nearer.
        ComeNearer = "better-come-nearer",
        /// Open the fan wider.
        OpenFan = "better-open-fan",
        /// Close the fan: make it narrower.
        CloseFan = "better-close-fan",
        /// Hold the gun square to the face.
        HoldSquare = "better-hold-square",
        /// Keep one distance over the whole stroke.
        KeepDistance = "better-keep-distance",
        /// Pull the trigger farther before the edge, let go farther behind it.
        LeadMore = "better-lead-more",
        /// Trigger nearer to the edge.
        LeadLess = "better-lead-less",
        /// Lay passes closer together.
        OverlapMore = "better-overlap-more",
        /// Lay passes farther apart.
        OverlapLess = "better-overlap-less",
        /// Move faster.
        Faster = "better-faster",
        /// Move slower.
        Slower = "better-slower",
        /// Move evenly.
        Evenly = "better-evenly",
        /// Wait until a layer has flashed off.
        Wait = "better-wait",
        /// Lay every second layer across.
        Cross = "better-cross",
        /// Leave no part out.
        CoverAll = "better-cover-all",
        /// Aim farther out, off the centre.
        AimOut = "better-aim-out",
        /// Go round once more, or slower.
        OnceMore = "better-once-more",
        /// Go round less often, or faster.
        OnceLess = "better-once-less",
        /// Do the same on both sides.
        BothAlike = "better-both-alike",
    }
    /// What a value that is to become better counts in.
    Told {
        /// Seconds.
        Seconds = "s",
        /// Millimetres.
        Millimetres = "mm",
        /// Metres a second.
        Speed = "m-s",
        /// Degrees.
        Degrees = "deg",
        /// A share.
        Share = "share",
    }
}

/// One thing to do better, with what was measured and what is wanted where there is a number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Advice {
    /// What.
    pub better: Better,
    /// The rule behind it.
    pub rule: RuleId,
    /// What it counts in, how it was, how it should be.
    pub from_to: Option<(Told, f64, f64)>,
}

/// What to do better: for the gravest finding, else for the paint; nothing where there is nothing to better.
#[must_use]
pub fn better(reading: &Reading, findings: &[Finding], setup: &Setup) -> Option<Advice> {
    let means = Means::of(&reading.strokes, setup);
    let Some(first) = findings.first() else { return means.wasteful() };
    Some(match first.fault {
        Fault::Runs => means.runs(),
        Fault::Missed => means.missed(),
        Fault::DrySpray => means.dry(),
        Fault::Thin => means.thin(reading.film.thin),
        Fault::Heavy => means.heavy(),
        Fault::Stripes => means.striped(),
        Fault::Strayed => means.strayed(),
        Fault::NotCrossed => plain(Better::Cross, RuleId("spraying.layers-cross")),
        Fault::CentreCovered => {
            means.wide().unwrap_or(plain(Better::AimOut, RuleId("spraying.centre-stays-clear")))
        }
        Fault::Pale => means.pale(),
        Fault::Dark => means.dark(),
        Fault::Lopsided => plain(Better::BothAlike, RuleId("spraying.both-sides-alike")),
        Fault::Banded => means.stood().unwrap_or_else(|| means.evenly()),
    })
}

const fn plain(better: Better, rule: RuleId) -> Advice {
    Advice { better, rule, from_to: None }
}

const fn told(better: Better, rule: RuleId, counted: Told, from: f64, to: f64) -> Advice {
    Advice { better, rule, from_to: Some((counted, from, to)) }
}
