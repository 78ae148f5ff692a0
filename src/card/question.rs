//! A question: how a family asks the model. One per card family, a table of plain functions.

use super::diagnosis::{Diagnosis, Offered, Weighed};
use super::{Answer, Dice};
use crate::bench::Facts;
use crate::content::World;
use crate::quantity::{Measure, Unit};
use crate::rules::verdict::{CannotJudge, Judged};
use crate::spraying::Setup;
use serde::{Deserialize, Serialize};

/// The kind of answer that is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Choose one.
    ChooseOne,
    /// Choose all that apply.
    ChooseAll,
    /// Put in order.
    Order,
    /// A number with a unit.
    Number,
    /// Point at a place of a panel.
    Point,
    /// Test a panel, then name fault, cause and remedy.
    Diagnose,
    /// Spray a face.
    Spray,
}

impl Kind {
    /// Whether one of several options is chosen.
    #[must_use]
    pub fn is_choice(self) -> bool {
        self == Self::ChooseOne
    }
}

/// A tempting wrong answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Tempt {
    /// What it says.
    pub answer: Answer,
    /// The misconception it stands for: text `slip.<slip>`.
    pub slip: &'static str,
    /// What follows: a consequence id, or empty for the family's own.
    pub after: &'static str,
}

impl Tempt {
    /// A tempting term.
    #[must_use]
    pub fn term(slug: &str, slip: &'static str, after: &'static str) -> Self {
        Self { answer: Answer::term(slug), slip, after }
    }

    /// A tempting number. What follows goes by the side on which it lies: see [`After`].
    #[must_use]
    pub const fn number(measure: Measure, slip: &'static str) -> Self {
        Self { answer: Answer::Number(measure), slip, after: "" }
    }
}

/// One thing to judge or to place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    /// Its slug.
    pub slug: String,
    /// The misconception behind judging it wrongly: text `slip.<slip>`; empty where none is named.
    pub slip: &'static str,
    /// What follows from picking it where it does not apply: a consequence id, or empty for the family's own.
    pub needless: &'static str,
    /// What follows from leaving it out where it applies: a consequence id, or empty for the family's own.
    pub missed: &'static str,
}

impl Item {
    /// An item with its misconception.
    #[must_use]
    pub fn new(slug: &str, slip: &'static str) -> Self {
        Self { slug: slug.to_owned(), slip, needless: "", missed: "" }
    }

    /// Names what follows from picking it needlessly and from leaving it out.
    #[must_use]
    pub const fn costing(mut self, needless: &'static str, missed: &'static str) -> Self {
        (self.needless, self.missed) = (needless, missed);
        self
    }
}

/// What a wrong answer shows: a misconception, text `slip.<slip>`, and what follows, a consequence id, or empty for the
/// family's own.
pub type Astray = (&'static str, &'static str);

/// How a family asks. Every function sees only the facts that are told; `CannotJudge` makes "not enough is told" right.
#[derive(Debug, Clone, Copy)]
pub enum Ask {
    /// Choose one.
    One {
        /// The right answer.
        answer: fn(&Facts, &World<'_>) -> Judged<Answer>,
        /// Tempting wrong ones; those that turn out right are dropped.
        tempt: fn(&Facts, &World<'_>) -> Vec<Tempt>,
    },
    /// Choose all that apply.
    All {
        /// Four to six things to judge; drawn once, from the full facts.
        items: fn(&Facts, &World<'_>, &mut Dice) -> Vec<Item>,
        /// Whether one of them applies, judged alone.
        holds: fn(&Facts, &World<'_>, &str) -> Judged<bool>,
    },
    /// Put in order.
    Order {
        /// Three to six things to place.
        items: fn(&Facts, &World<'_>, &mut Dice) -> Vec<Item>,
        /// Whether an order is accepted. Several may be.
        accepts: fn(&Facts, &World<'_>, &[String]) -> Judged<bool>,
    },
    /// Point at the fault of a panel.
    Point {
        /// Whether there is one to point at.
        there: fn(&Facts, &World<'_>) -> Judged<()>,
    },
    /// Test a panel, then name fault, cause and remedy.
    Diagnose {
        /// Tests at hand, and what can be named; drawn once, from the full facts.
        offer: fn(&Facts, &World<'_>, &mut Dice) -> Option<Offered>,
        /// The right diagnosis, with no more tests than it needs.
        answer: fn(&Facts, &World<'_>, &Offered) -> Judged<Diagnosis>,
        /// What is wrong, beside the right diagnosis, with the one given last; none where it is in order.
        astray: fn(&Facts, &World<'_>, &Offered, &Diagnosis, &Diagnosis) -> Option<Astray>,
        /// What each test of the one given last was worth, and which are missing, beside the right diagnosis.
        weigh: fn(&Facts, &World<'_>, &Offered, &Diagnosis, &Diagnosis) -> Vec<Weighed>,
    },
    /// Spray a face; a run that passes is right.
    Spray {
        /// The face with its gun and what is to lie on it.
        setup: fn(&Facts, &World<'_>) -> Result<Setup, CannotJudge>,
    },
    /// A number with a unit.
    Number {
        /// The right number.
        answer: fn(&Facts, &World<'_>) -> Judged<Measure>,
        /// Numbers that a known misconception leads to.
        tempt: fn(&Facts, &World<'_>) -> Vec<Tempt>,
        /// Unit that is asked for; any of the same dimension is accepted.
        unit: Unit,
    },
}

/// What follows from a wrong answer: consequence ids. A number harms the work on one side of the right one and often
/// costs only time or material on the other, so each side may have its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct After {
    always: &'static str,
    above: Option<&'static str>,
    below: Option<&'static str>,
}

impl After {
    /// One consequence for every wrong answer.
    #[must_use]
    pub const fn is(always: &'static str) -> Self {
        Self { always, above: None, below: None }
    }

    /// Another one where a number above the right one was given.
    #[must_use]
    pub const fn above(self, id: &'static str) -> Self {
        Self { above: Some(id), ..self }
    }

    /// Another one where a number below the right one was given.
    #[must_use]
    pub const fn below(self, id: &'static str) -> Self {
        Self { below: Some(id), ..self }
    }

    /// What follows from a wrong answer to a question whose right answer is known.
    #[must_use]
    pub fn of(self, given: &Answer, right: &Answer) -> &'static str {
        let side = match (given, right) {
            (Answer::Number(given), Answer::Number(right)) if given.base() > right.base() => self.above,
            (Answer::Number(given), Answer::Number(right)) if given.base() < right.base() => self.below,
            _ => None,
        };
        side.unwrap_or(self.always)
    }
}

/// A family's question. Its facts, stage and texts stand in `content/`.
#[derive(Debug, Clone, Copy)]
pub struct Question {
    /// Id of the family in `content/families/`.
    pub id: &'static str,
    /// Fits the drawn facts together, where one follows from another; [`keep`] where none does.
    pub settle: fn(&mut Facts, &World<'_>, &mut Dice),
    /// How it asks.
    pub ask: Ask,
    /// What follows from a wrong answer, where a temptation names nothing else: consequence ids.
    pub after: After,
}

/// Leaves drawn facts as they are.
pub const fn keep(_: &mut Facts, _: &World<'_>, _: &mut Dice) {}

impl Question {
    /// The kind of answer it asks for.
    #[must_use]
    pub const fn kind(&self) -> Kind {
        match self.ask {
            Ask::One { .. } => Kind::ChooseOne,
            Ask::All { .. } => Kind::ChooseAll,
            Ask::Order { .. } => Kind::Order,
            Ask::Number { .. } => Kind::Number,
            Ask::Point { .. } => Kind::Point,
            Ask::Diagnose { .. } => Kind::Diagnose,
            Ask::Spray { .. } => Kind::Spray,
        }
    }
}
