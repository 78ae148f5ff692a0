//! Which cards a check deals: over the families of the competencies chosen, each one soon and none again too soon, with seeds
//! that nobody else gets.

use super::super::mastery::{Guess, Standard};
use super::super::seed;
use crate::card::{Card, deal};
use crate::content::{Content, FamilyInfo, World};
use crate::rules::sorted::sorted;
use crate::rules::term::Severity;
use std::cmp::Reverse;

/// Cards of other families between two of the same, where there are families enough. Common practice, no source.
pub const APART: usize = 3;
/// Seeds tried where a sheet gives no fair question for one.
const TRIES: u32 = 8;

/// What the seeds of a check come of: the same person never gets the same cards in two attempts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Check<'a> {
    /// The set that is taken.
    pub set: &'a str,
    /// Who takes it.
    pub person: &'a str,
    /// The attempt.
    pub attempt: &'a str,
}

impl Check<'_> {
    /// The seed of the n-th card, from 0; `again` counts those passed over before it.
    #[must_use]
    pub fn seed(&self, nth: u32, again: u32) -> u32 {
        let Self { set, person, attempt } = self;
        // Lengths keep names apart that run into each other.
        let name = format!("{}/{set}/{}/{person}/{attempt}/{nth}", set.len(), person.len());
        seed(&name, again)
    }
}

/// A competency that is checked, and how many more answers it wants today; 0 once it is decided.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Goal<'a> {
    /// Its slug.
    pub competency: &'a str,
    /// Answers that it wants today.
    pub wanted: u32,
}

/// Answers that an attempt wants a day: enough that the days asked for suffice where all is right, and not fewer than make a
/// day count.
#[must_use]
pub fn answers_a_day(standard: Standard, attempt: u32) -> u32 {
    let run = standard.steps(Guess::USUAL).run(standard.attempt(attempt).pass);
    run.div_ceil(standard.days.max(1)).max(standard.answers_a_day)
}

/// The next card; `None` where nothing is wanted any more today, or nothing can be dealt.
///
/// `again` are families with an error about safety that can be passed again now; `asked` are the families asked in this
/// attempt so far, oldest first.
#[must_use]
pub fn next_card(
    world: &World<'_>,
    check: &Check<'_>,
    goals: &[Goal<'_>],
    again: &[&str],
    asked: &[&str],
) -> Option<Card> {
    let families = order(world.content, goals, again, asked);
    first_dealt(world, check, asked.len(), families, TRIES, |_| true)
}

/// The card of the first of these families that gives one, with the n-th seed of the check, from 0; seeds are passed over,
/// `tries` at most, where a sheet gives no fair question or the card does not fit.
pub(crate) fn first_dealt<'a>(
    world: &World<'_>,
    check: &Check<'_>,
    nth: usize,
    families: impl IntoIterator<Item = &'a FamilyInfo>,
    tries: u32,
    fits: impl Fn(&Card) -> bool,
) -> Option<Card> {
    let nth = u32::try_from(nth).unwrap_or(u32::MAX);
    let dealt = |family: &FamilyInfo| {
        (0..tries).find_map(|passed| {
            deal(world, &family.id, check.seed(nth, passed)).ok().filter(|card| fits(card))
        })
    };
    families.into_iter().find_map(dealt)
}

/// Families without those asked just before, as far as there are others.
pub(crate) fn apart<'a>(fits: Vec<&'a FamilyInfo>, asked: &[&str]) -> Vec<&'a FamilyInfo> {
    let apart = APART.min(fits.len().saturating_sub(1));
    let lately = |family: &FamilyInfo| asked.iter().rev().take(apart).any(|one| *one == family.id);
    fits.into_iter().filter(|family| !lately(family)).collect()
}

/// The families that may come next, the best first: one to be passed again, one about safety not asked yet, another not
/// asked yet, then the one that serves most competencies at once, asked least and longest ago.
#[must_use]
pub fn order<'a>(
    content: &'a Content,
    goals: &[Goal<'_>],
    again: &[&str],
    asked: &[&str],
) -> Vec<&'a FamilyInfo> {
    let serves = |family: &FamilyInfo| {
        let serves = |goal: &&Goal<'_>| {
            goal.wanted > 0 && family.competencies.iter().any(|slug| slug == goal.competency)
        };
        goals.iter().filter(serves).count()
    };
    let passed_again = |family: &FamilyInfo| again.contains(&family.id.as_str());
    let fits = content.families.iter().filter(|family| serves(family) > 0 || passed_again(family));
    let key = |family: &FamilyInfo| {
        let times = asked.iter().filter(|one| **one == family.id).count();
        let safety = family.severity == Severity::Safety;
        let latest = asked.iter().rposition(|one| *one == family.id);
        let known = times > 0;
        (!passed_again(family), known, !known && !safety, Reverse(serves(family)), times, latest)
    };
    let keyed = apart(fits.collect(), asked).into_iter().map(|family| (key(family), family));
    sorted(keyed.collect(), |a, b| a.0.cmp(&b.0)).into_iter().map(|(_, family)| family).collect()
}
