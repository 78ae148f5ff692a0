//! Transparent colour over wood: each coat holds back its share of the light, on the way in and on the way out.
//!
//! Beer-Lambert: absorbances of coats add, whatever the mix of colour and film that makes them. Mirrored and scattered
//! light is left out; light that slants runs longer in the film. One channel or wavelength at a time.

use super::lab::lightness;
use crate::quantity::{Absorbance, DUST, Fraction, Measure, Unit};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// Times that light crosses the film.
const CROSSINGS: f64 = 2.0;

/// A colour as light and dark.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shade {
    /// Share of light that comes back.
    pub reflectance: Fraction,
    /// Lightness L* of that share, 0 to 100.
    pub lightness: f64,
}

/// Wood under colour of an absorbance: R = R₀ 10^(-2 A).
#[must_use]
pub fn under(wood: Fraction, absorbance: f64) -> Shade {
    let reflectance = Fraction::saturating(wood.get() * libm::exp10(-CROSSINGS * absorbance));
    Shade { reflectance, lightness: lightness(reflectance) }
}

/// Wood under coats of transparent colour: R = R₀ 10^(-2 n A). Coats may be parts of coats, as in a fade or a stripe.
#[must_use]
pub fn over_wood(wood: Fraction, a_coat: Absorbance, coats: f64) -> Ruling<Shade> {
    let all = a_coat.get() * coats;
    let shade = under(wood, all);
    let Shade { reflectance, .. } = shade;
    Ruling::by("optics.coats-add", shade)
        .step("absorbance-all", "n A", Measure::new(all, Unit::Ratio, 2))
        .given(&[
            ("n", Measure::new(coats, Unit::Ratio, 1)),
            ("A", Measure::new(a_coat.get(), Unit::Ratio, 3)),
        ])
        .step("reflectance", "R₀ 10^(−2 n A)", Measure::new(reflectance.get(), Unit::Ratio, 3))
        .given(&[
            ("R₀", Measure::new(wood.get(), Unit::Ratio, 3)),
            ("n A", Measure::new(all, Unit::Ratio, 2)),
        ])
        .step("lightness", "L*", Measure::new(shade.lightness, Unit::Ratio, 1))
        .given(&[("R", Measure::new(reflectance.get(), Unit::Ratio, 3))])
}

/// Coats that bring wood to a depth: the fewest after which no more than the wanted share of light comes back.
///
/// # Errors
/// [`CannotJudge`] when a coat holds nothing back or all light has to go.
pub fn coats_to(wood: Fraction, a_coat: Absorbance, wanted: Fraction) -> Judged<f64> {
    if a_coat.get() <= 0.0 {
        return Err(CannotJudge::without("coat_absorbance"));
    }
    if wanted.get() <= 0.0 {
        return Err(CannotJudge::without("wanted_reflectance"));
    }
    let all = (libm::log10(wood.get() / wanted.get()) / CROSSINGS).max(0.0);
    let coats = libm::ceil(all / a_coat.get() - DUST).max(0.0);
    Ok(Ruling::by("optics.coats-add", coats)
        .step("absorbance-wanted", "log(R₀ / R) / 2", Measure::new(all, Unit::Ratio, 2))
        .given(&[
            ("R₀", Measure::new(wood.get(), Unit::Ratio, 3)),
            ("R", Measure::new(wanted.get(), Unit::Ratio, 3)),
        ])
        .step("colour-coats", "⌈A₁ / A⌉", Measure::count(coats))
        .given(&[
            ("A₁", Measure::new(all, Unit::Ratio, 2)),
            ("A", Measure::new(a_coat.get(), Unit::Ratio, 3)),
        ]))
}

/// Absorbance of a coat, from the light that came back before and after it.
///
/// # Errors
/// [`CannotJudge`] when the coat took no light away.
pub fn a_coat(before: Fraction, after: Fraction) -> Judged<Absorbance> {
    if after.get() <= 0.0 || after >= before {
        return Err(CannotJudge::between(&["wood_reflectance", "coat_reflectance"]));
    }
    let coat = Absorbance::saturating(libm::log10(before.get() / after.get()) / CROSSINGS);
    Ok(Ruling::by("optics.coats-add", coat)
        .step("absorbance-coat", "log(R₀ / R₁) / 2", Measure::new(coat.get(), Unit::Ratio, 3))
        .given(&[
            ("R₀", Measure::new(before.get(), Unit::Ratio, 3)),
            ("R₁", Measure::new(after.get(), Unit::Ratio, 3)),
        ]))
}

/// By how much lightness jumps where part of the colour is sanded away: never negative.
#[must_use]
pub fn sanded_through(wood: Fraction, laid: Absorbance, lost: Absorbance) -> Ruling<f64> {
    let left = Absorbance::saturating(laid.get() - lost.get());
    let before = over_wood(wood, laid, 1.0);
    let after = over_wood(wood, left, 1.0);
    let jump = after.answer.lightness - before.answer.lightness;
    Ruling::by("optics.colour-sanded-through", jump)
        .step("lightness-jump", "L*₂ − L*₁", Measure::new(jump, Unit::Ratio, 1))
        .given(&[
            ("L*₁", Measure::new(before.answer.lightness, Unit::Ratio, 1)),
            ("L*₂", Measure::new(after.answer.lightness, Unit::Ratio, 1)),
        ])
}
