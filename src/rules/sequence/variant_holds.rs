//! When a variant holds: its condition, asked at the step where an error has its shape.

use super::filling::undried;
use super::finishing::{is_hard, is_thick_enough};
use super::manner::Manner;
use super::operation::{ABRADES, CLEARS, COATS, FILM_COLOUR, LAID, Operation};
use super::plan::{self, Told};
use super::trim::only_protected;
use super::variant::Variant;
use super::view::{Elapsed, Placed, View};
use crate::rules::drying::waits::{buff_setting, coat_setting};
use crate::rules::sheet::Setting;
use crate::rules::term::{Binding, ColourPlan, Look, WorkClass};
use crate::rules::verdict::CannotJudge;
use crate::rules::wood::{FillerNeed, PoreSize};

type Held = Result<bool, CannotJudge>;

/// Whether a variant holds at a step.
pub(super) fn holds(variant: Variant, view: &View<'_>, at: usize) -> Held {
    let Some(step) = view.step(at) else { return Ok(false) };
    match variant {
        Variant::StainWashcoatFill => washcoated(view, step),
        Variant::FillSandStain => sanded_to_wood(view, step),
        Variant::TintedFillerAsStain => filler_colours(view, step),
        Variant::FilledWithFinish => fills_with_finish(view),
        Variant::BurstOnBareWood => dyed_burst(view),
        Variant::TrimAfterShading => trim_scraped(view, step),
        Variant::SelfSealing => self_sealed(view, step),
        Variant::CoatsInOneDay => Ok(had_waits(view, at)? && thin_coats(view, at)?),
        Variant::MaskToTheEnd => bare_part_masked(view, step),
        Variant::NoFillerNeeded => Ok(view.part.filler == FillerNeed::No || view.job.look == Look::OpenPore),
        Variant::NoWashcoatOnCoarse => Ok(view.part.pores == PoreSize::Large),
        Variant::LevelledEarlyBuffedLate => early_level(view, step),
        Variant::StainFillSeal => neutral_filler(view, step),
        Variant::RecoatInOpenWindow => window_open(view, at),
        Variant::MaskPulledSoft => pulled_soft(view, step),
        Variant::CutsAfterFinish => step.is(Manner::Guarded),
        Variant::OffTheGun => off_the_gun(view, step),
        Variant::NotOrdered => not_ordered(view, step),
        Variant::FlattenedBetweenCoats => flattened(view, step),
        Variant::SecondFilling => first_filling_dry(view, step),
        Variant::OpaqueColourScuffed => opaque_scuffed(view, step),
        Variant::DyeSandDye => dyed_again(view, step),
        Variant::ProtectiveClearFirst => protected(view, step),
        Variant::ColourSealedOver => colour_seals(view, step),
        Variant::SealFillSeal => sealed_thin(view, step),
    }
}

/// Stain dry, a thin washcoat over it, then the filler.
fn washcoated(view: &View<'_>, fill: Placed<'_>) -> Held {
    let Some(stain) = view.before(fill.at, &[Operation::Stain]) else { return Ok(false) };
    let Some(washcoat) = view.between(stain.at, fill.at, &[Operation::Washcoat]) else {
        return Ok(!view.lacks_between(stain.at, fill.at, Operation::Washcoat));
    };
    Ok(!washcoat.is(Manner::Heavy)?)
}

/// All filler off the flats, and stain and filler tried together; a shop that fills first has tried them.
fn sanded_to_wood(view: &View<'_>, stain: Placed<'_>) -> Held {
    let Some(fill) = view.before(stain.at, &[Operation::Fill]) else { return Ok(false) };
    let sanded = !view.lacks_between(fill.at, stain.at, Operation::SandFiller);
    let shop = !view.sheet.is_on(Setting::StainFirst);
    Ok(sanded && (shop || (fill.is(Manner::TakesStain)? && stain.is(Manner::Sample)?)))
}

/// Tinted filler that is meant to colour flats and pores together, on a sample that was approved.
fn filler_colours(view: &View<'_>, step: Placed<'_>) -> Held {
    let Some(fill) = view.first(&[Operation::Fill]) else { return Ok(false) };
    let stands_for_stain = view.job.colour == ColourPlan::Stained && !unshaded(view);
    if FILM_COLOUR.contains(&step.op()) || (step.op() == Operation::Clear && !stands_for_stain) {
        return Ok(false);
    }
    let meant = fill.is(Manner::Coloured)? && fill.is(Manner::ColoursFlats)?;
    Ok(meant && fill.is(Manner::SameWipe)? && fill.is(Manner::Sample)?)
}

/// Small pores, or coats planned to fill them with a long wait before the last levelling.
fn fills_with_finish(view: &View<'_>) -> Held {
    for coat in view.all(COATS) {
        if coat.is(Manner::BuildsFill)? {
            return Ok(true);
        }
    }
    Ok(view.part.filler == FillerNeed::Optional)
}

/// The burst is a weak dye on tight-grained wood, tried before.
fn dyed_burst(view: &View<'_>) -> Held {
    let tight = view.part.pores != PoreSize::Large;
    let burst = view.first(FILM_COLOUR);
    let Some(burst) = burst.filter(|burst| burst.op() == Operation::Shade) else { return Ok(false) };
    Ok(tight && burst.is(Manner::WeakBurst)? && burst.is(Manner::Sample)?)
}

/// Plastic trim, or pale wood that was sealed before any colour.
fn trim_scraped(view: &View<'_>, scrape: Placed<'_>) -> Held {
    if scrape.op() != Operation::Scrape {
        return Ok(false);
    }
    let colour = view.first(FILM_COLOUR).map_or(0, |colour| colour.at);
    let sealed = !view.lacks_before(colour, Operation::Seal);
    Ok(view.job.binding == Binding::Plastic || sealed || scrape.is(Manner::TrimSealed)?)
}

/// Mist coats of the lacquer itself seal wood that is not oily.
fn self_sealed(view: &View<'_>, step: Placed<'_>) -> Held {
    let first = view.first(COATS).filter(|first| CLEARS.contains(&first.op()) && first.at <= step.at);
    let Some(first) = first else { return Ok(false) };
    Ok(!view.part.is_oily() && first.is(Manner::Mist)?)
}

/// Every coat up to a step had the wait of the coat below it.
fn had_waits(view: &View<'_>, at: usize) -> Held {
    for gap in view.gaps()?.into_iter().filter(|gap| gap.above.at == at) {
        if gap.time.short_of(view.wait(coat_setting(gap.below.op())))? && !gap.below.is(Manner::Mist)? {
            return Ok(false);
        }
    }
    for washcoat in view.all(&[Operation::Washcoat]) {
        let next = view.after(washcoat.at, LAID).is_some_and(|next| next.at == at);
        if next && view.elapsed(washcoat.at, at).short_of(view.wait(Setting::WashcoatWait))? {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Whether a coat is alone in its day, or told nothing of the day.
pub(super) fn thin_day(view: &View<'_>, at: usize) -> Held {
    let rest = view.wait(Setting::ScuffWait);
    for gap in view.gaps()?.into_iter().filter(|gap| gap.above.at == at) {
        if gap.time.short_of(rest)? {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Thin coats, no more of clear in a day than the sheet allows.
fn thin_coats(view: &View<'_>, at: usize) -> Held {
    let rest = view.wait(Setting::ScuffWait);
    let most = view.sheet.get(Setting::CoatsADay);
    let (mut day, mut heavy, mut counted) = (0.0, false, true);
    for coat in view.all(COATS).filter(|coat| coat.at <= at) {
        let below = view.before(coat.at, COATS);
        let same_day = match below {
            Some(below) => view.elapsed(below.at, coat.at).short_of(rest)?,
            None => false,
        };
        if !same_day {
            (day, heavy, counted) = (0.0, false, true);
        }
        heavy = heavy || coat.is(Manner::Heavy)?;
        let clear = CLEARS.contains(&coat.op());
        let coats = match coat.step.coats {
            Told::Is(coats) => coats,
            Told::Kept | Told::Untold => 1,
        };
        let untold = coat.step.coats == Told::Untold;
        // With a night between them, only the first falls on this day and only the last on the next.
        let spread = (coats > 1 || untold) && !Elapsed::of(coat.step.between).short_of(rest)?;
        counted = counted && !(untold && clear && !spread);
        if clear {
            day += if spread { 1.0 } else { f64::from(coats) };
        }
        if spread && coat.at < at {
            (day, heavy, counted) = (f64::from(u32::from(clear)), coat.is(Manner::Heavy)?, true);
        }
    }
    let thin = !heavy && day <= most;
    if thin && !counted { Err(CannotJudge::without(plan::COATS)) } else { Ok(thin) }
}

/// A glue seat or a part that stays bare, scored all round before lifting.
fn bare_part_masked(view: &View<'_>, mask: Placed<'_>) -> Held {
    if !mask.is(Manner::OverBarePart)? {
        return Ok(false);
    }
    view.after(mask.at, &[Operation::Unmask]).map_or(Ok(true), |pull| pull.is(Manner::Scored))
}

/// Levelled past the shop's floor, with film left and the full wait before buffing.
fn early_level(view: &View<'_>, level: Placed<'_>) -> Held {
    let setting = buff_setting(view.job.class);
    let Some(coat) = view.before(level.at, COATS) else { return Ok(false) };
    let Some(buff) = view.after(level.at, &[Operation::Buff]) else { return Ok(false) };
    let floor = view.sheet.held(setting).floor;
    let hard = level.op() == Operation::Level
        && !view.elapsed(coat.at, level.at).short_of(floor)?
        && view.after(level.at, COATS).is_none();
    let cut = hard && is_hard(view, coat.at, buff.at)? && is_thick_enough(view, level.at)?;
    Ok(cut && level.is(Manner::Powder)?)
}

/// Stain and filler cannot dissolve each other, and the filler is neutral or its tone is approved.
fn neutral_filler(view: &View<'_>, fill: Placed<'_>) -> Held {
    Ok(view.before(fill.at, &[Operation::Stain]).is_some()
        && fill.is(Manner::KeptApart)?
        && fill.is(Manner::Sample)?)
}

/// The window of the coat below is still open.
fn window_open(view: &View<'_>, at: usize) -> Held {
    let closes = view.sheet.get(Setting::RecoatCloses);
    for gap in view.gaps()?.into_iter().filter(|gap| gap.above.at == at && !gap.scuffed) {
        if closes > 0.0 && gap.time.over(closes)? {
            return Ok(false);
        }
    }
    Ok(true)
}

/// A thin coat, past running, nothing touched.
fn pulled_soft(view: &View<'_>, pull: Placed<'_>) -> Held {
    let Some(coat) = view.before(pull.at, COATS) else { return Ok(true) };
    Ok(pull.is(Manner::PastRunning)? && !coat.is(Manner::Heavy)?)
}

/// Ordered so, and the last coat is clean and even.
fn off_the_gun(view: &View<'_>, step: Placed<'_>) -> Held {
    let ordered = view.job.look == Look::OpenPore || view.job.class == WorkClass::Satin;
    let last = !matches!(step.op(), Operation::Level | Operation::Buff);
    Ok(ordered && last && step.is(Manner::CleanLastCoat)?)
}

/// The ticket orders no such step; a glaze or toner over a sealer is a step of its own.
fn not_ordered(view: &View<'_>, step: Placed<'_>) -> Held {
    match step.op() {
        Operation::Stain => step.is(Manner::Glaze),
        Operation::Clear => {
            let job = view.job;
            let stain = job.colour == ColourPlan::Stained && view.nowhere(Operation::Stain);
            let film = matches!(job.colour, ColourPlan::Solid | ColourPlan::Transparent);
            Ok(!(stain || film && view.nowhere(Operation::Colour) || unshaded(view)))
        }
        _ => Ok(false),
    }
}

/// Whether a shaded edge is ordered and missing.
fn unshaded(view: &View<'_>) -> bool {
    view.job.shaded && view.nowhere(Operation::Shade)
}

/// More clear follows, the film gives powder, and clear enough covers the colour.
fn flattened(view: &View<'_>, level: Placed<'_>) -> Held {
    let more = level.op() == Operation::Level && view.after(level.at, CLEARS).is_some();
    Ok(more && view.before(level.at, &[Operation::Clear]).is_some() && level.is(Manner::Powder)?)
}

/// The first filling had its own wait and was sanded or sealed; the full wait starts again with the second.
fn first_filling_dry(view: &View<'_>, fill: Placed<'_>) -> Held {
    if fill.op() != Operation::Fill {
        return Ok(false);
    }
    let Some(first) = view.before(fill.at, &[Operation::Fill]) else { return Ok(false) };
    let sanded = !view.lacks_between(first.at, fill.at, Operation::SandFiller);
    Ok(sanded && !undried(view, first.at, fill.at)?)
}

/// Solid colour, nothing shaded over it, a light scuff.
fn opaque_scuffed(view: &View<'_>, cut: Placed<'_>) -> Held {
    let top = view.before(cut.at, COATS);
    let opaque = view.job.colour == ColourPlan::Solid && top.is_some_and(|top| top.op() == Operation::Colour);
    Ok(opaque && cut.op() == Operation::Scuff && cut.is(Manner::Light)?)
}

/// Sanded back evenly to the flats, then dyed again before any coat.
fn dyed_again(view: &View<'_>, sand: Placed<'_>) -> Held {
    let again = view.after(sand.at, LAID).is_some_and(|next| next.op() == Operation::Stain);
    Ok(again && sand.op() == Operation::SandBack && sand.is(Manner::Evenly)?)
}

/// One thin protective coat over the colour is all that lies there when the binding is scraped; where no seal coat is
/// meant, it seals the colour too.
fn protected(view: &View<'_>, step: Placed<'_>) -> Held {
    if step.op() == Operation::Scrape {
        return only_protected(view, step.at);
    }
    let Some(scrape) = view.after(step.at, &[Operation::Scrape]) else { return Ok(false) };
    let unsealed = step.op() == Operation::Colour && view.before(scrape.at, &[Operation::Seal]).is_none();
    let trimmed = !view.lacks_before(step.at, Operation::Trim);
    Ok(unsealed && trimmed && view.job.is_bound() && only_protected(view, scrape.at)?)
}

/// The colour material seals by itself, in thin passes, tried before, on wood that is not oily.
fn colour_seals(view: &View<'_>, colour: Placed<'_>) -> Held {
    let seals = colour.is(Manner::SelfSealing)? && colour.is(Manner::Thin)?;
    Ok(seals && colour.is(Manner::Sample)? && !view.part.is_oily())
}

/// The seal under the filler is thin enough to leave the pores open, scuffed, and the filler suits it.
fn sealed_thin(view: &View<'_>, fill: Placed<'_>) -> Held {
    let Some(seal) = view.before(fill.at, COATS) else { return Ok(false) };
    let cut = view.between(seal.at, fill.at, ABRADES).is_some();
    let scuffed = cut || !view.lacks_between(seal.at, fill.at, Operation::Scuff);
    Ok(fill.op() == Operation::Fill
        && seal.op() == Operation::Seal
        && seal.is(Manner::Thin)?
        && scuffed
        && fill.is(Manner::Compatible)?)
}
