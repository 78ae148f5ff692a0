//! Who makes a set or a job ticket, or withdraws a set: who has opened their key, else who works on the tablet.

use crate::app::hooks::{use_keys_held, use_people};
use crate::app::state::use_shop;
use yew::prelude::*;

/// Name and shop number, as far as there is one; empty where nobody is named.
#[hook]
pub(in crate::app::pages) fn use_maker() -> String {
    let shop = use_shop();
    let crew = use_people().crew;
    let open = use_keys_held().open.map(|open| named(&open.person.name, open.person.number.text()));
    let person = shop.settings.person.as_str();
    let at_work = || crew.of_journal(person).map(|member| named(&member.name, member.number.text()));
    open.or_else(at_work).unwrap_or_else(|| person.to_owned())
}

fn named(name: &str, number: &str) -> String {
    format!("{name} ({number})")
}
