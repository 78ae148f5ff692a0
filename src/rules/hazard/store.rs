//! Flammable liquids in the room: how much, in what, with which label, and what is cleaned with what.

use crate::quantity::{Celsius, Measure, Millilitres, Unit};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What is wrong with a container in the room.
    CanFault {
        /// It stands open.
        Open = "can-open",
        /// It is of glass or a cup.
        Glass = "can-of-glass",
        /// Its label does not say what is in it.
        NoContent = "label-no-content",
        /// Its label bears no date.
        NoDate = "label-no-date",
        /// Its label does not name the hazard.
        NoHazard = "label-no-hazard",
        /// It is more than the shift needs.
        TooMuch = "more-than-shift",
    }
    /// A lid.
    Lid {
        /// Shut.
        Shut = "lid-shut",
        /// Off.
        Off = "lid-off",
    }
    /// What is cleaned.
    Cleaned {
        /// Floor, booth wall, bench.
        Room = "clean-room",
        /// Gun and nozzle.
        Gun = "clean-gun",
    }
    /// Whether a solvent may clean it.
    WashMove {
        /// It may, under the running fan.
        Use = "solvent-may-serve",
        /// One of a higher flash point is taken.
        HigherFlash = "take-higher-flash",
    }
}

/// What is known of a container.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Can {
    /// Its lid.
    pub lid: Option<Lid>,
    /// What it is of.
    pub vessel: Option<super::pouring::Vessel>,
    /// Whether its label names the content.
    pub content: Option<bool>,
    /// Whether it bears a date.
    pub date: Option<bool>,
    /// Whether it names the hazard.
    pub hazard: Option<bool>,
    /// What is in it.
    pub held: Option<Millilitres>,
    /// What the shift needs.
    pub need: Option<Millilitres>,
}

/// Least flash point of a solvent for general cleaning: 100 °F (29 CFR 1910.107(g)(5)).
pub const CLEANING_FLASH: Celsius = Celsius::saturating(340.0 / 9.0);

/// Whether a container has a fault: open or of glass, without content, date or hazard on its label, or more than the shift
/// needs (29 CFR 1910.107(e)(2)-(3); the date: common practice).
///
/// # Errors
/// [`CannotJudge`] when the fact that decides is not known.
pub fn can_fault(fault: CanFault, can: Can) -> Judged<bool> {
    let known = |key| move || CannotJudge::without(key);
    let (rule, wrong) = match fault {
        CanFault::Open => ("hazard.closed-cans", can.lid.ok_or_else(known("can_lid"))? == Lid::Off),
        CanFault::Glass => {
            ("hazard.closed-cans", can.vessel.ok_or_else(known("can_of"))? == super::pouring::Vessel::Glass)
        }
        CanFault::NoContent => ("hazard.labelled-cans", !can.content.ok_or_else(known("label_content"))?),
        CanFault::NoDate => ("hazard.labelled-cans", !can.date.ok_or_else(known("label_date"))?),
        CanFault::NoHazard => ("hazard.labelled-cans", !can.hazard.ok_or_else(known("label_hazard"))?),
        CanFault::TooMuch => {
            let held = can.held.ok_or_else(known("held_l"))?;
            ("hazard.shift-need", held.get() > can.need.ok_or_else(known("need_l"))?.get())
        }
    };
    Ok(Ruling::by(rule, wrong))
}

/// Liquid brought into the room: what the shift needs and no more (29 CFR 1910.107(e)(2)). Pieces times coats times the
/// material of a coat, less what is in the room already.
#[must_use]
pub fn shift_need(pieces: f64, coats: f64, a_coat: Millilitres, in_room: Millilitres) -> Ruling<Millilitres> {
    let litres = |value: Millilitres| Measure::new(value.get(), Unit::Millilitre, 0);
    let all = Millilitres::saturating(pieces * coats * a_coat.get());
    let answer = Millilitres::saturating(all.get() - in_room.get());
    Ruling::by("hazard.shift-need", answer)
        .step("shift-uses", "pieces x coats x material of a coat", litres(all))
        .given(&[
            ("pieces", Measure::count(pieces)),
            ("coats", Measure::count(coats)),
            ("material of a coat", litres(a_coat)),
        ])
        .step("shift-need", "what is used less what is in the room", litres(answer))
        .given(&[("shift-uses", litres(all)), ("in the room", litres(in_room))])
}

/// Whether a solvent may clean a thing: at least 100 °F flash point for general cleaning; for gun and nozzle, inside the
/// booth with the fan on, no lower than that of what is sprayed (29 CFR 1910.107(g)(5)).
///
/// # Errors
/// [`CannotJudge`] when the gun is cleaned and the flash point of what is sprayed is not known.
pub fn wash_move(cleaned: Cleaned, flash: Celsius, sprayed: Option<Celsius>) -> Judged<WashMove> {
    let least = match cleaned {
        Cleaned::Room => CLEANING_FLASH,
        Cleaned::Gun => sprayed.ok_or_else(|| CannotJudge::without("sprayed_flash_c"))?,
    };
    let answer = if flash.get() < least.get() { WashMove::HigherFlash } else { WashMove::Use };
    let shown = |value: Celsius| Measure::new(value.get(), Unit::Celsius, 1);
    Ok(Ruling::by("hazard.cleaning-flash-point", answer).step("flash-point", "", shown(flash)).step(
        "least-flash-point",
        "",
        shown(least),
    ))
}
