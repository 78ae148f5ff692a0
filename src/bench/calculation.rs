//! One entry of the calculator: its name, the facts it needs, what it gives, and the rule behind it.

use super::Facts;
use crate::content::{Content, PROBES, World};
use crate::quantity::{Measure, Unit};
use crate::rules::verdict::Judged;
use serde::Serialize;
use std::collections::BTreeMap;

/// A fact that a calculation takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Needs<'a> {
    /// Key of the fact in `content/facts/`; [`Needs::SOLVENTS`] and [`Needs::PROBES`] stand for many.
    pub key: &'a str,
    /// Whether the calculation works without it.
    pub optional: bool,
}

impl<'a> Needs<'a> {
    /// Stands for how much there is of each solvent of content.
    pub const SOLVENTS: Needs<'static> = Needs { key: "@solvents", optional: true };

    /// Stands for every fact that is a probe.
    pub const PROBES: Needs<'static> = Needs { key: PROBES, optional: true };

    /// A fact that must be told.
    #[must_use]
    pub const fn must(key: &'a str) -> Self {
        Self { key, optional: false }
    }

    /// A fact that may be told.
    #[must_use]
    pub const fn may(key: &'a str) -> Self {
        Self { key, optional: true }
    }
}

/// Something that a calculation gives.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Gives {
    /// A number under a key.
    Number {
        /// Key in the outcome.
        key: &'static str,
        /// Its unit.
        unit: Unit,
    },
    /// A term under a key.
    Term {
        /// Key in the outcome.
        key: &'static str,
        /// The terms that may come out; a list of content as facts name them, such as `@cups`.
        among: &'static [&'static str],
    },
    /// Slugs under a key, none or more.
    List {
        /// Key in the outcome.
        key: &'static str,
    },
    /// Rows under a key, none or more, all of one kind.
    Rows {
        /// Key in the outcome.
        key: &'static str,
        /// Keys of the terms and numbers of a row.
        of: &'static [&'static str],
    },
    /// Words under a key: a message of the content.
    Words {
        /// Key in the outcome.
        key: &'static str,
    },
}

/// One row: terms and numbers by key.
#[derive(Debug, Clone, PartialEq, Serialize, Default)]
pub struct Row {
    /// Slugs, in the order told; the first one says what the row is about.
    pub terms: Vec<(&'static str, String)>,
    /// Numbers, in the order told.
    pub numbers: Vec<(&'static str, Measure)>,
}

impl Row {
    /// A row about a term.
    #[must_use]
    pub fn of(key: &'static str, slug: &str) -> Self {
        Self::default().term(key, slug)
    }

    /// Adds a term.
    #[must_use]
    pub fn term(mut self, key: &'static str, slug: &str) -> Self {
        self.terms.push((key, slug.to_owned()));
        self
    }

    /// Adds a number.
    #[must_use]
    pub fn number(mut self, key: &'static str, measure: Measure) -> Self {
        self.numbers.push((key, measure));
        self
    }
}

/// What came out, by key. Text of a key: `gives.<key>`; of a term: `term.<slug>`.
#[derive(Debug, Clone, PartialEq, Serialize, Default)]
pub struct Outcome {
    /// Numbers.
    pub numbers: BTreeMap<&'static str, Measure>,
    /// Terms.
    pub terms: BTreeMap<&'static str, String>,
    /// Slugs of content, none or more.
    pub lists: BTreeMap<&'static str, Vec<String>>,
    /// Rows, in the order told.
    pub rows: Vec<(&'static str, Vec<Row>)>,
    /// Keys of the messages that say it in words, in the order told.
    pub words: Vec<(&'static str, String)>,
}

impl Outcome {
    /// One number, under `value`.
    #[must_use]
    pub fn value(measure: Measure) -> Self {
        Self::default().number("value", measure)
    }

    /// Adds a number.
    #[must_use]
    pub fn number(mut self, key: &'static str, measure: Measure) -> Self {
        self.numbers.insert(key, measure);
        self
    }

    /// Adds slugs of content.
    #[must_use]
    pub fn list(mut self, key: &'static str, slugs: Vec<String>) -> Self {
        self.lists.insert(key, slugs);
        self
    }

    /// Adds rows.
    #[must_use]
    pub fn rows(mut self, key: &'static str, rows: Vec<Row>) -> Self {
        self.rows.push((key, rows));
        self
    }

    /// Adds words: the message of that key.
    #[must_use]
    pub fn words(mut self, key: &'static str, message: String) -> Self {
        self.words.push((key, message));
        self
    }

    /// Adds a term.
    #[must_use]
    pub fn term(mut self, key: &'static str, slug: &str) -> Self {
        self.terms.insert(key, slug.to_owned());
        self
    }
}

/// An entry of the calculator. Text: `bench.<name>`.
#[derive(Debug, Clone, Copy)]
pub struct Calculation {
    /// Name, as scripts write it.
    pub name: &'static str,
    /// Facts it takes.
    pub needs: &'static [Needs<'static>],
    /// What it gives.
    pub gives: &'static [Gives],
    /// The rule.
    pub run: fn(&Facts, &World<'_>) -> Judged<Outcome>,
}

impl Calculation {
    /// The facts it takes, one for each solvent or probe where it takes them all.
    #[must_use]
    pub fn takes<'a>(&self, content: &'a Content) -> Vec<Needs<'a>> {
        let mut all = Vec::new();
        for need in self.needs {
            if need.key == Needs::SOLVENTS.key {
                all.extend(content.solvents.iter().map(|solvent| Needs::may(&solvent.slug)));
            } else if need.key == PROBES {
                all.extend(content.probes().into_iter().map(|probe| Needs::may(probe.key)));
            } else {
                all.push(*need);
            }
        }
        all
    }
}
