//! What a job demands beside the order of its work: rags put away, a sample agreed on, tests passed.
//!
//! A duty left undone spoils no order. Rags that lie about burn the shop, and colour that no sample showed cannot be
//! judged, so a job is not accepted without them.

use super::error::Mend;
use super::job::Job;
use super::manner::Manner;
use super::operation::{ABRADES, COATS, Operation};
use super::plan::Plan;
use super::rags::rags;
use super::view::View;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::{Severity, Stage, Term};
use crate::rules::verdict::{CannotJudge, RuleId};
use crate::rules::wood::WoodTrouble;
use crate::terms;

terms! {
    /// A duty. Its slug is the id of its rule; text `rule.<slug>`.
    Duty {
        /// Rags with oil stain, oil filler or oil varnish go into the closed metal can.
        Rags = "waste.rags",
        /// Colour on figured wood is agreed on a sample board.
        Sample = "staining.sample-board",
        /// Wiped colour on wood that takes it unevenly has a washcoat under it, or an agreed sample.
        Washcoat = "staining.blotching-wants-washcoat",
        /// A coat of another material goes on a hard, scuffed film with an isolating coat between.
        Isolate = "recoat.unlike-film",
        /// The film passes smell, nail and powder before it is cut, however long it stood.
        DryTests = "drying.physical-tests",
    }
}

impl Duty {
    /// What it guards.
    #[must_use]
    pub const fn severity(self) -> Severity {
        match self {
            Self::Rags => Severity::Safety,
            Self::Sample | Self::Washcoat | Self::Isolate | Self::DryTests => Severity::Work,
        }
    }

    /// Slugs of the faults that its neglect makes.
    #[must_use]
    pub const fn faults(self) -> &'static [&'static str] {
        match self {
            Self::Rags => &[],
            Self::Sample => &["colour-off"],
            Self::Washcoat => &["stain-blotch"],
            Self::Isolate => &["wrinkle-lift"],
            Self::DryTests => &["soft-film", "grain-sink"],
        }
    }

    /// What mends its neglect.
    #[must_use]
    pub const fn mend(self) -> Mend {
        match self {
            Self::Rags | Self::Sample | Self::Washcoat => Mend::AddStep,
            Self::Isolate | Self::DryTests => Mend::Wait,
        }
    }

    /// Where its neglect first shows when it is made in a band; `None`: after the work was left.
    #[must_use]
    pub const fn shows(self, made: Stage) -> Option<Stage> {
        match self {
            Self::Sample | Self::Washcoat => Some(Stage::Stain),
            Self::Isolate => Some(made),
            Self::Rags | Self::DryTests => None,
        }
    }
}

/// A duty that a step brings.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Due {
    /// The duty.
    pub duty: Duty,
    /// Place of the step that brings it, from 0.
    pub step: usize,
    /// Whether it was done; `None`: the plan does not list such steps, or not their hours, so it is to be seen to.
    pub done: Option<bool>,
}

impl Due {
    /// The rule that asks for it.
    #[must_use]
    pub fn rule(&self) -> RuleId {
        RuleId(self.duty.slug())
    }
}

/// The duties of a plan, in the order of its steps, and what would have to be told to judge the rest.
#[must_use]
pub fn duties(job: &Job, plan: &Plan, sheet: &Sheet) -> (Vec<Due>, Vec<String>) {
    let (mut due, mut missing) = (Vec::new(), Vec::new());
    rags(job, plan, sheet, &mut due, &mut missing);
    for (place, part) in job.parts.iter().enumerate() {
        let view = View::new(job, place, part, plan, sheet);
        for one in [colour(&view, &mut due), unlike(&view, &mut due), dry_tests(&view, &mut due)] {
            if let Err(cannot) = one {
                missing.extend(cannot.missing);
            }
        }
    }
    let mut due = crate::rules::sorted::sorted(due, |a, b| (a.step, a.duty).cmp(&(b.step, b.duty)));
    due.dedup();
    let mut missing = crate::rules::sorted::sorted(missing, Ord::cmp);
    missing.dedup();
    (due, missing)
}

/// Figured wood: sprayed colour goes on bare, wiped colour on a washcoat, either after a sample board. Advice differs,
/// and the method decides (common practice, no source).
fn colour(view: &View<'_>, due: &mut Vec<Due>) -> Result<(), CannotJudge> {
    let uneven = view.part.has(WoodTrouble::Blotching) || view.part.figured;
    for stain in view.all(&[Operation::Stain]).filter(|_| uneven) {
        let agreed = stain.is(Manner::Sample)?;
        if view.part.figured {
            due.push(Due { duty: Duty::Sample, step: stain.at, done: Some(agreed) });
            let told = stain.is(Manner::SprayedOn)? || stain.is(Manner::WipedOn)?;
            if !told && !agreed && view.lacks_before(stain.at, Operation::Washcoat) {
                return Err(CannotJudge::without("method"));
            }
        }
        if stain.is(Manner::WipedOn)? && view.before(stain.at, COATS).is_none() {
            let under = !view.lacks_before(stain.at, Operation::Washcoat);
            due.push(Due { duty: Duty::Washcoat, step: stain.at, done: Some(agreed || under) });
        }
    }
    Ok(())
}

/// A strong solvent lifts a young film of another kind: hard by the run's wait, or once the window has opened again, then
/// scuffed and isolated (a single expert: common practice, no source).
fn unlike(view: &View<'_>, due: &mut Vec<Due>) -> Result<(), CannotJudge> {
    let hard = view.wait(Setting::RunWait).max(view.sheet.get(Setting::RecoatOpensAgain));
    for coat in view.all(COATS) {
        if !coat.is(Manner::UnlikeFilm)? {
            continue;
        }
        let mut isolated = false;
        let mut film = None;
        for below in view.all(COATS).rev().filter(|below| below.at < coat.at) {
            if !below.is(Manner::Barrier)? {
                film = Some(below);
                break;
            }
            isolated = true;
        }
        let Some(film) = film else { continue };
        let done = isolated
            && view.between(film.at, coat.at, ABRADES).is_some()
            && !view.elapsed(film.at, coat.at).short_of(hard)?;
        due.push(Due { duty: Duty::Isolate, step: coat.at, done: Some(done) });
    }
    Ok(())
}

/// A test on the work itself stands above the calendar.
fn dry_tests(view: &View<'_>, due: &mut Vec<Due>) -> Result<(), CannotJudge> {
    for cut in view.all(&[Operation::Level, Operation::Buff]) {
        if cut.is(Manner::DryTestFailed)? {
            due.push(Due { duty: Duty::DryTests, step: cut.at, done: Some(false) });
        }
    }
    Ok(())
}
