//! The misconception behind a wrong answer.

use super::items::dealt;
use crate::card::Mark;
use crate::content::Content;
use crate::record::Entry;

/// What was misread, text `slip.<slip>`: the card dealt again as it was, where its shop sheet is one of the content's; `None`
/// for a right answer.
#[must_use]
pub fn slip(content: &Content, entry: &Entry) -> Option<&'static str> {
    if entry.mark == Mark::Right {
        return None;
    }
    dealt(content, entry)?.slip
}
