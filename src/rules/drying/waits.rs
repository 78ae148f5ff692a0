//! Every wait of a finish, and the earliest time after which the next operation may begin.

use super::factors::{cold_factor, thickness_factor};
use super::{AIR, BUILD, COAT, Modelled};
use crate::quantity::{Celsius, Hours, Measure, Micrometres, Unit};
use crate::rules::sequence::operation::Operation;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::{Filler, WorkClass};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;
use serde::Serialize;

terms! {
    /// The waits of a finish.
    Wait {
        /// Filler wiped off to the next coat.
        FillerToNext = "filler-to-next",
        /// Stain to the next coat.
        StainToNext = "stain-to-next",
        /// Washcoat to the next operation.
        WashcoatToNext = "washcoat-to-next",
        /// Seal coat to the next coat.
        SealToNext = "seal-to-next",
        /// Colour coat to the next coat.
        ColourToColour = "colour-to-colour",
        /// Clear coat to clear coat.
        ClearToClear = "clear-to-clear",
        /// Last coat of the day to scuff sanding.
        Scuff = "scuff",
        /// Last clear coat to levelling and buffing.
        Buff = "buff",
        /// A run to levelling it.
        Run = "run",
    }
    /// Kinds of stain, told apart by how they dry.
    StainKind {
        /// Dye or lacquer stain in a fast solvent.
        Dye = "dye",
        /// Oil stain.
        Oil = "oil",
    }
    /// Tests on the work itself that must pass before levelling, however long it stood. Common practice, no source.
    DryTest {
        /// No smell of solvent close to the film.
        Smell = "no-smell",
        /// The thumbnail leaves no dent in a hidden spot.
        Thumbnail = "no-dent",
        /// Sanding makes dry powder and does not clog the paper.
        Powder = "dry-powder",
    }
}

impl DryTest {
    /// All three, before levelling.
    pub const BEFORE_BUFF: &'static [Self] = &[Self::Smell, Self::Thumbnail, Self::Powder];
}

/// What is told of the work; what is not told is `None`.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Told {
    /// Class of work; decides the wait before buffing.
    pub class: Option<WorkClass>,
    /// Kind of filler; decides its wait.
    pub filler: Option<Filler>,
    /// Kind of stain; decides its wait.
    pub stain: Option<StainKind>,
    /// Air round the drying work.
    pub air: Option<Celsius>,
    /// Dry film: of the last coat for the wait between clear coats, of the whole clear for the wait before levelling.
    pub film: Option<Micrometres>,
}

/// A wait with what it was made of.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Earliest {
    /// The earliest time, at most one year.
    pub hours: Hours,
    /// The wait on the sheet, at its reference temperature.
    pub stated: Hours,
    /// The floor that no sheet undercuts.
    pub floor: Hours,
    /// Cold factor.
    pub cold: f64,
    /// Thickness factor; it bears on the floor.
    pub thickness: f64,
    /// Tests that must pass as well.
    pub tests: &'static [DryTest],
}

/// The earliest time for a wait: the larger of (wait on the sheet x cold factor) and (floor x cold factor x thickness
/// factor). Thickness counts between clear coats and before buffing only.
///
/// # Errors
/// [`CannotJudge`] when a fact that the wait needs is not told: the air always; kind of filler or stain, class of work
/// and film for the waits that go by them.
pub fn earliest(wait: Wait, told: &Told, sheet: &Sheet) -> Judged<Modelled<Earliest>> {
    let cold = cold_factor(told.air.ok_or_else(|| CannotJudge::without(AIR))?, sheet);
    let Modelled::Estimate(q) = cold.answer else { return Ok(cold.map(|_| Modelled::OutsideModel)) };
    let held = sheet.held(setting(wait, told)?);
    let thickness = match reference(wait) {
        Some(reference) => {
            let key = if wait == Wait::ClearToClear { COAT } else { BUILD };
            let film = told.film.ok_or_else(|| CannotJudge::without(key))?;
            Some(thickness_factor(film, sheet.micrometres(reference)))
        }
        None => None,
    };
    let g = thickness.as_ref().map_or(1.0, |ruling| ruling.answer);
    let (by_sheet, by_floor) = (held.value * q, held.floor * q * g);
    let answer = Earliest {
        hours: Hours::saturating(by_sheet.max(by_floor)),
        stated: Hours::saturating(held.value),
        floor: Hours::saturating(held.floor),
        cold: q,
        thickness: g,
        tests: if wait == Wait::Buff { DryTest::BEFORE_BUFF } else { &[] },
    };
    let hours = |value: Hours| Measure::new(value.get(), Unit::Hour, 1);
    let decides = if by_floor > by_sheet { "drying.floor" } else { "drying.stated-wait" };
    let mut ruling = Ruling::by(decides, Modelled::Estimate(answer)).and(kind_rule(wait)).resting_on(&cold);
    if let Some(thickness) = &thickness {
        ruling = ruling.resting_on(thickness);
    }
    if wait == Wait::Buff {
        ruling = ruling.and("drying.physical-tests");
    }
    Ok(ruling.step("stated-wait", "", hours(answer.stated)).step("wait-floor", "", hours(answer.floor)).step(
        "earliest",
        "",
        hours(answer.hours),
    ))
}

/// Which value of the sheet states a wait.
///
/// # Errors
/// [`CannotJudge`] when the kind of material or class of work that decides it is not told.
pub fn setting(wait: Wait, told: &Told) -> Result<Setting, CannotJudge> {
    Ok(match wait {
        Wait::FillerToNext => filler_setting(told.filler.ok_or_else(|| CannotJudge::without("filler"))?),
        Wait::StainToNext => stain_setting(told.stain.ok_or_else(|| CannotJudge::without("stain_kind"))?),
        Wait::WashcoatToNext => Setting::WashcoatWait,
        Wait::SealToNext => Setting::SealWait,
        Wait::ColourToColour => Setting::ColourWait,
        Wait::ClearToClear => Setting::ClearWait,
        Wait::Scuff => Setting::ScuffWait,
        Wait::Buff => buff_setting(told.class.ok_or_else(|| CannotJudge::without("class"))?),
        Wait::Run => Setting::RunWait,
    })
}

/// Which value of the sheet states a filler's wait to the next coat.
#[must_use]
pub const fn filler_setting(filler: Filler) -> Setting {
    match filler {
        Filler::OilPaste => Setting::FillerOilWait,
        Filler::FastSolvent => Setting::FillerFastWait,
        Filler::WaterBorne => Setting::FillerWaterWait,
        Filler::TwoPart => Setting::FillerTwoPartWait,
    }
}

/// Which value of the sheet states a stain's wait to the next coat.
#[must_use]
pub const fn stain_setting(stain: StainKind) -> Setting {
    match stain {
        StainKind::Dye => Setting::StainDyeWait,
        StainKind::Oil => Setting::StainOilWait,
    }
}

/// Which value of the sheet states the wait before levelling and buffing for a class of work.
#[must_use]
pub const fn buff_setting(class: WorkClass) -> Setting {
    match class {
        WorkClass::InstrumentGloss => Setting::BuffWaitInstrument,
        WorkClass::Satin => Setting::BuffWaitSatin,
        WorkClass::Turned => Setting::BuffWaitTurned,
    }
}

/// Which value of the sheet states the wait after a coat, or a washcoat, of that kind.
#[must_use]
pub const fn coat_setting(coat: Operation) -> Setting {
    match coat {
        Operation::Washcoat => Setting::WashcoatWait,
        Operation::Seal => Setting::SealWait,
        Operation::Colour | Operation::Shade => Setting::ColourWait,
        _ => Setting::ClearWait,
    }
}

/// The film at which a wait is stated, for the waits that go by film.
const fn reference(wait: Wait) -> Option<Setting> {
    match wait {
        Wait::ClearToClear => Some(Setting::CoatReference),
        Wait::Buff => Some(Setting::BuildReference),
        _ => None,
    }
}

/// The rule that says by what a wait goes.
const fn kind_rule(wait: Wait) -> &'static str {
    match wait {
        Wait::FillerToNext => "drying.filler-kind",
        Wait::StainToNext => "drying.stain-kind",
        Wait::Buff => "drying.class-of-work",
        Wait::Run => "drying.run-rests",
        Wait::Scuff => "drying.overnight-before-scuff",
        _ => "drying.recoat-re-wets",
    }
}
