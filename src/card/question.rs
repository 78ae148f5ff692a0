//! A question: how a family asks the model. One per card family, a table of plain functions.

use super::{Answer, Dice};
use crate::bench::Facts;
use crate::content::World;
use crate::quantity::{Measure, Unit};
use crate::rules::verdict::Judged;
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

    /// A tempting number.
    #[must_use]
    pub fn number(measure: Measure, slip: &'static str, after: &'static str) -> Self {
        Self { answer: Answer::Number(measure), slip, after }
    }
}

/// One thing to judge or to place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    /// Its slug.
    pub slug: String,
    /// The misconception behind judging it wrongly: text `slip.<slip>`; empty where none is named.
    pub slip: &'static str,
}

impl Item {
    /// An item with its misconception.
    #[must_use]
    pub fn new(slug: &str, slip: &'static str) -> Self {
        Self { slug: slug.to_owned(), slip }
    }
}

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

/// A family's question. Its facts, stage and texts stand in `content/`.
#[derive(Debug, Clone, Copy)]
pub struct Question {
    /// Id of the family in `content/families/`.
    pub id: &'static str,
    /// Fits the drawn facts together, where one follows from another; [`keep`] where none does.
    pub settle: fn(&mut Facts, &World<'_>, &mut Dice),
    /// How it asks.
    pub ask: Ask,
    /// What follows from a wrong answer, where a temptation names nothing else: a consequence id.
    pub after: &'static str,
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
        }
    }
}
