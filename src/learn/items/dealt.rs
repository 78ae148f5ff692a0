//! An answer as the card that was seen: dealt again on its own sheet, where that is known.

use super::Taken;
use crate::card::{self, Answer, Card, Mark};
use crate::content::{Content, World};
use crate::record::Entry;

/// Stands for the right option, whichever it is: cards of a family need not have the same.
pub const RIGHT: &str = "right";
/// Stands for "not enough is told".
pub const NOT_ENOUGH: &str = "not-enough";

/// The card of an answer, with the content and the sheet that it was dealt on; `None` where its sheet is not known here or
/// the family has changed since.
#[must_use]
pub fn card_of<'a>(content: &'a Content, entry: &Entry) -> Option<(Card, World<'a>)> {
    let world = World { content, sheet: content.sheet(&entry.sheet.slug)? };
    // The card tells the values that it was dealt on.
    let card = card::deal(&world, &entry.family, entry.seed).ok().filter(|card| entry.is_of(card))?;
    Some((card, world))
}

/// What the card of an answer tells beside its mark.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Dealt {
    /// The misconception that it shows.
    pub slip: Option<&'static str>,
    /// What was taken of what was offered; none where the card has no options to choose one of.
    pub taken: Option<Taken>,
}

/// Deals the card of an answer again; `None` where it cannot be had. A face is not sprayed again for it: of a run the
/// misconception is told where the answer is opened, since those of many people would take hours.
#[must_use]
pub fn dealt(content: &Content, entry: &Entry) -> Option<Dealt> {
    let (card, world) = card_of(content, entry)?;
    if entry.mark == Mark::Right || entry.answer.run().is_some() {
        return Some(Dealt { slip: None, taken: taken(&card, &entry.answer, &entry.answer) });
    }
    let graded = card::grade(&card, &world, &entry.answer)?;
    Some(Dealt { slip: graded.slip, taken: taken(&card, &graded.solution.right, &entry.answer) })
}

fn taken(card: &Card, right: &Answer, given: &Answer) -> Option<Taken> {
    let name = |answer: &Answer| match answer {
        answer if answer == right => Some(RIGHT.to_owned()),
        Answer::NotEnough => Some(NOT_ENOUGH.to_owned()),
        Answer::Term(slug) => Some(slug.clone()),
        // A number, say: as it is stored.
        other => serde_json::to_string(other).ok(),
    };
    let options = card.options.iter().chain([&Answer::NotEnough]);
    let one = card.kind.is_choice();
    one.then(|| Some(Taken { took: name(given)?, offered: options.filter_map(name).collect() }))?
}
