//! Which answers of somebody no longer count, by what was found wrong.

use super::void_acts::void_words;
use crate::app::state::{SetsContext, Shop};
use crate::record::{Entry, EventName, Voided, Voids};
use std::collections::BTreeMap;
use yew::prelude::*;

/// `row` shows an answer.
pub(super) fn void_of(
    shop: &Shop,
    sets: &SetsContext,
    entries: &[&Entry],
    voids: &Voids<'_>,
    row: &dyn Fn(&&Entry) -> Html,
) -> Html {
    let mut touched: BTreeMap<EventName, (&Voided, Vec<&Entry>)> = BTreeMap::new();
    for entry in entries.iter().rev().copied() {
        if let Some(one) = voids.touches(entry) {
            touched.entry(one.origin()).or_insert((one, Vec::new())).1.push(entry);
        }
    }
    let found = |(origin, (one, entries)): (&EventName, &(&Voided, Vec<&Entry>))| {
        let n = [("n", entries.len().to_string())];
        html! {
            <li key={format!("{}-{}", origin.device, origin.sequence)}>
                { void_words(shop, sets, one) }
                <details class="seen">
                    <summary>{ shop.say_with("crew.void.which", &n) }</summary>
                    <ul class="rows links">{ for entries.iter().map(row) }</ul>
                </details>
            </li>
        }
    };
    html! {
        <section key="void" class="void-of" hidden={touched.is_empty()}>
            <h2>{ shop.say("crew.void.record-head") }</h2>
            <ul class="rows">{ for touched.iter().map(found) }</ul>
        </section>
    }
}
