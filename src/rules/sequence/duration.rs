//! How long an operation keeps the hands busy.

use super::operation::Operation;
use crate::quantity::Hours;
use crate::rules::drying::job_step::JobStep;
use crate::rules::sheet::Sheet;

/// The entry of the time plan that an operation belongs to; small steps are part of the one that they go with.
const fn counted_as(operation: Operation) -> Option<JobStep> {
    Some(match operation {
        Operation::Sand => JobStep::Prepare,
        Operation::Stain => JobStep::Stain,
        Operation::Washcoat => JobStep::Washcoat,
        Operation::Fill => JobStep::Fill,
        Operation::Seal => JobStep::Seal,
        Operation::Colour => JobStep::Colour,
        Operation::Shade => JobStep::Shade,
        Operation::Protect => JobStep::Protect,
        Operation::Scrape => JobStep::Scrape,
        Operation::Inspect => JobStep::Inspect,
        Operation::Clear => JobStep::Clear,
        Operation::Scuff | Operation::Rework => JobStep::Scuff,
        Operation::Level => JobStep::Level,
        Operation::Buff => JobStep::Buff,
        _ => return None,
    })
}

/// Hours at the bench or in the booth, by the shop sheet.
#[must_use]
pub fn duration(operation: Operation, sheet: &Sheet) -> Hours {
    counted_as(operation).map_or(Hours::saturating(0.0), |step| step.work(sheet))
}
