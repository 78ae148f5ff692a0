//! What is void, by whom and why; what came from other tablets is taken over, and what was right after all is taken back.

use super::void::{finder, voided};
use crate::app::hooks::{use_book, use_crew, use_keys_held, use_people};
use crate::app::parts::{Picture, icon};
use crate::app::state::{Keep, Shop, use_shop};
use crate::device::clock;
use crate::record::{Event, EventName, Voided, Wrong};
use std::collections::BTreeMap;
use yew::prelude::*;

#[component]
pub(super) fn Voidings() -> Html {
    let shop = use_shop();
    let (books, crew, keys, people) = (use_book(), use_crew(), use_keys_held(), use_people());
    let of = |event: &'_ Event| if let Event::Voided(one) = event { Some(one.clone()) } else { None };
    let own: Vec<Voided> = books.book.journal.events().iter().filter_map(of).collect();
    let others = crew.gathered.iter().flat_map(|all| all.voided()).filter_map(of);
    let mut all: BTreeMap<EventName, Voided> = BTreeMap::new();
    for one in own.iter().cloned().chain(others) {
        all.entry(one.origin()).or_insert(one);
    }
    let lifts = |one: &Voided| if let Wrong::Void { void } = &one.wrong { Some(void.clone()) } else { None };
    let lifted: Vec<EventName> = all.values().filter_map(lifts).collect();
    let by = finder(&shop, &keys, &people.crew);
    let write = |what: Voided| {
        let books = books.clone();
        Callback::from(move |_: MouseEvent| {
            books.write.emit(Keep { what: Event::Voided(what.clone()), done: Callback::noop() });
        })
    };
    let row = |(origin, one): (&EventName, &Voided)| {
        let here = own.iter().any(|own| own.origin() == *origin);
        let over = lifted.contains(origin);
        let lift = matches!(one.wrong, Wrong::Void { .. });
        let reason = shop.say("crew.void.taken-back");
        let back = voided(
            &shop,
            &books.book.journal,
            by.clone(),
            Wrong::Void { void: origin.clone() },
            &reason,
            None,
        );
        let take = voided(
            &shop,
            &books.book.journal,
            one.by.clone(),
            one.wrong.clone(),
            &one.reason,
            Some(origin.clone()),
        );
        html! {
            <li key={format!("{}-{}", origin.device, origin.sequence)} class={over.then_some("struck")}>
                { void_words(&shop, one) }
                <span class="people">
                    <span key="over" class="note" hidden={!over}>{ shop.say("crew.void.over") }</span>
                    <button key="take" type="button" class="control" hidden={here} onclick={write(take)}>{ icon(Picture::Save) }{ shop.say("crew.void.take") }</button>
                    <button key="back" type="button" class="control" hidden={over || lift || !here} onclick={write(back)}>{ shop.say("crew.void.back") }</button>
                </span>
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

/// What was found wrong, why, by whom and when.
pub(in crate::app) fn void_words(shop: &Shop, one: &Voided) -> Html {
    let what = match &one.wrong {
        Wrong::Cards(kind) => shop.family_title(&kind.family),
        Wrong::Rule { rule, cards } => {
            let told =
                [("rule", shop.text(&format!("rule.{rule}")).to_string()), ("n", cards.len().to_string())];
            shop.say_with("crew.void.rule", &told)
        }
        Wrong::Set { set } => shop.say_with("crew.void.set", &[("set", set.clone())]),
        Wrong::Void { .. } => shop.say("crew.void.void"),
    };
    let by = if one.by.name.is_empty() { shop.say("crew.nameless").to_string() } else { one.by.name.clone() };
    let told = [("reason", one.reason.clone()), ("name", by), ("at", clock::local(&one.stamp.at))];
    html! {
        <span class="words"><b>{ what }</b><span>{ shop.say_with("crew.void.told", &told) }</span></span>
    }
}
