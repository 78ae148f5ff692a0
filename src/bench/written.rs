//! How scripts write a fact: a number in its unit, a term by its slug, a share from 0 to 1.
//!
//! Screens and cards speak of a share in per cent, and so do [`Facts`]; a script writes `0.2` or `20%`. A bare `20` is
//! refused, since it may mean either.

use super::Facts;
use crate::content::{Content, FactInfo};
use crate::quantity::{Measure, PERCENT_A_WHOLE, Unit, read_number};

/// A fact that was told wrongly.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum BadFact {
    /// No such key.
    #[error("`{0}` is not a fact")]
    Unknown(String),
    /// Not a number, or out of range.
    #[error("`{key}` is `{given}`; {allowed} is allowed")]
    Number {
        /// Key of the fact.
        key: String,
        /// What was given.
        given: String,
        /// The range in words.
        allowed: String,
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

/// The unit and range in which scripts write a fact.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Written {
    /// Unit.
    pub unit: Unit,
    /// Least number.
    pub min: f64,
    /// Greatest number.
    pub max: f64,
}

impl FactInfo {
    /// The unit and range in which scripts write this fact; `None` for a term.
    #[must_use]
    pub fn written(&self) -> Option<Written> {
        let (min, max) = (self.min, self.max);
        Some(match self.unit? {
            Unit::Percent if self.share => {
                Written { unit: Unit::Ratio, min: min / PERCENT_A_WHOLE, max: max / PERCENT_A_WHOLE }
            }
            unit => Written { unit, min, max },
        })
    }

    /// A number in the fact's unit from text as scripts write it: bare, or with a unit of its kind (`P220`, `70 °F`). A
    /// sign `%` may stand behind what is told in per cent.
    fn number_of(&self, given: &str) -> Option<f64> {
        let bare = given.trim().strip_suffix(Unit::Percent.symbol());
        let number = match bare {
            Some(percent) if self.unit == Some(Unit::Percent) => read_number(percent)?,
            Some(_) => return None,
            None if self.share => read_number(given)? * PERCENT_A_WHOLE,
            None => read_number(given).or_else(|| self.with_unit(given))?,
        };
        self.holds(number).then_some(number)
    }

    /// A number with its unit written to it.
    fn with_unit(&self, given: &str) -> Option<f64> {
        let unit = self.unit?;
        let told = Measure::parse(given, unit.dimension())?;
        told.unit.convert(told.value, unit)
    }

    fn allowed(&self) -> String {
        let written = self.written().unwrap_or(Written { unit: Unit::Count, min: self.min, max: self.max });
        let symbol = written.unit.symbol();
        let range = format!("a number from {} to {}", written.min, written.max);
        match self.share {
            true => {
                let percent = |number| Measure::new(number, Unit::Percent, self.decimals).text();
                format!(
                    "a share from {} to {}, or {} to {},",
                    written.min,
                    written.max,
                    percent(self.min),
                    percent(self.max)
                )
            }
            false if symbol.is_empty() => range,
            false => format!("{range} {symbol}"),
        }
    }
}

impl Facts {
    /// Reads one fact from text as scripts write it, checked against what content says of it.
    ///
    /// # Errors
    /// [`BadFact`] naming the key, what was given and what is allowed.
    pub fn read(&mut self, content: &Content, key: &str, given: &str) -> Result<(), BadFact> {
        let info = content.fact(key).ok_or_else(|| BadFact::Unknown(key.to_owned()))?;
        if info.unit.is_some() {
            let number = info.number_of(given).ok_or_else(|| BadFact::Number {
                key: key.to_owned(),
                given: given.to_owned(),
                allowed: info.allowed(),
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
