//! The rework of a fault as steps, and the hours that they cost by the shop sheet.

use super::Fault;
use crate::quantity::{Hours, Measure, Unit};
use crate::rules::drying::waits::{StainKind, buff_setting, coat_setting, filler_setting, stain_setting};
use crate::rules::sequence::duration::duration;
use crate::rules::sequence::job::Job;
use crate::rules::sequence::operation::{BARE_WOOD, COATS, Operation};
use crate::rules::sequence::route::asks_for;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::{Binding, Coating, ColourPlan, Filler, Look, Stage, Term, WorkClass};
use crate::rules::verdict::Ruling;
use serde::{Deserialize, Serialize};

/// Hours in which a part is stripped to the wood: our estimate, common practice, no source.
pub const STRIP_H: Hours = Hours::saturating(4.0);

/// A step of rework, after the words of a row of the published table of faults.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Redo {
    /// The part is stripped to the wood.
    Strip,
    /// The operation that made the fault is done again.
    Again,
    /// The coat that made the fault is laid again; clear where no coat made it.
    Recoat,
    /// That operation.
    Do(Operation),
}

/// What is done to the wood itself: to do it again all that lies over it comes off.
const IN_WOOD: [Operation; 8] = [
    Operation::Sand,
    Operation::Damp,
    Operation::GlueCheck,
    Operation::Stain,
    Operation::SandBack,
    Operation::Fill,
    Operation::WipeFiller,
    Operation::SandFiller,
];

/// Where a fault lies that is mended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Lies {
    /// The operation that made it.
    pub made: Operation,
    /// Whether anything was laid on the wood since.
    pub covered: bool,
}

/// The operations of a rework in their order; `None` stands for stripping. Other work may lie between them.
///
/// Bare wood is only worked again. Under what was laid the wood is reached by stripping, and what is sanded anew is stained
/// anew; nothing is stained that was not ordered so.
#[must_use]
pub fn steps(rework: &[Redo], lies: Lies, job: &Job, sheet: &Sheet) -> Vec<Option<Operation>> {
    let Lies { made, covered } = lies;
    let in_wood = IN_WOOD.contains(&made);
    if in_wood && !covered {
        return vec![Some(made)];
    }
    let mut steps = Vec::new();
    for step in rework {
        match step {
            Redo::Strip => steps.push(None),
            Redo::Again => {
                steps.extend(in_wood.then_some(None));
                steps.push(Some(made));
                steps.extend(BARE_WOOD.contains(&made).then_some(Some(Operation::Stain)));
            }
            Redo::Recoat if COATS.contains(&made) => steps.push(Some(made)),
            Redo::Recoat => steps.push(Some(Operation::Clear)),
            Redo::Do(operation) => steps.push(Some(*operation)),
        }
    }
    steps.retain(|step| *step != Some(Operation::Stain) || asks_for(job, sheet, Operation::Stain));
    steps
}

/// Hours of work and of waiting that the steps of a rework cost for a fault that shows in a band (`None`: after the work has
/// left). A finished film on which they lay or level anything is levelled and buffed again.
#[must_use]
pub fn hours(steps: &[Option<Operation>], shows: Option<Stage>, job: &Job, sheet: &Sheet) -> (Hours, Hours) {
    let rubbed = job.look.is_rubbed_out(job.class) && shows.is_none_or(|shows| shows >= Stage::Cure);
    let laid = steps.iter().flatten().any(|step| COATS.contains(step));
    let levelled = steps.contains(&Some(Operation::Level));
    let level = (rubbed && laid && !levelled).then_some(Some(Operation::Level));
    let buffed = steps.contains(&Some(Operation::Buff));
    let buff = (rubbed && (laid || levelled) && !buffed).then_some(Some(Operation::Buff));
    let filmed = shows.is_none_or(|shows| shows >= Stage::Seal);
    let (mut work, mut wait) = (0.0, 0.0);
    for step in steps.iter().copied().chain(level).chain(buff) {
        work += step.map_or(STRIP_H, |operation| alone(operation, sheet)).get();
        wait +=
            step.and_then(|operation| setting(operation, filmed, job)).map_or(0.0, |wait| sheet.wait(wait));
    }
    (Hours::saturating(work), Hours::saturating(wait))
}

/// What the rework of a fault costs on a full gloss of an instrument, where the waits are longest.
#[must_use]
pub fn costs(fault: &Fault, sheet: &Sheet) -> Ruling<(Hours, Hours)> {
    let of = |stage: &Stage| Operation::ALL.iter().copied().find(|operation| operation.stage() == *stage);
    let made =
        fault.made.iter().filter(|stage| **stage != Stage::Room).find_map(of).unwrap_or(Operation::Clear);
    let lies = Lies { made, covered: fault.shows >= Stage::Seal };
    let (work, wait) =
        hours(&steps(&fault.rework, lies, &FULL_GLOSS, sheet), Some(fault.shows), &FULL_GLOSS, sheet);
    let told = |hours: Hours| Measure::new(hours.get(), Unit::Hour, 1);
    let ruling =
        Ruling::by("fault.smallest-rework-that-cures", (work, wait)).step("rework-hours", "", told(work));
    // A rework after which nothing is waited for has no line that says "0 h".
    if wait.get() > 0.0 { ruling.step("rework-wait", "", told(wait)) } else { ruling }
}

/// A stained instrument with a full gloss.
const FULL_GLOSS: Job = Job {
    parts: Vec::new(),
    look: Look::LevelGloss,
    class: WorkClass::InstrumentGloss,
    colour: ColourPlan::Stained,
    water_dye: false,
    shaded: false,
    binding: Binding::None,
    filler: Filler::OilPaste,
    coating: Coating::Nitrocellulose,
    melts: true,
};

/// Hours of an operation that is done for itself: what is counted as part of another takes as long as a scuff.
fn alone(operation: Operation, sheet: &Sheet) -> Hours {
    let counted = duration(operation, sheet);
    if counted.get() > 0.0 { counted } else { sheet.hours(Setting::WorkScuff) }
}

/// The wait that goes with an operation: before a film or filler is cut, after anything is laid.
const fn setting(operation: Operation, filmed: bool, job: &Job) -> Option<Setting> {
    Some(match operation {
        Operation::Rework if filmed => Setting::RunWait,
        Operation::Level => buff_setting(job.class),
        Operation::Stain => stain_setting(StainKind::Dye),
        Operation::Fill | Operation::SandFiller => filler_setting(job.filler),
        Operation::Washcoat
        | Operation::Seal
        | Operation::Colour
        | Operation::Shade
        | Operation::Protect
        | Operation::Clear => coat_setting(operation),
        _ => return None,
    })
}
