//! Opaque colour: what scatters and what swallows light (Kubelka-Munk), and when the ground no longer shows.

use crate::quantity::{DUST, Fraction, Measure, PERCENT_A_WHOLE, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Whether a colour hides its ground.
    Hiding {
        /// The ground no longer shows.
        Hides = "colour-hides",
        /// It still does.
        Shows = "ground-shows",
    }
}

/// Ground of a hiding card that swallows all light.
const BLACK: f64 = 0.0;
/// Ground of a hiding card that reflects four fifths of it.
const WHITE: f64 = 0.8;

/// Swallowed over scattered light (K/S) of a film so thick that nothing shows through: (1 - R)² / (2 R).
///
/// # Errors
/// [`CannotJudge`] when nothing is reflected: then no finite ratio does it.
pub fn swallowed(full: Fraction) -> Judged<f64> {
    let reflected = full.get();
    if reflected <= 0.0 {
        return Err(CannotJudge::without("full_reflectance"));
    }
    let ratio = (1.0 - reflected) * (1.0 - reflected) / (2.0 * reflected);
    Ok(Ruling::by("optics.kubelka-munk", ratio)
        .step("swallowed-over-scattered", "(1 − R)² / (2 R)", Measure::new(ratio, Unit::Ratio, 3))
        .given(&[("R", Measure::new(reflected, Unit::Ratio, 3))]))
}

/// The same turned round: what a film of full thickness reflects, for K/S of 0 and more.
#[must_use]
pub fn reflected(swallowed: f64) -> Fraction {
    let ratio = swallowed.max(0.0);
    Fraction::saturating(1.0 + ratio - (ratio * ratio + 2.0 * ratio).sqrt())
}

/// What a film reflects over a ground: K/S, its scattering power S X (0 and more), the ground's reflectance.
///
/// R = (1 - g (a - b coth bSX)) / (a - g + b coth bSX), a = 1 + K/S, b = √(a² - 1); with K of 0 its limit, where b is 0.
#[must_use]
pub fn over_ground(swallowed: f64, scattering: f64, ground: Fraction) -> Fraction {
    let g = ground.get();
    if scattering <= 0.0 {
        return ground;
    }
    let a = 1.0 + swallowed.max(0.0);
    let b = (a * a - 1.0).sqrt();
    let turned = if b > DUST { b / libm::tanh(b * scattering) } else { 1.0 / scattering };
    Fraction::saturating((1.0 - g * (a - turned)) / (a - g + turned))
}

/// Contrast: what a film reflects over black, over what it reflects over a ground of 0.8; 1 hides wholly.
#[must_use]
pub fn contrast(swallowed: f64, scattering: f64) -> f64 {
    let over = |ground| over_ground(swallowed, scattering, Fraction::saturating(ground)).get();
    let white = over(WHITE);
    if white > 0.0 { over(BLACK) / white } else { 1.0 }
}

/// Whether so many coats of a colour hide: their contrast against the sheet's mark.
#[must_use]
pub fn hides(swallowed: f64, a_coat: f64, coats: f64, sheet: &Sheet) -> Ruling<Hiding> {
    let found = contrast(swallowed, a_coat * coats);
    let least = sheet.get(Setting::HidingLeast) / PERCENT_A_WHOLE;
    let hiding = if found >= least { Hiding::Hides } else { Hiding::Shows };
    Ruling::by("optics.hiding", hiding)
        .and("optics.kubelka-munk")
        .step("contrast", "R₀ / R₁", Measure::new(found, Unit::Ratio, 3))
        .step("hiding-least", "", Measure::new(least, Unit::Ratio, 3))
}

/// Coats that hide, by the sheet's mark.
///
/// # Errors
/// [`CannotJudge`] when a coat scatters nothing, or more coats were needed than anyone lays.
pub fn coats_to_hide(swallowed: f64, a_coat: f64, sheet: &Sheet) -> Judged<f64> {
    /// More coats than anyone lays for hiding.
    const COATS_MOST: u32 = 60;
    if a_coat <= 0.0 {
        return Err(CannotJudge::without("coat_scatter"));
    }
    for coats in 1..=COATS_MOST {
        let tried = hides(swallowed, a_coat, f64::from(coats), sheet);
        if tried.answer == Hiding::Hides {
            return Ok(tried.map(|_| f64::from(coats)));
        }
    }
    Err(CannotJudge::without("coat_scatter"))
}

/// Whether a colour hides, from what was measured over the black and the white half of a hiding card.
///
/// # Errors
/// [`CannotJudge`] when nothing came back from over white.
pub fn judge_card(over_black: Fraction, over_white: Fraction, sheet: &Sheet) -> Judged<Hiding> {
    if over_white.get() <= 0.0 {
        return Err(CannotJudge::without("over_white"));
    }
    let found = over_black.get() / over_white.get();
    let least = sheet.get(Setting::HidingLeast) / PERCENT_A_WHOLE;
    let hiding = if found >= least { Hiding::Hides } else { Hiding::Shows };
    Ok(Ruling::by("optics.hiding", hiding)
        .step("contrast", "R₀ / R₁", Measure::new(found, Unit::Ratio, 3))
        .given(&[
            ("R₀", Measure::new(over_black.get(), Unit::Ratio, 3)),
            ("R₁", Measure::new(over_white.get(), Unit::Ratio, 3)),
        ])
        .step("hiding-least", "", Measure::new(least, Unit::Ratio, 3)))
}
