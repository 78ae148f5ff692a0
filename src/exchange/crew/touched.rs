//! What a voiding touches: the cards of a rule, and sign-offs.

use crate::card;
use crate::content::{Content, World};
use crate::learn::evidence::of_walks;
use crate::record::{Event, LocalDate, Voided, Voids, Within};
use crate::walk::may_break;

/// Cards of a family that are dealt to see whether a rule decides one of them: a rule that decides one in ten is missed once
/// in sixty families (0.9^40). Our own choice.
const SEEDS: u32 = 40;

/// Whether a rule decides decisions of walks that exercise a family, or its cards, by dealing some of them on every sheet that
/// is known.
#[must_use]
pub fn decides(content: &Content, rule: &str, family: &str) -> bool {
    may_break(rule, family)
        || content.sheets.iter().any(|sheet| {
            let world = World { content, sheet };
            (0..SEEDS).any(|seed| {
                let card = card::deal(&world, family, seed).ok();
                let solution = card.and_then(|card| card::solve(&card, &world));
                solution.is_some_and(|solution| solution.rules.iter().any(|one| one.0 == rule))
            })
        })
}

/// What a sign-off of a day rests on and was found void since: the voidings, each once, and how many answers and decisions of
/// walks that are evidence. `events` are those of the person and those that void something.
#[must_use]
pub fn rests_on_void<'a>(
    content: &Content,
    competency: &str,
    signed: LocalDate,
    events: &[&'a Event],
) -> (usize, Vec<&'a Voided>) {
    let voids = Voids::of(events.iter().copied());
    let families: Vec<&str> = content.evidence_for(competency).map(|family| family.id.as_str()).collect();
    let before = |day: Option<LocalDate>| day.is_some_and(|day| day <= signed);
    let (mut answers, mut found) = (0, Vec::new());
    for entry in events.iter().filter_map(|event| event.answer()) {
        let in_check = matches!(entry.within, Within::Check { .. });
        let counted = in_check && families.contains(&entry.family.as_str());
        let Some(void) = voids.touches(entry).filter(|_| counted && before(entry.stamp.day())) else {
            continue;
        };
        answers += 1;
        if !found.contains(&void) {
            found.push(void);
        }
    }
    let exercised = of_walks(events.iter().copied());
    for (_, one) in exercised.into_iter().filter(|(walked, _)| before(walked.stamp.day())) {
        let Some(void) = voids.touches_exercised(one).filter(|_| families.contains(&one.family.as_str()))
        else {
            continue;
        };
        answers += 1;
        if !found.contains(&void) {
            found.push(void);
        }
    }
    (answers, found)
}
