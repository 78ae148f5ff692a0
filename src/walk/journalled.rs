//! The decisions of a kept walk as the record has them: each once, however often the walk is taken up again.

use super::brings::Follow;
use super::decision::Decision;
use super::inspect::Inspected;
use super::kept::Kept;
use super::known::known;
use super::saved::Mode;
use super::story::Walk;
use crate::content::Content;
use crate::record::{self, Decided, Event, Exercised, Stamp, WalkStep, Walked, Way, decisions_of};
use crate::rules::verdict::RuleId;

/// Writes down the decisions of one walk.
#[derive(Debug, Default)]
pub struct Clerk {
    /// The walk as far as it is written down; none before it was asked what is.
    follow: Option<Follow>,
}

/// What is needed to write something down.
#[derive(Clone, Copy)]
pub struct Desk<'a> {
    /// The walk as it is kept; its decisions may lag behind.
    pub kept: &'a Kept,
    /// The content.
    pub content: &'a Content,
    /// The stamp of an event that is written down now.
    pub stamp: &'a dyn Fn() -> Stamp,
}

impl std::fmt::Debug for Desk<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Desk").field("kept", &self.kept.id).finish_non_exhaustive()
    }
}

impl Clerk {
    /// What of a walk as it stands is to be written down: each decision once, whether it was taken up again, or one was taken
    /// back and made again. `events` are those that this device wrote so far.
    pub fn rest(&mut self, walk: &Walk, events: &[Event], desk: Desk<'_>) -> Vec<Walked> {
        if walk.mode() == Mode::Inspect {
            return Vec::new();
        }
        let decisions: Vec<&Decision> = walk.turns().iter().map(|turn| &turn.decision).collect();
        let known = match &self.follow {
            Some(follow) => alike(follow.walk().turns().iter().map(|turn| &turn.decision), &decisions),
            None => written(desk.kept, &decisions, events, &(desk.stamp)().device),
        };
        if known >= decisions.len() {
            return Vec::new();
        }
        let stands = self.follow.take().filter(|follow| follow.walk().turns().len() == known);
        let mut follow = stands.unwrap_or_else(|| Follow::of(walk.at(known, desk.content), desk.content));
        let rest = decisions.iter().skip(known);
        let written = rest.map_while(|decision| decided(&mut follow, decision, desk)).collect();
        self.follow = Some(follow);
        written
    }
}

/// How many decisions two walks begin alike with.
fn alike<'a>(one: impl Iterator<Item = &'a Decision>, other: &[&Decision]) -> usize {
    one.zip(other).take_while(|(one, other)| one == *other).count()
}

/// How many of the first decisions are written down: those taken over from an earlier walk count as such.
fn written(kept: &Kept, decisions: &[&Decision], events: &[Event], device: &str) -> usize {
    let written = decisions_of(events, device, &kept.id);
    let is_written = |(place, now): (usize, &&Decision)| {
        let of = u32::try_from(place + 1).ok().and_then(|nth| written.get(&nth));
        place < kept.taken_over.unwrap_or(0) || of.is_some_and(|of| same(&of.decision, now))
    };
    decisions.iter().enumerate().take_while(|one| is_written(*one)).count()
}

/// Whether a decision is the one that was written down.
fn same(written: &serde_json::Value, now: &Decision) -> bool {
    serde_json::from_value::<Decision>(written.clone()).is_ok_and(|written| written == *now)
}

/// Follows the next decision of a walk and writes it down; `None` where it cannot be carried out.
fn decided(follow: &mut Follow, decision: &Decision, desk: Desk<'_>) -> Option<Walked> {
    let Desk { kept, content, stamp } = desk;
    let way = if kept.saved.mode == Mode::Guided { Way::Guided } else { Way::Own };
    let nth = u32::try_from(follow.walk().turns().len() + 1).ok()?;
    let known = known(follow.walk(), decision);
    let told = follow.take(decision.clone(), content).ok()?;
    let ids = |rules: &[RuleId]| rules.iter().map(|rule| rule.0.to_owned()).collect();
    let exercised = told.says.iter().filter_map(|one| {
        let family = content.family(one.family)?;
        Some(Exercised { family: family.id.clone(), version: family.version, broke: ids(&one.broke) })
    });
    let exercised: Vec<Exercised> = exercised.collect();
    let mut broke: Vec<String> = ids(&told.broke);
    // What was promised wrongly is no defect and no duty left, and wrong all the same.
    for rule in exercised.iter().flat_map(|one| &one.broke) {
        if !broke.contains(rule) {
            broke.push(rule.clone());
        }
    }
    let decided = Decided {
        way,
        again: kept.taken_over.is_some(),
        sheet: kept.saved.sheet.clone(),
        nth,
        decision: serde_json::to_value(decision).ok()?,
        known,
        broke,
        exercised,
        over: follow.walk().is_over(),
    };
    Some(of(kept, stamp(), WalkStep::Decided(Box::new(decided))))
}

/// Somebody else's walk that was gone through, and what was named of its mistakes.
#[must_use]
pub fn inspected(kept: &Kept, told: &Inspected, stamp: Stamp) -> Walked {
    let count = |all: usize| u32::try_from(all).unwrap_or(u32::MAX);
    let inspected = record::Inspected {
        seed: kept.saved.seed,
        found: count(told.found.len()),
        half: count(told.half.len()),
        missed: told.missed.iter().map(|one| one.rule.0.to_owned()).collect(),
        wrong: count(told.wrong.len()),
    };
    of(kept, stamp, WalkStep::Inspected(inspected))
}

/// A walk that was let go before the work was handed over.
#[must_use]
pub fn let_go(kept: &Kept, stamp: Stamp) -> Walked {
    of(kept, stamp, WalkStep::LetGo)
}

fn of(kept: &Kept, stamp: Stamp, step: WalkStep) -> Walked {
    Walked { stamp, walk: kept.id.clone(), job: kept.saved.walk.clone(), step }
}
