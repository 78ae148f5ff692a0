//! What is done after timing a mix through the cup.

use super::cup::Cup;
use super::viscosity::{Reading, reading, stop_watch};
use crate::quantity::{Celsius, Measure, Seconds, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// What is done after timing a mix through the cup.
    CupMove {
        /// Outside the range: the finer cup.
        FinerCup = "finer-cup",
        /// Outside the range: the coarser cup.
        CoarserCup = "coarser-cup",
        /// The liquid is off the temperature of the cup: bring it there and time it again.
        RightTemperature = "time-at-temperature",
        /// Over the window: thin a little and time it again.
        ThinMore = "thin-a-little",
        /// Under the window: unthinned material goes in.
        AddMaterial = "add-unthinned",
        /// Within it: on to the strainer.
        Strain = "to-the-strainer",
    }
}

/// The other cup that a reading outside this cup's range calls for, at whatever temperature and for whatever gun; `None`
/// inside the range.
#[must_use]
pub fn beyond_range(cup: &Cup, seconds: Seconds) -> Option<Ruling<CupMove>> {
    let read = reading(cup, seconds, &[]);
    let answer = match read.answer {
        Reading::Finer(_) => CupMove::FinerCup,
        Reading::Coarser(_) => CupMove::CoarserCup,
        Reading::Holds(_) => return None,
    };
    Some(Ruling::by("mixing.cup-range", answer).step("cup-read", "", stop_watch(seconds)).resting_on(&read))
}

/// What is done after a mix at that temperature took so long to run out, when the gun wants a time from `least` to `most`.
///
/// The cup's range comes first, then the temperature: a reading that stands for nothing is no reason to thin.
#[must_use]
pub fn after_the_cup(
    cup: &Cup,
    seconds: Seconds,
    liquid: Celsius,
    (least, most): (Seconds, Seconds),
    sheet: &Sheet,
) -> Ruling<CupMove> {
    if let Some(ruling) = beyond_range(cup, seconds) {
        return ruling;
    }
    let slack = sheet.get(Setting::CupTemperatureSlack);
    let off = (liquid.get() - cup.at().get()).abs();
    let (deciding, answer) = if off > slack {
        ("mixing.cup-temperature", CupMove::RightTemperature)
    } else if seconds > most {
        ("mixing.measure-adjust-measure", CupMove::ThinMore)
    } else if seconds < least {
        ("mixing.measure-adjust-measure", CupMove::AddMaterial)
    } else {
        ("mixing.measure-adjust-measure", CupMove::Strain)
    };
    Ruling::by(deciding, answer)
        .step("cup-slack", "", Measure::new(slack, Unit::Kelvin, 1))
        .step("cup-read", "", stop_watch(seconds))
        .resting_on(&reading(cup, seconds, &[]))
}
