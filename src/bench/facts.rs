//! What is told of a situation: numbers in base units and terms, by the keys of `content/facts/`.

use crate::content::{Content, FactInfo, Units};
use crate::quantity::{
    Celsius, Fraction, Hours, Measure, Micrometres, Millimetres, OutOfRange, PERCENT_A_WHOLE,
    RelativeHumidity, Unit,
};
use crate::rules::term::Term;
use crate::rules::verdict::CannotJudge;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The value of one fact.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum FactValue {
    /// A number in the fact's unit.
    Number(f64),
    /// A term's slug.
    Term(String),
}

/// Facts by key. What is not in it is not told.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
#[serde(transparent)]
pub struct Facts(pub BTreeMap<String, FactValue>);

impl Facts {
    /// Adds a number.
    pub fn set(&mut self, key: &str, value: f64) {
        self.0.insert(key.to_owned(), FactValue::Number(value));
    }

    /// Adds a term.
    pub fn set_term(&mut self, key: &str, slug: &str) {
        self.0.insert(key.to_owned(), FactValue::Term(slug.to_owned()));
    }

    /// A number that may be missing.
    #[must_use]
    pub fn maybe_number(&self, key: &str) -> Option<f64> {
        match self.0.get(key) {
            Some(FactValue::Number(value)) => Some(*value),
            _ => None,
        }
    }

    /// A term's slug that may be missing.
    #[must_use]
    pub fn maybe_slug(&self, key: &str) -> Option<&str> {
        match self.0.get(key) {
            Some(FactValue::Term(slug)) => Some(slug),
            _ => None,
        }
    }

    /// A number that the rule needs.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told.
    pub fn number(&self, key: &str) -> Result<f64, CannotJudge> {
        self.maybe_number(key).ok_or_else(|| CannotJudge::without(key))
    }

    /// A term's slug that the rule needs.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told.
    pub fn slug(&self, key: &str) -> Result<&str, CannotJudge> {
        self.maybe_slug(key).ok_or_else(|| CannotJudge::without(key))
    }

    /// A term that the rule needs.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told or not of that list.
    pub fn term<T: Term>(&self, key: &str) -> Result<T, CannotJudge> {
        T::from_slug(self.slug(key)?).ok_or_else(|| CannotJudge::without(key))
    }

    /// Whether a two-valued fact reads `yes`.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told.
    pub fn yes(&self, key: &str) -> Result<bool, CannotJudge> {
        Ok(self.slug(key)? == "yes")
    }

    fn quantity<T>(&self, key: &str, make: fn(f64) -> Result<T, OutOfRange>) -> Result<T, CannotJudge> {
        make(self.number(key)?).map_err(|_| CannotJudge::without(key))
    }

    /// A whole number of things that the rule needs.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told, not whole, or more than a job ever has.
    pub fn count(&self, key: &str) -> Result<u32, CannotJudge> {
        /// No fact counts further.
        const MOST: u32 = 1_000;
        let told = self.number(key)?;
        (0..=MOST).find(|whole| f64::from(*whole) == told).ok_or_else(|| CannotJudge::without(key))
    }

    /// A temperature that the rule needs.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told.
    pub fn celsius(&self, key: &str) -> Result<Celsius, CannotJudge> {
        self.quantity(key, Celsius::new)
    }

    /// A humidity that the rule needs.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told.
    pub fn humidity(&self, key: &str) -> Result<RelativeHumidity, CannotJudge> {
        self.quantity(key, RelativeHumidity::new)
    }

    /// A time that the rule needs.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told.
    pub fn hours(&self, key: &str) -> Result<Hours, CannotJudge> {
        self.quantity(key, Hours::new)
    }

    /// A thickness that the rule needs.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told.
    pub fn micrometres(&self, key: &str) -> Result<Micrometres, CannotJudge> {
        self.quantity(key, Micrometres::new)
    }

    /// A share that the rule needs; the fact is told in per cent.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told.
    pub fn share(&self, key: &str) -> Result<Fraction, CannotJudge> {
        self.quantity(key, |percent| Fraction::new(percent / PERCENT_A_WHOLE))
    }

    /// A length that the rule needs.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told.
    pub fn millimetres(&self, key: &str) -> Result<Millimetres, CannotJudge> {
        self.quantity(key, Millimetres::new)
    }
}

impl FactInfo {
    /// A number that somebody typed, in their unit or with its own behind it, in the unit of the fact; `None` where it is no
    /// number of that dimension or lies outside the fact's range.
    #[must_use]
    pub fn read(&self, units: Units, typed: &str) -> Option<f64> {
        let unit = self.unit?;
        let bare = typed.trim().chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+'));
        let measure = Measure::parse(typed, unit.dimension())?;
        let from = if bare { units.shown(unit) } else { measure.unit };
        from.convert(measure.value, unit).filter(|number| self.holds(*number))
    }

    /// Whether a number in the fact's unit lies in its range.
    #[must_use]
    pub fn holds(&self, number: f64) -> bool {
        (self.min..=self.max).contains(&number)
    }

    /// The slugs that the fact may take.
    #[must_use]
    pub fn slugs<'a>(&'a self, content: &'a Content) -> Vec<&'a str> {
        self.terms.iter().flat_map(|term| content.listed(term)).collect()
    }

    /// A number of this fact as it is shown.
    #[must_use]
    pub fn measure(&self, number: f64) -> Measure {
        Measure::new(number, self.unit.unwrap_or(Unit::Count), self.decimals)
    }
}
