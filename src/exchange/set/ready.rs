//! A set that ships, as a set.

use super::Set;
use crate::content::{Content, ENGLISH, ScenarioSet};
use crate::exchange::CarriedSheet;
use crate::record::SheetName;

impl Set {
    /// A set that ships, called what its text says; `None` where its sheet is not known. Its id is its slug.
    #[must_use]
    pub fn ready(content: &Content, ships: &ScenarioSet) -> Option<Self> {
        let sheet = content.sheet(&ships.sheet)?;
        let title = content.texts(ENGLISH).find(&format!("set.{}", ships.slug)).unwrap_or(&ships.slug);
        Some(Self {
            title: title.to_owned(),
            note: String::new(),
            by: String::new(),
            at: String::new(),
            sheet: CarriedSheet::Ships(SheetName::of(sheet)),
            task: ships.task.clone(),
            from: None,
            until: None,
            own_cards: Vec::new(),
        })
    }
}
