//! Has somebody work on this tablet under a name, and says so.

use super::use_settings;
use crate::app::state::{Settings, use_shop};
use yew::prelude::*;

/// What takes a name, empty for none, and what is said once it is that of who works.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Naming {
    pub(in crate::app) on_name: Callback<String>,
    pub(in crate::app) said: AttrValue,
}

#[hook]
pub(in crate::app) fn use_naming() -> Naming {
    let shop = use_shop();
    let settings = use_settings();
    let named = use_state(|| None::<String>);
    let on_name = {
        let named = named.setter();
        use_callback(settings, move |person: String, settings| {
            named.set(Some(person.clone()));
            settings.change.emit(Settings { person, name_asked: true, ..(*settings.now).clone() });
        })
    };
    let said = match named.as_ref().filter(|named| **named == shop.settings.person) {
        None => AttrValue::default(),
        Some(named) if named.is_empty() => shop.say("home.nameless"),
        Some(named) => shop.say_with("home.named", &[("person", named.clone())]),
    };
    Naming { on_name, said }
}
