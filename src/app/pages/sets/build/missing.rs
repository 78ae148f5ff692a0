//! What keeps a set from being saved, and the field that it is about.

use super::from;
use crate::app::state::Shop;
use crate::device::page;
use crate::exchange::NAME_MOST;
use crate::exchange::set::Set;
use crate::record::{is_plain, plain};
use yew::prelude::*;

/// The field of who makes it, of its name, and the first one of a card of the shop's own that is being written.
const MAKER: &str = "name";
pub(super) const TITLE: &str = "set-title";
pub(super) const OWN_QUESTION: &str = "own-question";

/// Something that is missing.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Missing {
    /// Id of the field.
    pub(super) field: String,
    /// What is missing.
    pub(super) said: AttrValue,
}

/// What is missing of the set itself, from the top of the screen down.
pub(super) fn missing(shop: &Shop, set: &Set, maker: &str) -> Vec<Missing> {
    let said = |field: &str, said: AttrValue| Missing { field: field.to_owned(), said };
    let nothing = set.task.families_of(shop.content()).is_empty();
    let nothing = nothing.then(|| said(from::HEADING, shop.say("sets.build.saving-not")));
    let nobody = maker.is_empty().then(|| said(MAKER, shop.say("sets.build.nobody")));
    let title = Some(title_wrong(shop, &set.title)).filter(|wrong| !wrong.is_empty());
    nothing.into_iter().chain(nobody).chain(title.map(|wrong| said(TITLE, wrong))).collect()
}

/// What is wrong with a name; empty where nothing is.
pub(super) fn title_wrong(shop: &Shop, typed: &str) -> AttrValue {
    let named = [("most", NAME_MOST.to_string()), ("n", typed.chars().count().to_string())];
    match plain(typed) {
        title if title.is_empty() => shop.say("sets.build.name-missing"),
        title if !is_plain(&title, NAME_MOST) => shop.say_with("sets.build.name-wrong", &named),
        _ => AttrValue::default(),
    }
}

/// What is half done in fields on the page, asked when the set is to be saved: it would be lost or left out without a word.
pub(super) fn half_done(shop: &Shop) -> Option<Missing> {
    let wrong = page::wrong_field().map(|field| (field, "sets.build.field-wrong"));
    let writing = page::is_there(OWN_QUESTION).then(|| (OWN_QUESTION.to_owned(), "sets.build.own.open"));
    let (field, key) = wrong.or(writing)?;
    Some(Missing { field, said: shop.say(key) })
}
