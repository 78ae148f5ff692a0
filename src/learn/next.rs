//! The next sensible card. Plain on purpose, so that its reason can be said in one sentence:
//!
//! 1. a stage not begun, first in the order of the work (the room last: it bears on all of them);
//! 2. by turns, a family whose latest answer was wrong or had to be asked about, the one longest ago, and a family not
//!    asked yet, in the order of the work: so that who is often wrong still meets everything;
//! 3. the family longest ago.
//!
//! Within 2 and 3 a stage other than that of the last card goes first, so that stages mix. The same family never comes
//! twice running while there is another.

use super::Past;
use crate::content::{Content, FamilyInfo};
use crate::rules::sorted::sorted;
use crate::rules::term::{Stage, Term};
use crate::terms;
use sha2::{Digest, Sha256};

/// Cards in one round.
pub const ROUND: u32 = 6;

/// Whether a round ends with the card after so many that are done.
#[must_use]
pub const fn ends_round(done: u32) -> bool {
    done + 1 >= ROUND
}

terms! {
    /// Why a card comes next. Text: `app.next.<slug>`.
    Why {
        /// Its stage is not begun.
        NotBegun = "not-begun",
        /// Its family did not hold last time.
        NotHeld = "not-held",
        /// Its family was never asked.
        NotAsked = "not-asked",
        /// Everything holds; this one is longest ago.
        LongestAgo = "longest-ago",
    }
}

/// The card family to ask next.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Next<'a> {
    /// The family.
    pub family: &'a FamilyInfo,
    /// Why it comes next.
    pub why: Why,
}

/// The family to ask next, of one stage or of all. `None` where content has no family for it.
///
/// `past` is one person's answers, oldest first.
#[must_use]
pub fn next<'a>(content: &'a Content, past: &[Past], within: Option<Stage>) -> Option<Next<'a>> {
    let last = past.last().map(|one| one.family.as_str());
    let last_stage = last.and_then(|id| content.family(id)).map(|family| family.stage);
    let mut families: Vec<&FamilyInfo> =
        content.families.iter().filter(|family| within.is_none_or(|stage| family.stage == stage)).collect();
    if families.len() > 1 {
        families.retain(|family| last != Some(family.id.as_str()));
    }
    // Stable: the order of content stays within a stage.
    families = sorted(families, |a, b| place(a.stage).cmp(&place(b.stage)));
    let latest = |family: &FamilyInfo| past.iter().rposition(|one| one.family == family.id);
    let begun = |stage: Stage| {
        past.iter().any(|one| content.family(&one.family).is_some_and(|family| family.stage == stage))
    };
    if let Some(family) = families.iter().find(|family| !begun(family.stage)) {
        return Some(Next { family, why: Why::NotBegun });
    }
    // False sorts first: another stage than the last one.
    let again = |family: &FamilyInfo| Some(family.stage) == last_stage;
    families = sorted(families, |a, b| again(a).cmp(&again(b)));
    let not_held = families
        .iter()
        .filter_map(|family| latest(family).map(|at| (at, family)))
        .filter(|(at, _)| past.get(*at).is_some_and(|one| !one.holds()))
        .min_by_key(|(at, family)| (Some(family.stage) == last_stage, *at))
        .map(|(_, family)| Next { family, why: Why::NotHeld });
    let not_asked = families
        .iter()
        .find(|family| latest(family).is_none())
        .map(|family| Next { family, why: Why::NotAsked });
    // The last card was the first of its family: now one comes back.
    let comes_back = past.iter().filter(|one| Some(one.family.as_str()) == last).count() == 1;
    let chosen = if comes_back { not_held.or(not_asked) } else { not_asked.or(not_held) };
    if chosen.is_some() {
        return chosen;
    }
    families
        .into_iter()
        .min_by_key(|family| (Some(family.stage) == last_stage, latest(family)))
        .map(|family| Next { family, why: Why::LongestAgo })
}

/// Place of a stage in the order of the work; the room comes last.
pub(super) fn place(stage: Stage) -> usize {
    if stage == Stage::Room { Stage::ALL.len() } else { stage as usize }
}

/// The seed of a person's n-th card: the same person never gets the same run of seeds as another, and none comes back
/// soon.
#[must_use]
pub fn seed(person: &str, counter: u32) -> u32 {
    let digest = Sha256::digest(format!("{person}/{counter}").as_bytes());
    digest.iter().take(4).fold(0, |sum, byte| (sum << 8) | u32::from(*byte))
}

/// Minutes that a round takes, from the seconds its families need and the reading of the verdicts.
#[must_use]
pub fn minutes(content: &Content, within: Option<Stage>) -> u32 {
    /// Reading one verdict: our estimate, common practice, no source.
    const VERDICT_SECONDS: u32 = 20;
    const SECONDS: u32 = 60;
    let (mut sum, mut count) = (0, 0);
    for family in content.families.iter().filter(|family| within.is_none_or(|stage| family.stage == stage)) {
        sum += family.seconds;
        count += 1;
    }
    let mean = u32::checked_div(sum, count).unwrap_or(0);
    (ROUND * (mean + VERDICT_SECONDS)).div_ceil(SECONDS)
}
