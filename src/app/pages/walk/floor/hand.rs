//! What is in hand on the floor: what is picked, its values as they are being set, what was last told.

use crate::content::Ask;
use crate::quantity::Hours;
use crate::rules::term::{Stage, Term};
use crate::terms;
use crate::walk::decision::{Offer, Parts};
use crate::walk::first::First;
use crate::walk::guided::Warning;
use crate::walk::names::{DryTest, Operation};
use crate::walk::{Decision, Impossible, RoomAct, Wait, Walk, Work, Worn};
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;
use yew::prelude::*;

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
    Until,
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
            Self::Until => "wait-until",
            Self::Offer => "offer",
            Self::HandOver => "hand-over",
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

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app::pages::walk) struct Hand {
    pub(super) at: Spot,
    pub(super) task: Option<Task>,
    /// Parts that are picked, and the one that is looked at.
    pub(super) parts: BTreeSet<usize>,
    pub(super) looked: usize,
    pub(super) numbers: BTreeMap<Ask, f64>,
    /// What was typed and is no value yet.
    pub(super) typed: BTreeMap<Ask, String>,
    pub(super) picks: BTreeMap<String, String>,
    pub(super) wait_h: f64,
    /// Hours that were typed and are none yet.
    pub(super) wait_typed: Option<String>,
    pub(super) test: DryTest,
    pub(super) day: u32,
    pub(super) worn: Worn,
    pub(super) duties: BTreeSet<RoomAct>,
    pub(super) told: Told,
    /// Counts what was told, so that the same told twice is told twice.
    pub(super) news: u32,
}

/// A change of what is in hand.
pub(in crate::app::pages::walk) struct Change(Box<dyn FnOnce(&mut Hand)>);

impl Change {
    pub(super) fn new(set: impl FnOnce(&mut Hand) + 'static) -> Self {
        Self(Box::new(set))
    }
}

impl Reducible for Hand {
    type Action = Change;

    fn reduce(self: Rc<Self>, change: Change) -> Rc<Self> {
        let mut next = Rc::unwrap_or_clone(self);
        (change.0)(&mut next);
        Rc::new(next)
    }
}

/// Hours that a wait begins with.
const WAIT_H: f64 = 1.0;

impl Hand {
    pub(super) fn new(walk: &Walk) -> Self {
        Self {
            at: Spot::Bench,
            task: None,
            parts: (0..walk.start().parts()).collect(),
            looked: 0,
            numbers: BTreeMap::new(),
            typed: BTreeMap::new(),
            picks: BTreeMap::new(),
            wait_h: WAIT_H,
            wait_typed: None,
            test: DryTest::Smell,
            day: walk.start().info.ticket.days.saturating_add(1),
            worn: walk.room().worn,
            duties: BTreeSet::new(),
            told: Told::Nothing,
            news: 0,
        }
    }

    /// Picks something; its values are those that it was last done with on this walk.
    pub(super) fn pick(&mut self, task: Task, last: Option<&Work>) {
        self.task = Some(task);
        self.typed.clear();
        self.wait_typed = None;
        self.numbers = last.map(|last| last.numbers.clone()).unwrap_or_default();
        self.picks = last.map(|last| last.picks.clone()).unwrap_or_default();
        self.tell(Told::Nothing);
    }

    pub(super) fn go(&mut self, spot: Spot) {
        (self.at, self.task) = (spot, None);
        self.tell(Told::Nothing);
    }

    pub(super) fn tell(&mut self, told: Told) {
        self.told = told;
        self.news = self.news.wrapping_add(1);
    }

    /// Begins what has to be done first.
    pub(super) fn begin(&mut self, first: First, spot: Option<Spot>, last: Option<&Work>) {
        match first {
            First::Work(operation) => self.pick(Task::Work(operation), last),
            First::Strip => self.pick(Task::Strip, None),
            First::Wait(Wait::Morning) => self.pick(Task::Morning, None),
            First::Wait(Wait::Hours(hours)) => {
                self.wait_h = hours.get();
                self.pick(Task::Hours, None);
            }
            First::Wait(Wait::Until(test)) => {
                self.test = test;
                self.pick(Task::Until, None);
            }
            First::Room(duty) => {
                self.task = None;
                self.duties.insert(duty);
                self.tell(Told::Nothing);
            }
            First::Offer => self.pick(Task::Offer, None),
            First::HandOver => self.pick(Task::HandOver, None),
        }
        self.at = spot.unwrap_or(match first {
            First::Room(_) => Spot::Room,
            First::Work(_) | First::Strip => Spot::Bench,
            First::Wait(_) | First::Offer | First::HandOver => Spot::Rack,
        });
    }

    /// After decisions were carried out, from that turn on.
    pub(super) fn done(&mut self, walk: &Walk, from: usize) {
        let shown = (from..).zip(walk.turns().iter().skip(from)).find(|(_, turn)| !turn.shown.is_empty());
        self.task = None;
        self.duties.clear();
        self.worn = walk.room().worn;
        self.tell(shown.map_or(Told::Done(from), |(turn, _)| Told::Shows(turn)));
    }

    pub(super) fn picked_parts(&self) -> Vec<usize> {
        self.parts.iter().copied().collect()
    }

    /// The decision that is picked, as its values are set.
    pub(super) fn decision(&self, task: Task) -> Decision {
        let parts = self.picked_parts();
        match task {
            Task::Work(operation) => Decision::Work(Work {
                operation,
                parts,
                numbers: self.numbers.clone(),
                picks: self.picks.clone(),
            }),
            Task::Strip => Decision::Strip(Parts { parts }),
            Task::Hours => Decision::Wait(Wait::Hours(Hours::saturating(self.wait_h))),
            Task::Morning => Decision::Wait(Wait::Morning),
            Task::Until => Decision::Wait(Wait::Until(self.test)),
            Task::Offer => Decision::Offer(Offer { day: self.day }),
            Task::HandOver => Decision::HandOver,
        }
    }
}

/// The last time that an operation was done on a walk.
pub(super) fn last(walk: &Walk, operation: Operation) -> Option<Work> {
    let works = walk.turns().iter().rev().filter_map(|turn| match &turn.decision {
        Decision::Work(work) => Some(work),
        _ => None,
    });
    works.into_iter().find(|work| work.operation == operation).cloned()
}
