//! What is in hand on the floor: what is picked, its values as they are being set, what was last told.

use super::task::{Spot, Task, Told};
use crate::content::Ask;
use crate::quantity::Hours;
use crate::rules::term::Term;
use crate::walk::decision::{Offer, Parts};
use crate::walk::{Decision, RoomAct, Wait, Walk, Work, Worn};
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;
use yew::prelude::*;

/// The values of an operation as they are being set.
#[derive(Debug, Clone, PartialEq, Default)]
pub(in crate::app::pages::walk) struct Values {
    pub(super) numbers: BTreeMap<Ask, f64>,
    /// What was typed and is no value yet.
    pub(super) typed: BTreeMap<Ask, String>,
    pub(super) picks: BTreeMap<String, String>,
}

impl From<Work> for Values {
    fn from(work: Work) -> Self {
        Self { numbers: work.numbers, picks: work.picks, typed: BTreeMap::new() }
    }
}

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app::pages::walk) struct Hand {
    pub(super) at: Spot,
    pub(super) task: Option<Task>,
    /// What was left unfinished to see to something first: it is gone on with once that is done.
    pub(super) left: Option<(Spot, Task)>,
    /// Parts that are picked, and the one that is looked at.
    pub(super) parts: BTreeSet<usize>,
    pub(super) looked: usize,
    pub(super) values: Values,
    /// Values that were set and not used yet, by what they are for.
    drafts: BTreeMap<&'static str, Values>,
    pub(super) wait_h: f64,
    /// Hours that were typed and are none yet.
    pub(super) wait_typed: Option<String>,
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
            left: None,
            parts: (0..walk.start().parts()).collect(),
            looked: 0,
            values: Values::default(),
            drafts: BTreeMap::new(),
            wait_h: WAIT_H,
            wait_typed: None,
            day: walk.start().info.ticket.days.saturating_add(1),
            worn: walk.room().worn,
            duties: BTreeSet::new(),
            told: Told::Nothing,
            news: 0,
        }
    }

    /// Picks something; what was set of it before is still set, else its values are those recalled.
    pub(super) fn pick(&mut self, task: Task, recalled: Values) {
        self.put_by();
        self.left = None;
        self.take_up(task, recalled);
        self.tell(Told::Nothing);
    }

    /// Picks something with exactly these values.
    pub(super) fn set(&mut self, task: Task, values: Values) {
        self.put_by();
        self.drafts.remove(task.slug());
        self.left = None;
        self.take_up(task, values);
    }

    fn take_up(&mut self, task: Task, recalled: Values) {
        self.task = Some(task);
        self.wait_typed = None;
        self.values = self.drafts.remove(task.slug()).unwrap_or(recalled);
    }

    /// Keeps what is being set until it is gone on with.
    fn put_by(&mut self) {
        if let Some(task @ Task::Work(_)) = self.task.take() {
            self.drafts.insert(task.slug(), std::mem::take(&mut self.values));
        }
    }

    /// Leaves what is being set to see to something else first.
    pub(super) fn leave_for(&mut self, spot: Spot) {
        self.left = self.task.filter(|task| task.takes_parts()).map(|task| (self.at, task)).or(self.left);
        self.put_by();
        self.at = spot;
    }

    /// Goes somewhere; what was left there is gone on with.
    pub(super) fn go(&mut self, spot: Spot) {
        self.leave_for(spot);
        match self.left {
            Some((at, task)) if at == spot => {
                self.take_up(task, Values::default());
                self.left = None;
            }
            Some(_) if spot == Spot::Room => {}
            _ => self.left = None,
        }
        self.tell(Told::Nothing);
    }

    /// Back from a form to the list.
    pub(super) fn close(&mut self) {
        self.put_by();
        self.left = None;
        self.tell(Told::Nothing);
    }

    pub(super) fn tell(&mut self, told: Told) {
        self.told = told;
        self.news = self.news.wrapping_add(1);
    }

    /// After decisions were carried out, from that turn on.
    pub(super) fn done(&mut self, walk: &Walk, from: usize) {
        let shown = (from..).zip(walk.turns().iter().skip(from)).find(|(_, turn)| !turn.shown.is_empty());
        for turn in walk.turns().iter().skip(from) {
            if let Some(operation) = turn.decision.operation() {
                self.drafts.remove(operation.slug());
            }
        }
        (self.task, self.values) = (None, Values::default());
        self.duties.clear();
        self.worn = walk.room().worn;
        if let Some((at, task)) = self.left.take().filter(|_| shown.is_none()) {
            self.at = at;
            self.take_up(task, Values::default());
        }
        self.tell(shown.map_or(Told::Done(from), |(turn, _)| Told::Shows(turn)));
    }

    /// Takes a part to what is picked, or away from it, and looks at it.
    pub(super) fn touch(&mut self, part: usize) {
        let mut parts = self.parts.clone();
        if !parts.remove(&part) {
            parts.insert(part);
        }
        self.looked = part;
        self.set_parts(parts);
    }

    /// Picks exactly these parts; what was warned of was said of others.
    pub(super) fn set_parts(&mut self, parts: BTreeSet<usize>) {
        self.parts = parts;
        if matches!(self.told, Told::Warned(..)) {
            self.tell(Told::Nothing);
        }
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
                numbers: self.values.numbers.clone(),
                picks: self.values.picks.clone(),
            }),
            Task::Strip => Decision::Strip(Parts { parts }),
            Task::Hours => Decision::Wait(Wait::Hours(Hours::saturating(self.wait_h))),
            Task::Morning => Decision::Wait(Wait::Morning),
            Task::Until(test) => Decision::Wait(Wait::Until(test)),
            Task::Offer => Decision::Offer(Offer { day: self.day }),
            Task::HandOver => Decision::HandOver,
        }
    }
}
