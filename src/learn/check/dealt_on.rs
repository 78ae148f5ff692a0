//! The shop sheet on which a check goes on.

use crate::content::Content;
use crate::record::Entry;
use crate::rules::sheet::Sheet;

/// The sheet for the next card of a check at a set: that of the set where it ships, else the one of its first answer,
/// whichever is taken into use meanwhile, else the one in use.
///
/// `None` where its answers stand on a sheet that is not known: on another it would be another check.
#[must_use]
pub fn sheet_of<'a>(
    content: &'a Content,
    set: &str,
    answers: &[&Entry],
    in_use: Option<&'a Sheet>,
) -> Option<&'a Sheet> {
    let ships = content.sets.iter().find(|one| one.slug == set).and_then(|one| content.sheet(&one.sheet));
    ships.or_else(|| match answers.first() {
        Some(first) => content.sheet(&first.sheet.slug),
        None => in_use,
    })
}
