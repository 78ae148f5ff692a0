//! How well a person knows what he knows: certainty beside what came out. It is told to the person and decides nothing.

use super::mastery::{CONFIDENCE, beta_quantile};
use crate::card::Mark;
use crate::quantity::Fraction;
use crate::record::{Certainty, Entry};
use crate::rules::term::Term;
use std::collections::BTreeSet;

/// The rest of the confidence lies on both sides alike.
const SIDES: f64 = 2.0;
/// Answers at the highest certainty below which nobody is told to be too sure. Common practice, no source.
pub const OVERCONFIDENT_LEAST: u32 = 20;

/// The chance of being right that a certainty stands for, inside the span in which it is the honest choice. Our choice, common
/// practice, no source: to be told wherever it is shown.
#[must_use]
pub const fn stands_for(certainty: Certainty) -> Fraction {
    Fraction::saturating(match certainty {
        Certainty::AskFirst => 0.50,
        Certainty::TestBoard => 0.73,
        Certainty::OnTheJob => 0.90,
    })
}

/// Points for an answer: with these, what is honest pays best (certainty-based marking, A. R. Gardner-Medwin,
/// "Confidence-Based Marking", Physiological Society, Bristol 2005).
#[must_use]
pub const fn points(certainty: Certainty, right: bool) -> i32 {
    match (certainty, right) {
        (Certainty::AskFirst, true) => 1,
        (Certainty::AskFirst, false) => 0,
        (Certainty::TestBoard, true) => 2,
        (Certainty::TestBoard, false) => -2,
        (Certainty::OnTheJob, true) => 3,
        (Certainty::OnTheJob, false) => -6,
    }
}

/// Answers at one certainty.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Level {
    /// The certainty.
    pub certainty: Certainty,
    /// Answers given at it.
    pub answers: u32,
    /// Right ones among them.
    pub right: u32,
}

impl Level {
    /// Share that was right; `None` of a level that was never used.
    #[must_use]
    pub fn share(self) -> Option<f64> {
        (self.answers > 0).then(|| f64::from(self.right) / f64::from(self.answers))
    }

    /// The range in which the true share lies with [`CONFIDENCE`], to both sides (C. J. Clopper and E. S. Pearson,
    /// Biometrika 26, 1934); `None` of a level that was never used.
    #[must_use]
    pub fn range(self) -> Option<(f64, f64)> {
        share_range(self.right, self.answers)
    }
}

/// The range in which the true share lies with [`CONFIDENCE`], to both sides, where so many of the answers were right; `None`
/// of no answers. See [`Level::range`].
#[must_use]
pub fn share_range(right: u32, answers: u32) -> Option<(f64, f64)> {
    let tail = (1.0 - CONFIDENCE.get()) / SIDES;
    let (hits, wrong) = (f64::from(right), f64::from(answers.saturating_sub(right)));
    let low = if right == 0 { 0.0 } else { beta_quantile(tail, hits, wrong + 1.0) };
    let high = if right >= answers { 1.0 } else { beta_quantile(1.0 - tail, hits + 1.0, wrong) };
    (answers > 0).then_some((low, high))
}

/// The squared distance between certainty and outcome, and its parts (G. W. Brier 1950; A. H. Murphy 1973).
#[derive(Debug, Clone, PartialEq)]
pub struct Calibration {
    /// One level a certainty, lowest first.
    pub levels: Vec<Level>,
    /// Answers in all.
    pub answers: u32,
    /// Sum of the points.
    pub points: i32,
    /// Brier score, 0 best; 0.25 is what saying one half each time comes to.
    pub brier: f64,
    /// Its first part: how far shares lie from what the levels stand for, 0 best.
    pub reliability: f64,
    /// Its second part, which lowers it: how well levels tell right from wrong.
    pub resolution: f64,
    /// Its third part: how mixed right and wrong are.
    pub uncertainty: f64,
    /// Mean of what was claimed less the share that was right: above 0 too sure.
    pub bias: f64,
    /// Mean distance between what a level stands for and its share.
    pub error: f64,
}

/// Certainty of answers and whether they were wholly right, each the first to its card.
#[must_use]
pub fn firsts<'a>(answers: impl IntoIterator<Item = &'a Entry>) -> Vec<(Certainty, bool)> {
    let mut seen = BTreeSet::new();
    let mut first = |entry: &&'a Entry| {
        seen.insert((entry.family.as_str(), entry.version, entry.seed, entry.sheet.hash.as_str()))
    };
    let answers = answers.into_iter().filter(|entry| first(entry));
    answers.map(|entry| (entry.certainty, entry.mark == Mark::Right)).collect()
}

impl Calibration {
    /// Of answers with their certainty, each the first to its card and partly right ones as wrong; `None` without answers.
    #[must_use]
    pub fn of(answers: &[(Certainty, bool)]) -> Option<Self> {
        let level = |certainty: &Certainty| {
            let at = answers.iter().filter(|(other, _)| other == certainty);
            let (count, right) =
                at.fold((0, 0), |(count, right), (_, hit)| (count + 1, right + u32::from(*hit)));
            Level { certainty: *certainty, answers: count, right }
        };
        let levels: Vec<Level> = Certainty::ALL.iter().map(level).collect();
        let total: u32 = levels.iter().map(|level| level.answers).sum();
        if total == 0 {
            return None;
        }
        let weighed = |of: &dyn Fn(f64, f64) -> f64| {
            let part = |level: &Level| {
                let share = level.share()?;
                Some(f64::from(level.answers) * of(stands_for(level.certainty).get(), share))
            };
            levels.iter().filter_map(part).sum::<f64>() / f64::from(total)
        };
        let mean = weighed(&|_, share| share);
        let square = |value: f64| value * value;
        let reliability = weighed(&|claimed, share| square(claimed - share));
        let resolution = weighed(&|_, share| square(share - mean));
        let uncertainty = mean * (1.0 - mean);
        Some(Self {
            answers: total,
            points: answers.iter().map(|(certainty, right)| points(*certainty, *right)).sum(),
            // Of the answers themselves, not of the parts.
            brier: weighed(&|claimed, share| share * square(1.0 - claimed) + (1.0 - share) * square(claimed)),
            reliability,
            resolution,
            uncertainty,
            bias: weighed(&|claimed, _| claimed) - mean,
            error: weighed(&|claimed, share| (claimed - share).abs()),
            levels,
        })
    }

    /// How much better than claiming the mean each time: above 0 better, 1 best; `None` where all was right or all wrong.
    #[must_use]
    pub fn skill(&self) -> Option<f64> {
        (self.uncertainty > 0.0).then(|| 1.0 - self.brier / self.uncertainty)
    }

    /// Mean of `-ln` of the chance that was claimed for what came out, 0 best.
    #[must_use]
    pub fn log_loss(&self) -> f64 {
        let of = |level: &Level| {
            let claimed = stands_for(level.certainty).get();
            let wrong = level.answers - level.right;
            f64::from(level.right) * libm::log(claimed) + f64::from(wrong) * libm::log(1.0 - claimed)
        };
        -self.levels.iter().map(of).sum::<f64>() / f64::from(self.answers)
    }

    /// Whether the person may be told to be too sure: enough answers at the highest certainty, and the whole range of its
    /// share below what it stands for.
    #[must_use]
    pub fn too_sure(&self) -> bool {
        let told =
            |level: &&Level| level.certainty == Certainty::OnTheJob && level.answers >= OVERCONFIDENT_LEAST;
        let high = self.levels.iter().find(told).and_then(|level| level.range()).map(|(_, high)| high);
        high.is_some_and(|high| high < stands_for(Certainty::OnTheJob).get())
    }
}
