//! What a finding costs in hours: the rework of its fault, and the wait that starts again after it. The one place for it.

use crate::content::Content;
use crate::rules::drying::waits::{StainKind, buff_setting, filler_setting, stain_setting};
use crate::rules::fault::Rework;
use crate::rules::sequence::job::Job;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::Stage;

/// Hours that a finding costs.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Cost {
    /// Hours at the bench. Our estimate: common practice, no source.
    pub rework_h: f64,
    /// Hours of waiting: those of the rework, or those that start again by the shop sheet where they are longer.
    pub wait_h: f64,
}

impl Cost {
    /// All of it.
    #[must_use]
    pub fn hours(self) -> f64 {
        self.rework_h + self.wait_h
    }
}

/// What the likeliest of some faults costs that was made in a band and shows in another (`None`: after the work has left).
/// What is rubbed out starts no wait again.
#[must_use]
pub fn of(
    faults: &[&str],
    made: Stage,
    shows: Option<Stage>,
    job: &Job,
    sheet: &Sheet,
    content: &Content,
) -> Cost {
    let Some(fault) = faults.iter().find_map(|id| content.fault(id)) else { return Cost::default() };
    let again = if fault.severity == Rework::Rub { 0.0 } else { wait(made, shows, job, sheet) };
    Cost { rework_h: fault.rework_h.get(), wait_h: again.max(fault.wait_h.get()) }
}

/// The wait that starts again: the long one where the finished film is mended, else that of the band done again.
fn wait(made: Stage, shows: Option<Stage>, job: &Job, sheet: &Sheet) -> f64 {
    let finished = shows.is_none_or(|shows| shows >= Stage::Cure);
    let setting = match made {
        _ if finished => buff_setting(job.class),
        Stage::Stain => stain_setting(StainKind::Dye),
        Stage::Fill => filler_setting(job.filler),
        Stage::Seal => Setting::SealWait,
        Stage::Colour | Stage::Shade | Stage::Scrape => Setting::ColourWait,
        Stage::Clear | Stage::Cure | Stage::Buff => Setting::ClearWait,
        Stage::Room | Stage::Sand => return 0.0,
    };
    sheet.wait(setting)
}
