//! Why an edition has to stay on the tablet: nobody's answers and walks lose what they stand on.

use crate::app::state::{DeskContext, Shop, WalksContext};
use crate::record::Journal;
use std::rc::Rc;

/// Why it has to stay, as the end of a key of texts; `None` where it may go.
pub(super) fn kept_for(
    shop: &Shop,
    journal: &Journal,
    desk: &DeskContext,
    walks: &WalksContext,
    slug: &str,
) -> Option<&'static str> {
    let on_desk = [&desk.draft, &desk.check].into_iter().flatten();
    if shop.sheet().is_some_and(|sheet| sheet.slug == slug) {
        Some("in-use")
    } else if on_desk.map(Rc::as_ref).any(|draft| draft.card.sheet.slug == slug) {
        Some("desk")
    } else if journal.answers().any(|entry| entry.sheet.slug == slug) {
        Some("answers")
    } else if walks.all.iter().any(|walk| walk.saved.sheet.slug == slug) {
        Some("walks")
    } else {
        None
    }
}
