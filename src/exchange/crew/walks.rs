//! The walks of one person: how many decisions, how many of them wrong, and how each ended.

use crate::record::{Decided, Event, Inspected, Retold, WalkStep, Walked, Way};
use crate::terms;

terms! {
    /// How a walk ended. Text: `app.walked.came.<slug>`.
    WalkCame {
        /// The work was handed over.
        Over = "over",
        /// It was let go before.
        Left = "left",
        /// It goes on.
        Open = "open",
    }
}

/// A walk of somebody.
#[derive(Debug, Clone, PartialEq)]
pub struct WalkDone<'a> {
    /// What was written down last of it.
    pub last: &'a Walked,
    /// What came of it.
    pub what: WalkWhat<'a>,
}

/// What came of a walk.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WalkWhat<'a> {
    /// It was walked.
    Walked {
        /// How.
        way: Way,
        /// Whether it goes on from an earlier one.
        again: bool,
        /// Decisions, those that were taken back as well.
        decisions: u32,
        /// Those among them that broke a rule.
        wrong: u32,
        /// How it ended.
        came: WalkCame,
    },
    /// It is somebody else's, and was gone through.
    Inspected(&'a Inspected),
}

/// The walks that events of one person tell, in the order in which they were begun.
#[must_use]
pub fn walks<'a>(events: impl IntoIterator<Item = &'a Event>) -> Vec<WalkDone<'a>> {
    let (mut all, mut told): (Vec<WalkDone<'_>>, _) = (Vec::new(), Retold::default());
    for walked in events.into_iter().filter_map(Event::walked) {
        let same = |one: &&mut WalkDone<'_>| {
            one.last.walk == walked.walk && one.last.stamp.device == walked.stamp.device
        };
        match (all.iter_mut().find(same), &walked.step) {
            (_, WalkStep::Decided(decided)) if !told.is_new(walked, decided) => {}
            (Some(one), step) => one.take(walked, step),
            (None, WalkStep::Decided(decided)) => {
                let what = WalkWhat::Walked {
                    way: decided.way,
                    again: decided.again,
                    decisions: 1,
                    wrong: u32::from(is_wrong(decided)),
                    came: came(walked),
                };
                all.push(WalkDone { last: walked, what });
            }
            (None, WalkStep::Inspected(told)) => {
                all.push(WalkDone { last: walked, what: WalkWhat::Inspected(told) });
            }
            // Nothing was decided on it.
            (None, WalkStep::LetGo) => {}
        }
    }
    all
}

impl<'a> WalkDone<'a> {
    fn take(&mut self, walked: &'a Walked, step: &'a WalkStep) {
        self.last = walked;
        if let WalkWhat::Walked { decisions, wrong, came: ended, .. } = &mut self.what {
            *ended = came(walked);
            if let WalkStep::Decided(decided) = step {
                *decisions = decisions.saturating_add(1);
                *wrong = wrong.saturating_add(u32::from(is_wrong(decided)));
            }
        }
    }
}

fn is_wrong(decided: &Decided) -> bool {
    !decided.broke.is_empty()
}

fn came(walked: &Walked) -> WalkCame {
    match &walked.step {
        WalkStep::LetGo => WalkCame::Left,
        _ if walked.ends() => WalkCame::Over,
        _ => WalkCame::Open,
    }
}
