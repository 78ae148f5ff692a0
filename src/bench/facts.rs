//! What is told of a situation: numbers in base units and terms, by the keys of `content/facts/`.

use crate::content::{Content, FactInfo};
use crate::quantity::{
    Celsius, Hours, Measure, Micrometres, Millimetres, OutOfRange, RelativeHumidity, Unit, read_number,
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

/// A fact that was told wrongly.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum BadFact {
    /// No such key.
    #[error("`{0}` is not a fact")]
    Unknown(String),
    /// Not a number, or out of range.
    #[error("`{key}` is `{given}`; a number from {min} to {max} {unit} is allowed")]
    Number {
        /// Key of the fact.
        key: String,
        /// What was given.
        given: String,
        /// Least value.
        min: f64,
        /// Greatest value.
        max: f64,
        /// Unit symbol.
        unit: &'static str,
    },
    /// Not one of the terms.
    #[error("`{key}` is `{given}`; allowed: {allowed}")]
    Term {
        /// Key of the fact.
        key: String,
        /// What was given.
        given: String,
        /// The terms allowed.
        allowed: String,
    },
}

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

    /// A length that the rule needs.
    ///
    /// # Errors
    /// [`CannotJudge`] when it is not told.
    pub fn millimetres(&self, key: &str) -> Result<Millimetres, CannotJudge> {
        self.quantity(key, Millimetres::new)
    }

    /// Reads one fact from text as scripts write it, checked against what content says of it.
    ///
    /// # Errors
    /// [`BadFact`] naming the key, what was given and what is allowed.
    pub fn read(&mut self, content: &Content, key: &str, given: &str) -> Result<(), BadFact> {
        let info = content.fact(key).ok_or_else(|| BadFact::Unknown(key.to_owned()))?;
        if info.unit.is_some() {
            let number = read_number(given).filter(|n| info.holds(*n));
            let number = number.ok_or_else(|| BadFact::Number {
                key: key.to_owned(),
                given: given.to_owned(),
                min: info.min,
                max: info.max,
                unit: info.unit.map_or("", Unit::symbol),
            })?;
            self.set(key, number);
        } else {
            let allowed = info.slugs(content);
            if !allowed.contains(&given) {
                let (key, given) = (key.to_owned(), given.to_owned());
                return Err(BadFact::Term { key, given, allowed: allowed.join(" ") });
            }
            self.set_term(key, given);
        }
        Ok(())
    }
}

impl FactInfo {
    /// Whether a number lies in the fact's range.
    #[must_use]
    pub fn holds(&self, number: f64) -> bool {
        (self.min..=self.max).contains(&number)
    }

    /// The slugs that the fact may take.
    #[must_use]
    pub fn slugs<'a>(&'a self, content: &'a Content) -> Vec<&'a str> {
        let mut found = Vec::new();
        for term in &self.terms {
            match term.as_str() {
                "@woods" => found.extend(content.woods.iter().map(|wood| wood.slug.as_str())),
                "@faults" => found.extend(content.faults.iter().map(|fault| fault.id.as_str())),
                "@tickets" => found.extend(content.tickets.iter().map(|ticket| ticket.slug.as_str())),
                slug => found.push(slug),
            }
        }
        found
    }

    /// A number of this fact as it is shown.
    #[must_use]
    pub fn measure(&self, number: f64) -> Measure {
        Measure::new(number, self.unit.unwrap_or(Unit::Count), self.decimals)
    }
}
