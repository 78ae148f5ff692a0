//! What is void, by whom and why; what came from other tablets is taken over, and what was right after all is taken back.

use super::void_acts::{VoidActs, void_words};
use super::void_what::known_voidings;
use crate::app::hooks::{use_book, use_crew, use_sets};
use crate::app::state::use_shop;
use crate::record::{Event, EventName, Voided, Wrong};
use std::collections::BTreeMap;
use std::sync::Arc;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Voidings() -> Html {
    let shop = use_shop();
    let (books, crew, sets) = (use_book(), use_crew(), use_sets());
    let mut all: BTreeMap<EventName, Arc<Voided>> = BTreeMap::new();
    for event in known_voidings(&books, &crew) {
        if let Event::Voided(one) = event {
            all.entry(one.origin()).or_insert(one);
        }
    }
    let lifts =
        |one: &Arc<Voided>| if let Wrong::Void { void } = &one.wrong { Some(void.clone()) } else { None };
    let lifted: Vec<EventName> = all.values().filter(|one| one.is_fit()).filter_map(lifts).collect();
    let row = |(origin, one): (&EventName, &Arc<Voided>)| {
        let name = format!("{}-{}", origin.device, origin.sequence);
        let over = lifted.contains(origin);
        html! {
            <li key={name.clone()} class={over.then_some("struck")}>
                { void_words(&shop, &sets, one) }
                <VoidActs id={format!("voiding-{name}")} voided={Voided::clone(one)} {over} />
            </li>
        }
    };
    html! {
        <section class="voidings" hidden={all.is_empty()}>
            <h2>{ shop.say("crew.void.head") }</h2>
            <p class="note">{ shop.say("crew.void.head-why") }</p>
            <ul class="rows">{ for all.iter().map(row) }</ul>
        </section>
    }
}
