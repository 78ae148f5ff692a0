//! Mixing against published values; each check names its source. What percent thinned means and what a shop lets pass are
//! conventions and settings, not checks.

#[path = "../support/mod.rs"]
mod support;

mod cups;
mod emissions;
mod ratios;
mod two_part;

use stepboard::bench::{FactValue, Facts, Outcome, calculations};
use stepboard::content::World;
use stepboard::quantity::{Celsius, Density, Fraction, Millilitres, Seconds, Viscosity};
use stepboard::rules::mixing::Thinning;
use stepboard::rules::verdict::CannotJudge;
use support::content;

/// Per cents are printed to one decimal.
pub(crate) const PERCENT_TOLERANCE: f64 = 0.1;
/// Shares, volumes and weights that are exact arithmetic.
pub(crate) const EXACT: f64 = 1e-9;
/// US fluid ounce in millilitres: NIST Handbook 44, appendix C.
pub(crate) const ML_AN_OUNCE: f64 = 29.573_529_562_5;

pub(crate) fn fraction(percent: f64) -> Fraction {
    Fraction::new(percent / 100.0).expect("a share")
}

pub(crate) fn share(value: f64) -> Fraction {
    Fraction::new(value).expect("a share")
}

pub(crate) fn parts(material: f64, thinner: f64) -> Thinning {
    Thinning::of_parts(material, thinner).expect("a ratio")
}

pub(crate) fn ml(value: f64) -> Millilitres {
    Millilitres::new(value).expect("a volume")
}

pub(crate) fn seconds(value: f64) -> Seconds {
    Seconds::new(value).expect("a time")
}

pub(crate) fn thick(value: f64) -> Viscosity {
    Viscosity::new(value).expect("a viscosity")
}

pub(crate) fn celsius(value: f64) -> Celsius {
    Celsius::new(value).expect("a temperature")
}

pub(crate) fn density(value: f64) -> Density {
    Density::new(value).expect("a density")
}

/// What the calculator answers.
pub(crate) fn work(name: &str, told: &[(&str, f64)], terms: &[(&str, &str)]) -> Result<Outcome, CannotJudge> {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let entry = calculations().into_iter().find(|entry| entry.name == name).expect("an entry");
    let numbers = told.iter().map(|(key, value)| ((*key).to_owned(), FactValue::Number(*value)));
    let terms = terms.iter().map(|(key, slug)| ((*key).to_owned(), FactValue::Term((*slug).to_owned())));
    (entry.run)(&Facts(numbers.chain(terms).collect()), &world).map(|ruling| ruling.answer)
}
