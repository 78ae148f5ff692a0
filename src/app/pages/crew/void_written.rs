//! Writes down that something is void: who finds it, and why.

use super::void_what::{VoidWhat, wrong};
use crate::app::hooks::{use_book, use_crew, use_keys_held, use_people};
use crate::app::state::{Keep, KeysContext, Shop, use_shop};
use crate::people::Crew;
use crate::record::{AssessorName, EventName, Journal, Stamp, Voided, Wrong, plain};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Whoever finds it: who has opened a key, else who works here.
pub(super) fn finder(shop: &Shop, keys: &KeysContext, crew: &Crew) -> AssessorName {
    if let Some(open) = &keys.open {
        return AssessorName { number: open.person.number.to_string(), name: open.person.name.clone() };
    }
    let person = &shop.settings.person;
    match crew.of_journal(person) {
        Some(member) => AssessorName { number: member.number.to_string(), name: member.name.clone() },
        None => AssessorName { number: String::new(), name: person.clone() },
    }
}

/// The event that voids something, written now.
pub(super) fn voided(
    shop: &Shop,
    journal: &Journal,
    by: AssessorName,
    wrong: Wrong,
    reason: &str,
    from: Option<EventName>,
) -> Voided {
    let stamp = Stamp { sequence: journal.next_sequence(), ..shop.stamp("") };
    Voided { stamp, wrong, reason: plain(reason), by, from }
}

/// A reason that is typed, and how far it is written down.
pub(super) struct Writing {
    pub(super) reason: UseStateHandle<String>,
    /// What keeps it from being written; empty where nothing does.
    pub(super) wrong: AttrValue,
    pub(super) busy: bool,
    pub(super) onsubmit: Callback<SubmitEvent>,
}

/// Voids `what` for the reason that is typed: tells `before` it begins, and `done` once it is stored.
#[hook]
pub(super) fn use_writing(what: Option<VoidWhat>, before: &Callback<()>, done: &Callback<()>) -> Writing {
    let shop = use_shop();
    let (books, crew, keys, people) = (use_book(), use_crew(), use_keys_held(), use_people());
    let (reason, said, busy) = (use_state(String::new), use_state(AttrValue::default), use_state(|| false));
    let onsubmit = {
        let (reason, said, busy) = (reason.clone(), said.setter(), busy.clone());
        let (before, done) = (before.clone(), done.clone());
        let by = finder(&shop, &keys, &people.crew);
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let Some(what) = what.clone().filter(|_| !*busy) else { return };
            let journal = &books.book.journal;
            let nothing = Wrong::Set { set: String::new() };
            if !voided(&shop, journal, by.clone(), nothing, &reason, None).is_fit() {
                return said.set(shop.say("crew.void.no-reason"));
            }
            said.set(AttrValue::default());
            busy.set(true);
            before.emit(());
            let (shop, reason, said, done) = (shop.clone(), reason.clone(), said.clone(), done.clone());
            let (by, busy, books, crew) = (by.clone(), busy.clone(), books.clone(), crew.clone());
            spawn_local(async move {
                let wrong = wrong(&crew.content.0, what).await;
                let what = voided(&shop, &books.book.journal, by, wrong, &reason, None).into();
                let done = Callback::from(move |stored: bool| {
                    busy.set(false);
                    if stored {
                        reason.set(String::new());
                        done.emit(());
                    } else {
                        said.set(shop.say("assess.not-stored"));
                    }
                });
                books.write.emit(Keep { what, done });
            });
        })
    };
    Writing { reason, wrong: (*said).clone(), busy: *busy, onsubmit }
}
