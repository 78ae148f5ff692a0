//! The files themselves, and what is said of them.

use crate::app::state::Shop;
use crate::device::Slices;
use crate::device::clock;
use crate::device::files::{self, Parts};
use crate::exchange::crew::Gathered;
use crate::exchange::{Actors, Home, Telling, framework as case};
use serde_json::Value;
use yew::AttrValue;

/// Bytes of a text that are handed to the browser at once.
const PART: usize = 256 * 1024;

/// Everything that was answered and watched, of all tablets that were read in, as statements of xAPI 1.0.3; worked out in
/// slices.
pub(super) async fn statements(shop: &Shop, gathered: &Gathered, home: &Home) -> AttrValue {
    let people: Vec<_> = gathered.devices().flat_map(|one| one.people.iter().cloned()).collect();
    let about: Vec<_> = gathered
        .events()
        .filter(|event| event.answer().is_none() && event.walked().is_none())
        .cloned()
        .collect();
    let actors = Actors::new(&people);
    let mut telling = Telling::begin(shop.content(), home, &actors, &about);
    let (parts, mut part, mut count) = (Parts::default(), String::from("["), 0_usize);
    let mut slices = Slices::begin();
    for event in gathered.events() {
        for statement in telling.tell(event) {
            part.push_str(if count == 0 { "\n" } else { ",\n" });
            part.push_str(&statement.to_string());
            count += 1;
        }
        if part.len() >= PART {
            parts.push(&std::mem::take(&mut part));
        }
        slices.rest().await;
    }
    parts.push(&(part + "\n]\n"));
    let told = [
        ("n", count.to_string()),
        ("nobodys", telling.nobodys.to_string()),
        ("void", telling.void.to_string()),
    ];
    said(shop, parts.save_json("stepboard-xapi.json").is_ok(), "programs.xapi-saved", &told)
}

/// The competency list as a framework of CASE 1.1; with no creator told, the address stands there.
pub(super) fn framework(shop: &Shop, home: &Home, creator: &str) -> AttrValue {
    let creator = if creator.is_empty() { home.text() } else { creator };
    let told = case(shop.content(), home, creator, &clock::now());
    let count = told.get("CFItems").and_then(Value::as_array).map_or(0, Vec::len);
    let saved = files::save_json("stepboard-case.json", &told.to_string()).is_ok();
    said(shop, saved, "programs.case-saved", &[("n", count.to_string())])
}

fn said(shop: &Shop, saved: bool, key: &str, count: &[(&str, String)]) -> AttrValue {
    if saved { shop.say_with(key, count) } else { shop.say("programs.not-saved") }
}
