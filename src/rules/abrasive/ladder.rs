//! The ladder of grades: how far the next sheet may jump, and where the ladder ends.

use super::grades::{Grade, P_SERIES, on_sheet};
use super::last_grit::{Before, last_grade};
use crate::quantity::{Measure, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// What is being sanded.
    Abrading {
        /// Bare wood, before stain or seal.
        BareWood = "sand",
        /// The cured clear, before compound.
        Levelling = "level",
    }
}

impl Abrading {
    /// What its last grade leads to.
    #[must_use]
    pub const fn leads_to(self) -> Before {
        match self {
            Self::BareWood => Before::Stain,
            Self::Levelling => Before::Compound,
        }
    }
}

/// Whether a jump leaves scratches that the finer grade does not take out: its grain is smaller than the sheet's step
/// allows. The next grade of the series is always allowed.
#[must_use]
pub fn skips(from: &Grade, to: &Grade, sheet: &Sheet) -> Ruling<bool> {
    let ratio = to.median.get() / from.median.get();
    let neighbours = P_SERIES
        .windows(2)
        .any(|pair| matches!(pair, [a, b] if a.number == from.number && b.number == to.number));
    Ruling::by("abrasive.grit-step", ratio < sheet.get(Setting::GritStep) && !neighbours)
        .step("grain-now", "", from.size())
        .step("grain-next", "", to.size())
        .step("grain-ratio", "next / last", Measure::new(ratio, Unit::Ratio, 2))
        .given(&[("last", from.size()), ("next", to.size())])
}

/// The farthest grade that the next step may go to: its grain is at least the sheet's share of the last one's, and no
/// finer than the ladder's end. `None` when the ladder's end is reached.
#[must_use]
pub fn next_grade(from: &Grade, work: Abrading, sheet: &Sheet) -> Ruling<Option<&'static Grade>> {
    let last = last_grade(work.leads_to(), sheet);
    let end = last.answer;
    if from.number >= end.number {
        return last.map(|_| None);
    }
    let finer = || P_SERIES.iter().filter(|grade| grade.number > from.number && grade.number <= end.number);
    let next = finer().rfind(|grade| !skips(from, grade, sheet).answer);
    let least = from.median.get() * sheet.get(Setting::GritStep);
    Ruling::by("abrasive.grit-step", next)
        .step("grain-now", "", from.size())
        .step("grain-least", "last × step", Measure::new(least, Unit::Micrometre, 1))
        .given(&[("last", from.size()), ("step", Measure::new(sheet.get(Setting::GritStep), Unit::Ratio, 2))])
        .resting_on(&last)
}

/// How many sheets are still to come, each as far as the sheet's step allows; 0 at the ladder's end.
#[must_use]
pub fn sheets_left(from: &'static Grade, work: Abrading, sheet: &Sheet) -> Ruling<u32> {
    let first = next_grade(from, work, sheet);
    let left = ladder(from, work, sheet).iter().skip(1).fold(0, |count, _| count + 1);
    let shown = Measure::count(f64::from(left));
    first.map(|_| left).step("sheets-left", "", shown)
}

/// What follows on a spot that was cut down with a coarser sheet than the face is levelled with: the next grade there, no
/// finer than the shop's first of levelling. `None` once the spot has reached that grade and goes on with the face.
/// Common practice, no source.
#[must_use]
pub fn spot_next(spot: &Grade, sheet: &Sheet) -> Ruling<Option<&'static Grade>> {
    let first = on_sheet(sheet, Setting::LevelGrit);
    if spot.number >= first.number {
        return Ruling::by("abrasive.spot-joins-face", None).step("level-from", "", first.measure());
    }
    let next = next_grade(spot, Abrading::Levelling, sheet);
    let capped = next.answer.map(|grade| if grade.number > first.number { first } else { grade });
    Ruling::by("abrasive.spot-joins-face", capped).resting_on(&next).step("level-from", "", first.measure())
}

/// Every grade from the one in hand to the ladder's end, each as far as the sheet's step allows.
#[must_use]
pub fn ladder(from: &'static Grade, work: Abrading, sheet: &Sheet) -> Vec<&'static Grade> {
    let mut grades = vec![from];
    let mut last = from;
    while let Some(next) = next_grade(last, work, sheet).answer {
        grades.push(next);
        last = next;
    }
    grades
}
