//! What changes with the sheet: which card families answer the same situation differently on two sheets.
//!
//! A card is dealt on the one sheet and judged on both, then one dealt on the other sheet; two different deals are never
//! compared. It is a sample: [`SITUATIONS`] deals on each sheet, so that a family which turns only in a rare situation may be
//! missed, and what it says of a family that it found to turn is certain.

use super::sprayed::{good_run, in_figures};
use super::{Answer, Card, Mark, Solution, deal, grade, solve};
use crate::content::World;
use crate::spraying::Run;

/// Seeds that are dealt on each of the two sheets, our own choice: `tests/changed.rs` counts how many of the families that
/// turn over many seeds are found with so few.
pub const SITUATIONS: u32 = 24;

/// A card that is answered differently.
#[derive(Debug, Clone, PartialEq)]
pub struct Example {
    /// The card, as it was dealt on one of the sheets.
    pub card: Card,
    /// What was right before.
    pub before: Answer,
    /// What is right now.
    pub after: Answer,
}

/// What changes of a family.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// Every situation that was looked at is answered as before.
    Same,
    /// Some are answered differently.
    Turned {
        /// How many.
        turned: u32,
        /// Of how many.
        looked: u32,
        /// The first one, where both answers are known if there is such a one.
        example: Box<Example>,
    },
    /// Each situation is answered as before, but other ones are dealt.
    Dealt,
    /// It cannot be compared: no card could be dealt on one of the sheets.
    Unknown {
        /// Whether one could be dealt on the sheet before.
        before: bool,
        /// Whether one could be dealt on the sheet now.
        after: bool,
    },
}

/// Compares a family on two sheets of the same content.
#[must_use]
pub fn changed(family: &str, before: &World<'_>, after: &World<'_>) -> Change {
    let (mut looked, mut turned, mut dealt) = (0_u32, 0_u32, false);
    let (mut on_before, mut on_after) = (false, false);
    let mut example: Option<Example> = None;
    let mut look = |card: Card| {
        let (Some(was), Some(is)) = (solve(&card, before), solve(&card, after)) else { return };
        looked += 1;
        if !differs(&card, &was, &is, before, after) {
            return;
        }
        turned += 1;
        let known = |one: &Example| one.before != Answer::NotEnough && one.after != Answer::NotEnough;
        let (was, is) = (told(&card, before, was.right), told(&card, after, is.right));
        let found = Example { card, before: was, after: is };
        if example.as_ref().is_none_or(|one| !known(one) && known(&found)) {
            example = Some(found);
        }
    };
    for seed in 0..SITUATIONS {
        let (was, is) = (deal(before, family, seed).ok(), deal(after, family, seed).ok());
        (on_before, on_after) = (on_before || was.is_some(), on_after || is.is_some());
        let same = was.as_ref().zip(is.as_ref()).is_some_and(|(was, is)| asks_the_same(was, is));
        dealt |= !same;
        was.into_iter().for_each(&mut look);
        is.filter(|_| !same).into_iter().for_each(&mut look);
    }
    match example {
        _ if !on_before || !on_after => Change::Unknown { before: on_before, after: on_after },
        Some(example) => Change::Turned { turned, looked, example: Box::new(example) },
        None if dealt => Change::Dealt,
        None => Change::Same,
    }
}

/// What is right on a sheet, as it is told: of a face that is sprayed a good run.
fn told(card: &Card, world: &World<'_>, right: Answer) -> Answer {
    let run = (right == Answer::GoodRun).then(|| good_run(card, world)).flatten();
    run.map_or(right, |sets| Answer::Run(Run::Passes(sets)))
}

/// Whether two deals tell the same situation. Their options may differ, since wrong ones follow the sheet.
fn asks_the_same(one: &Card, other: &Card) -> bool {
    one.facts == other.facts
        && one.offered == other.offered
        && (one.options == other.options || one.kind.is_choice())
}

/// Whether a card is answered differently. A number is, where it is written differently; an order, where the one that was
/// right is refused now, or the one that is right now was refused; a diagnosis and what applies, where they differ; a face that
/// is sprayed, where a good run is told in other figures.
fn differs(card: &Card, was: &Solution, is: &Solution, before: &World<'_>, after: &World<'_>) -> bool {
    let refused = |world: &World<'_>, answer: &Answer| {
        grade(card, world, answer).is_none_or(|graded| graded.mark != Mark::Right)
    };
    match (&was.right, &is.right) {
        (Answer::Number(was), Answer::Number(is)) => was.text() != is.text(),
        (Answer::Order(_), Answer::Order(_)) => refused(after, &was.right) || refused(before, &is.right),
        (Answer::GoodRun, Answer::GoodRun) => {
            let figures = |world: &World<'_>| good_run(card, world).and_then(|sets| in_figures(&sets));
            figures(before) != figures(after)
        }
        (was, is) => was != is,
    }
}
