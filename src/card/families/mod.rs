//! The questions of the card families, a file per topic. Facts, ranges and texts stand in `content/`.

use super::Question;

mod booth_air;
mod clean;
mod clear;
mod entry;
mod fill;
mod inspect;
mod read_wood;
mod sand;
mod scrape;
mod stain;

/// Every question.
#[must_use]
pub fn all() -> Vec<&'static Question> {
    [
        booth_air::ALL,
        clean::ALL,
        clear::ALL,
        entry::ALL,
        fill::ALL,
        inspect::ALL,
        read_wood::ALL,
        sand::ALL,
        scrape::ALL,
        stain::ALL,
    ]
    .concat()
}

/// The question of that id.
#[must_use]
pub fn find(id: &str) -> Option<&'static Question> {
    all().into_iter().find(|question| question.id == id)
}
