//! What levelling and buffing leave over the colour.

use super::um;
use crate::quantity::Micrometres;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// What film and levelling together allow.
    Levelling {
        /// Enough film: level.
        Level = "level-now",
        /// Enough over the colour now, not after levelling: clear first.
        ClearFirst = "level-clear-first",
        /// Already under the reserve: nothing more may come off.
        UnderReserve = "level-under-reserve",
        /// Nothing left: the colour is cut.
        Through = "level-through",
    }
}

/// Film left over the colour after so much came off; 0 when it is cut.
#[must_use]
pub fn left(build: Micrometres, taken: Micrometres) -> Ruling<Micrometres> {
    let left = Micrometres::saturating(build.get() - taken.get());
    Ruling::by("film.left-is-build-less-taken", left)
        .step("left-over-colour", "", um(left.get()))
        .given(&[("build", um(build.get())), ("take-off", um(taken.get()))])
}

/// Whether a film may be levelled: the shop's take-off must leave the shop's reserve over the colour.
#[must_use]
pub fn levelling(build: Micrometres, taken: Micrometres, sheet: &Sheet) -> Ruling<Levelling> {
    let now = left(build, taken);
    let take_off = sheet.micrometres(Setting::LevelTakeOff);
    let reserve = sheet.micrometres(Setting::FilmReserve);
    let after = now.answer.get() - take_off.get();
    let (rule, answer) = if now.answer.get() <= 0.0 {
        ("film.cut-through", Levelling::Through)
    } else if now.answer < reserve {
        ("film.reserve-over-colour", Levelling::UnderReserve)
    } else if after < reserve.get() {
        ("film.level-leaves-reserve", Levelling::ClearFirst)
    } else {
        ("film.level-leaves-reserve", Levelling::Level)
    };
    Ruling::by(rule, answer)
        .step("take-off", "", um(take_off.get()))
        .step("left-after-levelling", "", um(after.max(0.0)))
        .given(&[("left-over-colour", um(now.answer.get())), ("take-off", um(take_off.get()))])
        .step("reserve", "", um(reserve.get()))
        .resting_on(&now)
}
