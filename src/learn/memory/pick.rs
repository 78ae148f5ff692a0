//! The next card family for a day. Plain enough that its reason can be said in one sentence:
//!
//! 1. a family about safety that was missed, once its day has come, though nothing else be met until it holds;
//! 2. by turns, the family that is due and furthest below the recall it needs, and one not seen yet, stages not begun
//!    first and in the order of the work: so that who is often wrong still meets everything;
//! 3. with nothing due and everything seen, the weakest: the lowest chance of recall, then the longest ago.
//!
//! Within 2 and 3 a stage other than that of the last card goes first: stages mix. The same family never comes twice
//! running while there is another. Which family is picked bears on no sign-off.

use super::{Care, Day, Grade, Remembered};
use crate::content::{Content, FamilyInfo};
use crate::rules::sorted::sorted;
use crate::rules::term::{Stage, Term};
use crate::terms;
use std::cmp::Ordering;
use std::collections::BTreeSet;

/// A family that may be asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Candidate<'a> {
    /// Its id.
    pub family: &'a str,
    /// Its stage.
    pub stage: Stage,
    /// How much hangs on it.
    pub care: Care,
    /// The day on which what was signed for it expires, if anything was.
    pub until: Option<Day>,
}

/// The families of content that may be asked, of one stage or of all. `until` tells the day on which what is signed for a
/// competency expires.
#[must_use]
pub fn candidates<'a>(
    content: &'a Content,
    within: Option<Stage>,
    until: &dyn Fn(&str) -> Option<Day>,
) -> Vec<Candidate<'a>> {
    let fits = content.families.iter().filter(|family| within.is_none_or(|stage| family.stage == stage));
    let candidate = |family: &'a FamilyInfo| Candidate {
        family: &family.id,
        stage: family.stage,
        care: Care::of(content, family),
        until: family.competencies.iter().filter_map(|slug| until(slug)).min(),
    };
    fits.map(candidate).collect()
}

terms! {
    /// Why a family comes next. Text: `app.home.next.<slug>`.
    Reason {
        /// It is about safety and was missed.
        MissedOnSafety = "missed-on-safety",
        /// It is due.
        Due = "due",
        /// Its stage is not begun.
        NotBegun = "not-begun",
        /// It was never asked.
        NotSeen = "not-seen",
        /// Nothing is due; it has the lowest chance of recall.
        Weakest = "weakest",
    }
}

/// The family to ask next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pick<'a> {
    /// Its id.
    pub family: &'a str,
    /// Why it comes next.
    pub reason: Reason,
}

/// A candidate that was seen, beside how it is remembered today.
struct Seen<'a> {
    candidate: &'a Candidate<'a>,
    /// Place of its latest answer among all.
    latest: Option<usize>,
    /// Whether its stage is that of the last card; false goes first.
    again: bool,
    due: bool,
    missed: bool,
    /// Chance of recall today.
    recall: f64,
    /// Chance of recall today less the one it needs; negative where it is too weak.
    margin: f64,
}

impl<'a> Seen<'a> {
    fn of(
        candidate: &'a Candidate<'a>,
        past: &Remembered,
        today: Day,
        last_stage: Option<Stage>,
    ) -> Option<Self> {
        let memory = past.memory(candidate.family)?;
        let recall = memory.recall(today);
        Some(Self {
            candidate,
            latest: past.latest(candidate.family),
            again: Some(candidate.stage) == last_stage,
            due: memory.due(candidate.care, candidate.until) <= today,
            missed: memory.grade == Grade::Missed,
            recall,
            margin: recall - candidate.care.target().get(),
        })
    }

    fn by_margin(&self, other: &Self) -> Ordering {
        self.margin.total_cmp(&other.margin).then(self.latest.cmp(&other.latest))
    }

    fn by_recall(&self, other: &Self) -> Ordering {
        self.recall.total_cmp(&other.recall).then(self.latest.cmp(&other.latest))
    }
}

/// The family to ask next on that day. `None` without candidates.
///
/// `candidates` stand in the order of content.
#[must_use]
pub fn pick<'a>(candidates: &'a [Candidate<'a>], past: &Remembered, today: Day) -> Option<Pick<'a>> {
    let last = past.last();
    let last_stage = candidates.iter().find(|one| Some(one.family) == last).map(|one| one.stage);
    let asked = |family: &str| past.memory(family).is_some();
    let begun: BTreeSet<Stage> =
        candidates.iter().filter(|one| asked(one.family)).map(|one| one.stage).collect();
    let mut pool: Vec<&Candidate<'_>> = candidates.iter().collect();
    if pool.len() > 1 {
        pool.retain(|one| Some(one.family) != last);
    }
    // Stable: the order of content stays within a stage.
    pool = sorted(pool, |a, b| place(a.stage).cmp(&place(b.stage)));
    let seen: Vec<Seen<'_>> = pool.iter().filter_map(|one| Seen::of(one, past, today, last_stage)).collect();
    let chosen = |seen: &Seen<'a>, reason| Pick { family: seen.candidate.family, reason };

    let missed = |one: &&Seen<'_>| one.due && one.missed && one.candidate.care == Care::Safety;
    if let Some(first) = seen.iter().filter(missed).min_by(|a, b| a.by_margin(b)) {
        return Some(chosen(first, Reason::MissedOnSafety));
    }
    let due = seen
        .iter()
        .filter(|one| one.due)
        .min_by(|a, b| a.again.cmp(&b.again).then(a.by_margin(b)))
        .map(|one| chosen(one, Reason::Due));
    let not_seen = pool
        .iter()
        .filter(|one| !asked(one.family))
        .min_by_key(|one| (begun.contains(&one.stage), Some(one.stage) == last_stage))
        .map(|one| Pick {
            family: one.family,
            reason: if begun.contains(&one.stage) { Reason::NotSeen } else { Reason::NotBegun },
        });
    // The last card was the first of its family: now one comes back.
    let comes_back = last.is_some_and(|last| past.answers(last) == 1);
    let by_turns = if comes_back { due.or(not_seen) } else { not_seen.or(due) };
    by_turns.or_else(|| {
        let weakest = seen.iter().min_by(|a, b| a.again.cmp(&b.again).then(a.by_recall(b)))?;
        Some(chosen(weakest, Reason::Weakest))
    })
}

/// Place of a stage in the order of the work; the room comes last, since it bears on all of them.
const fn place(stage: Stage) -> usize {
    if matches!(stage, Stage::Room) { Stage::ALL.len() } else { stage as usize }
}
