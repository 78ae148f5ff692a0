//! What no longer counts of one's answers, because cards or a set were found wrong: told to whom it concerns.

use crate::app::pages::void_words;
use crate::app::state::{SetsContext, Shop, Told};
use crate::record::{EventName, Voided, Voids};
use std::collections::BTreeMap;
use yew::prelude::*;

pub(super) fn void(shop: &Shop, sets: &SetsContext, told: &Told, voids: &Voids<'_>) -> Html {
    let mut touched: BTreeMap<EventName, (&Voided, usize)> = BTreeMap::new();
    for one in told.entries().filter_map(|entry| voids.touches(entry)) {
        touched.entry(one.origin()).or_insert((one, 0)).1 += 1;
    }
    let row = |(one, n): &(&Voided, usize)| {
        let origin = one.origin();
        html! {
            <li key={format!("{}-{}", origin.device, origin.sequence)}>
                { void_words(shop, sets, one) }<span class="note">{ shop.say_with("crew.void.record-answers", &[("n", n.to_string())]) }</span>
            </li>
        }
    };
    html! {
        <section key="void" hidden={touched.is_empty()}>
            <h2>{ shop.say("crew.void.record-head") }</h2>
            <p class="kraft">{ shop.say("crew.void.record-why") }</p>
            <ul class="rows">{ for touched.values().map(row) }</ul>
        </section>
    }
}
