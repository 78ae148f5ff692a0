//! Where one stands on the floor, what is picked to be done there, and what was last told.

use super::words;
use crate::app::state::Shop;
use crate::rules::term::{Stage, Term};
use crate::terms;
use crate::walk::guided::Warning;
use crate::walk::names::{DryTest, Operation};
use crate::walk::{Decision, Impossible};
use std::rc::Rc;
use yew::AttrValue;

terms! {
    /// Places of the finish room, as they are gone to. Text: `app.walk.spot.<slug>`.
    Spot {
        /// The bench.
        Bench = "bench",
        /// The booth.
        Booth = "booth",
        /// The rack: waits, and what ends a walk.
        Rack = "rack",
        /// The wheel.
        Wheel = "wheel",
        /// The room: what is worn, and duties.
        Room = "room",
    }
}

/// What is picked to be done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app::pages::walk) enum Task {
    Work(Operation),
    Strip,
    Hours,
    Morning,
    Until(DryTest),
    Offer,
    HandOver,
}

impl Task {
    /// The band of the board that it belongs to, for the cautions.
    pub(super) fn stage(self) -> Option<Stage> {
        match self {
            Self::Work(operation) => Some(operation.stage()),
            Self::Strip => Some(Stage::Sand),
            _ => None,
        }
    }

    /// Its name.
    pub(super) fn slug(self) -> &'static str {
        match self {
            Self::Work(operation) => operation.slug(),
            Self::Strip => "strip",
            Self::Hours => "wait-hours",
            Self::Morning => "wait-morning",
            Self::Until(test) => test.slug(),
            Self::Offer => "offer",
            Self::HandOver => "hand-over",
        }
    }

    /// What it is called.
    pub(super) fn name(self, shop: &Shop) -> AttrValue {
        match self {
            Self::Work(operation) => words::operation(shop, operation),
            Self::Strip => shop.say("walk.strip"),
            Self::Hours => shop.say("walk.wait.hours"),
            Self::Morning => shop.say("walk.wait.morning"),
            Self::Until(test) => words::until(shop, test),
            Self::Offer => shop.say("walk.offer"),
            Self::HandOver => shop.say("walk.hand-over"),
        }
    }

    pub(super) const fn takes_parts(self) -> bool {
        matches!(self, Self::Work(_) | Self::Strip)
    }
}

/// What was last told.
#[derive(Debug, Clone, PartialEq, Default)]
pub(in crate::app::pages::walk) enum Told {
    #[default]
    Nothing,
    /// It cannot be done.
    Refused(Rc<Impossible>),
    /// What it would spoil, told before.
    Warned(Rc<Vec<Warning>>, Rc<Vec<Decision>>),
    /// Something came to light, in this turn.
    Shows(usize),
    /// It was done, from this turn on.
    Done(usize),
}

impl Told {
    pub(super) const fn is_nothing(&self) -> bool {
        matches!(self, Self::Nothing)
    }
}

/// Decisions that are to be carried out, one after another or none.
#[derive(Debug, Clone)]
pub(in crate::app::pages::walk) struct Act {
    pub(super) decisions: Vec<Decision>,
    /// Whether what they spoil was read.
    pub(super) sure: bool,
}

impl Act {
    /// What is done at one touch.
    pub(super) const fn now(decisions: Vec<Decision>) -> Self {
        Self { decisions, sure: false }
    }
}
