//! The misconception behind a wrong answer.

use crate::card::{self, Mark};
use crate::content::{Content, World};
use crate::record::Entry;

/// What was misread, text `slip.<slip>`: the card dealt again as it was, where its shop sheet is one of the content's; `None`
/// for a right answer.
#[must_use]
pub fn slip(content: &Content, entry: &Entry) -> Option<&'static str> {
    if entry.mark == Mark::Right {
        return None;
    }
    let sheet = content.sheet(&entry.sheet.slug).filter(|sheet| sheet.hash() == entry.sheet.hash)?;
    let world = World { content, sheet };
    let card = card::deal(&world, &entry.family, entry.seed).ok().filter(|card| entry.is_of(card))?;
    card::grade(&card, &world, &entry.answer)?.slip
}
