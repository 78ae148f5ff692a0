//! The files themselves, and what is said of them.

use crate::app::state::Shop;
use crate::device::{clock, files};
use crate::exchange::crew::Gathered;
use crate::exchange::{Actors, Home, framework as case, statements as xapi};
use serde_json::Value;
use yew::AttrValue;

/// Everything that was answered and watched, of all tablets that were read in, as statements of xAPI 1.0.3.
pub(super) fn statements(shop: &Shop, gathered: &Gathered, home: &Home) -> AttrValue {
    let people: Vec<_> = gathered.devices().flat_map(|one| one.people.iter().cloned()).collect();
    let events: Vec<_> = gathered.events().cloned().collect();
    let told = xapi(shop.content(), home, &Actors::new(&people), &events);
    let count = [
        ("n", told.all.len().to_string()),
        ("nobodys", told.nobodys.to_string()),
        ("void", told.void.to_string()),
    ];
    said(shop, save("stepboard-xapi.json", &Value::Array(told.all)), "programs.xapi-saved", &count)
}

/// The competency list as a framework of CASE 1.1; with no creator told, the address stands there.
pub(super) fn framework(shop: &Shop, home: &Home, creator: &str) -> AttrValue {
    let creator = if creator.is_empty() { home.text() } else { creator };
    let told = case(shop.content(), home, creator, &clock::now());
    let count = told.get("CFItems").and_then(Value::as_array).map_or(0, Vec::len);
    said(shop, save("stepboard-case.json", &told), "programs.case-saved", &[("n", count.to_string())])
}

fn save(name: &str, told: &Value) -> bool {
    files::save_json(name, &told.to_string()).is_ok()
}

fn said(shop: &Shop, saved: bool, key: &str, count: &[(&str, String)]) -> AttrValue {
    if saved { shop.say_with(key, count) } else { shop.say("programs.not-saved") }
}
