//! Checks of cautions: the cards that one would answer are there and would show it.

use super::Reader;
use super::names::nearest;
use crate::content::{Content, FamilyInfo};

/// Reports families that a caution would answer and that are not there or do not show it. Where no family is read at all,
/// that alone is told, by what reads the folder.
pub(super) fn check(content: &Content, reader: &mut Reader) {
    if content.families.is_empty() {
        return;
    }
    for (index, caution) in content.cautions.iter().enumerate() {
        let shows = |family: &FamilyInfo| caution.is_everywhere() || caution.is_of(&family.cautions);
        for (nth, id) in caution.gives_away.iter().enumerate() {
            let families = content.families.iter().map(|family| family.id.as_str());
            let message = match content.family(id) {
                None => format!("`{id}` is no family of cards; allowed: {}", nearest(id, families)),
                Some(family) if !shows(family) => {
                    format!("cards of `{id}` do not show `{}`: they have none of its stages", caution.id)
                }
                Some(_) if caution.gives_away.iter().take(nth).any(|before| before == id) => {
                    format!("`{id}` stands twice")
                }
                Some(_) => continue,
            };
            reader.at("caution", index, "gives_away", message);
        }
    }
}
