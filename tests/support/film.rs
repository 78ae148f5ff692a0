//! Film in short.

use stepboard::quantity::{Fraction, Micrometres};
use stepboard::rules::film;
use stepboard::rules::mixing::Thinning;

pub(crate) fn um(value: f64) -> Micrometres {
    Micrometres::new(value).expect("a thickness")
}

pub(crate) fn share(value: f64) -> Fraction {
    Fraction::new(value).expect("a share")
}

pub(crate) fn thinned(ratio: f64) -> Thinning {
    Thinning::of_ratio(ratio).expect("a ratio")
}

/// Dry film in micrometres of a wet one, by share of solids and ratio of thinner.
pub(crate) fn dry(wet: f64, solids: f64, ratio: f64) -> f64 {
    film::dry(um(wet), share(solids), thinned(ratio)).answer.get()
}
