//! The steps that a job asks for, in the order of the shop sheet.

use super::job::{Job, Part};
use super::manner::Manner;
use super::operation::Operation;
use super::plan::{Detail, Plan, Step};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::{ColourPlan, Look};
use crate::rules::verdict::Ruling;
use crate::rules::wood::FillerNeed;

/// Whether a job asks for an operation, on any part.
#[must_use]
pub fn asks_for(job: &Job, sheet: &Sheet, operation: Operation) -> bool {
    let fills = job.parts.iter().any(|part| job.wants_filler(part));
    let stains = job.colour == ColourPlan::Stained;
    match operation {
        Operation::Stain => stains,
        Operation::Damp => stains && job.water_dye,
        Operation::Washcoat => {
            stains && fills && sheet.is_on(Setting::WashcoatBeforeFill) && stain_first(sheet)
        }
        Operation::Fill | Operation::WipeFiller | Operation::SandFiller => fills,
        Operation::Colour => matches!(job.colour, ColourPlan::Solid | ColourPlan::Transparent),
        Operation::Shade => job.shaded,
        Operation::Trim => job.is_bound(),
        Operation::Scrape => job.is_bound() && job.colours_film(),
        Operation::Protect => job.is_bound() && job.colours_film() && sheet.is_on(Setting::ProtectiveClear),
        Operation::SolventWipe => job.parts.iter().any(Part::wants_wipe),
        Operation::Inspect => job.colours_film() || stains,
        Operation::Level | Operation::Buff => job.look.is_rubbed_out(job.class),
        Operation::Sand
        | Operation::GlueCheck
        | Operation::Prefit
        | Operation::CleanOff
        | Operation::Seal
        | Operation::Clear => true,
        _ => false,
    }
}

/// Whether a job asks for an operation, with the rule behind it.
#[must_use]
pub fn need(job: &Job, sheet: &Sheet, operation: Operation) -> Ruling<bool> {
    let asked = asks_for(job, sheet, operation);
    let rule = match operation {
        Operation::Fill | Operation::WipeFiller | Operation::SandFiller if asked => "se-34",
        Operation::Fill | Operation::WipeFiller | Operation::SandFiller => "sv-10",
        Operation::Damp if asked => "se-05",
        Operation::Washcoat => "shop.washcoat",
        Operation::Protect if asked || job.is_bound() => "shop.protective-clear",
        Operation::Trim if asked => "se-03",
        Operation::Scrape if asked => "se-04",
        Operation::SolventWipe => "se-35",
        Operation::Level | Operation::Buff if asked => "order.finish",
        Operation::Level | Operation::Buff => "sv-17",
        _ if asked => "order.colour",
        _ => "sv-18",
    };
    Ruling::by(rule, asked)
}

fn stain_first(sheet: &Sheet) -> bool {
    sheet.is_on(Setting::StainFirst)
}

/// The operations of a job in the order that the shop sheet names.
#[must_use]
pub fn order(job: &Job, sheet: &Sheet) -> Vec<Operation> {
    use Operation::{
        Buff, CleanOff, Clear, Colour, Damp, Fill, GlueCheck, Inspect, Level, Prefit, Protect, Sand,
        SandFiller, Scrape, Seal, Shade, SolventWipe, Stain, Trim, Washcoat, WipeFiller,
    };
    const FILLING: [Operation; 3] = [Fill, WipeFiller, SandFiller];
    let mut all = vec![Prefit, Trim, Sand, GlueCheck, Damp, CleanOff];
    if stain_first(sheet) {
        all.extend([Stain, Washcoat]);
        all.extend(FILLING);
    } else {
        all.extend(FILLING);
        all.push(Stain);
    }
    all.extend([SolventWipe, Seal, Colour, Shade, Protect, Scrape, Inspect, Clear, Level, Buff]);
    all.retain(|operation| asks_for(job, sheet, *operation));
    all
}

/// A plan with every step of a job, each done as the sheet asks; filler only on the parts that want it.
#[must_use]
pub fn plan(job: &Job, sheet: &Sheet) -> Plan {
    let mut steps = Vec::new();
    for operation in order(job, sheet) {
        if matches!(operation, Operation::Fill | Operation::WipeFiller | Operation::SandFiller) {
            let wanting = job.parts.iter().enumerate().filter(|(_, part)| job.wants_filler(part));
            steps.extend(wanting.map(|(place, _)| Step::of(operation).on(place)));
        } else {
            let step = Step::of(operation);
            let off_the_gun = operation == Operation::Clear && !asks_for(job, sheet, Operation::Buff);
            let barrier = operation == Operation::Seal && job.parts.iter().any(Part::wants_barrier);
            steps.push(match (off_the_gun, barrier) {
                (true, _) => step.how(Manner::CleanLastCoat),
                (_, true) => step.how(Manner::Barrier),
                _ => step,
            });
        }
    }
    Plan { steps, detail: Detail::Every }
}

/// Whether filler on a part is work for nothing: closed pores, or open pores ordered.
#[must_use]
pub fn fills_for_nothing(job: &Job, part: usize) -> bool {
    job.parts.get(part).is_some_and(|part| part.filler == FillerNeed::No || job.look == Look::OpenPore)
}
