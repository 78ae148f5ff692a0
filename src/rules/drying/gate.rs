//! The gate before levelling: what keeps it shut beside the clock.

use super::waits::{DryTest, Told, Wait, earliest};
use super::{AIR, Modelled};
use crate::quantity::{Hours, Measure, Unit};
use crate::rules::sheet::Sheet;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What is found on the work while it waits for levelling.
    Finding {
        /// Solvent can be smelt close to the film.
        SolventSmell = "smells-of-solvent",
        /// The thumbnail leaves a dent in a hidden spot.
        NailDent = "nail-dents",
        /// The paper clogs.
        PaperClogs = "paper-clogs",
        /// Nothing can be smelt.
        NoSmell = "no-smell",
        /// The thumbnail leaves no mark.
        NoDent = "no-dent",
        /// A trial spot gives dry powder.
        DryPowder = "dry-powder",
        /// The surface does not stick to a finger: says nothing of the film below.
        TouchDry = "touch-dry",
        /// How long it has stood.
        TimeStood = "time-stood",
    }
}

impl Finding {
    /// The test that this finding fails, if it fails one.
    #[must_use]
    pub const fn fails(self) -> Option<DryTest> {
        match self {
            Self::SolventSmell => Some(DryTest::Smell),
            Self::NailDent => Some(DryTest::Thumbnail),
            Self::PaperClogs => Some(DryTest::Powder),
            _ => None,
        }
    }
}

/// Whether a finding alone keeps the gate to levelling shut: a failed test does, and a wait that is not over.
///
/// # Errors
/// [`CannotJudge`] when the time stood cannot be weighed: class, air or film is not told, or the room lies outside the
/// temperatures of the sheet.
pub fn keeps_shut(finding: Finding, since: Option<Hours>, told: &Told, sheet: &Sheet) -> Judged<bool> {
    if finding != Finding::TimeStood {
        return Ok(Ruling::by("drying.physical-tests", finding.fails().is_some()));
    }
    let since = since.ok_or_else(|| CannotJudge::without("hours_since"))?;
    let wait = earliest(Wait::Buff, told, sheet)?;
    let Modelled::Estimate(found) = wait.answer else { return Err(CannotJudge::without(AIR)) };
    Ok(wait.map(|_| since < found.hours).step("stood", "", Measure::new(since.get(), Unit::Hour, 1)))
}
