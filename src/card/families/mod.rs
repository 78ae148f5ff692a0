//! The questions of the card families, a file per topic. Facts, ranges and texts stand in `content/`.

use super::Question;

mod clean;
mod entry;
mod fill;
mod sand;
mod stain;

/// Every question.
#[must_use]
pub fn all() -> Vec<&'static Question> {
    [clean::ALL, entry::ALL, fill::ALL, sand::ALL, stain::ALL].concat()
}

/// The question of that id.
#[must_use]
pub fn find(id: &str) -> Option<&'static Question> {
    all().into_iter().find(|question| question.id == id)
}
