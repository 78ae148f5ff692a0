//! Voids what was found wrong after it counted.

use crate::app::hooks::{Slices, use_book, use_crew, use_keys_held, use_people};
use crate::app::pages::events;
use crate::app::parts::{Field, Picture, icon, typed_into};
use crate::app::state::{Keep, KeysContext, Shop, use_shop};
use crate::content::Content;
use crate::exchange::crew::decides;
use crate::people::Crew;
use crate::record::{self, AssessorName, CardKind, EventName, Journal, Stamp, Voided, Wrong, plain};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlSelectElement;
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
    let stamp = Stamp { sequence: journal.next_sequence(), ..events::stamp(shop, "") };
    Voided { stamp, wrong, reason: plain(reason), by, from }
}

#[derive(Properties, PartialEq)]
pub(super) struct VoidFormProps {
    pub(super) id: String,
    /// What can be voided, one of them picked: what each is, in words.
    pub(super) choices: Vec<(VoidWhat, AttrValue)>,
}

/// What can be voided.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum VoidWhat {
    /// Cards of a family.
    Cards(CardKind),
    /// A rule.
    Rule(String),
    /// A set.
    Set(String),
}

/// What is written down for it; a rule takes all cards with it of which it decides one.
async fn wrong(content: &Content, what: VoidWhat) -> Wrong {
    match what {
        VoidWhat::Cards(kind) => Wrong::Cards(kind),
        VoidWhat::Set(set) => Wrong::Set { set },
        VoidWhat::Rule(rule) => {
            let (mut cards, mut slices) = (Vec::new(), Slices::begin());
            for family in &content.families {
                if decides(content, &rule, &family.id) {
                    cards.push(CardKind { family: family.id.clone(), version: family.version });
                }
                slices.rest().await;
            }
            Wrong::Rule { rule, cards }
        }
    }
}

#[component]
pub(super) fn VoidForm(props: &VoidFormProps) -> Html {
    let shop = use_shop();
    let (books, crew, keys, people) = (use_book(), use_crew(), use_keys_held(), use_people());
    let (reason, said) = (use_state(String::new), use_state(AttrValue::default));
    let (picked, busy) = (use_state(|| 0_usize), use_state(|| false));
    let onchange = {
        let picked = picked.setter();
        Callback::from(move |event: Event| {
            let field = event.target().and_then(|target| target.dyn_into::<HtmlSelectElement>().ok());
            let place = field.and_then(|field| usize::try_from(field.selected_index()).ok());
            picked.set(place.unwrap_or(0));
        })
    };
    let onsubmit = {
        let (shop, reason, said, busy) = (shop.clone(), reason.clone(), said.clone(), busy.clone());
        let what = props.choices.get(*picked).map(|(what, _)| what.clone());
        let by = finder(&shop, &keys, &people.crew);
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let Some(what) = what.clone().filter(|_| !*busy) else { return };
            let empty = voided(
                &shop,
                &books.book.journal,
                by.clone(),
                Wrong::Set { set: String::new() },
                &reason,
                None,
            );
            if !empty.is_fit() {
                return said.set(shop.say("crew.void.no-reason"));
            }
            said.set(AttrValue::default());
            busy.set(true);
            let (shop, reason, said) = (shop.clone(), reason.clone(), said.clone());
            let (by, busy, books, crew) = (by.clone(), busy.clone(), books.clone(), crew.clone());
            spawn_local(async move {
                let wrong = wrong(&crew.content.0, what).await;
                let what =
                    record::Event::Voided(voided(&shop, &books.book.journal, by, wrong, &reason, None));
                let done = Callback::from(move |stored: bool| {
                    busy.set(false);
                    if stored {
                        reason.set(String::new());
                    } else {
                        said.set(shop.say("assess.not-stored"));
                    }
                });
                books.write.emit(Keep { what, done });
            });
        })
    };
    let option = |(nth, (_, words)): (usize, &(VoidWhat, AttrValue))| {
        html! { <option key={nth} value={nth.to_string()} selected={nth == *picked}>{ words }</option> }
    };
    let select = format!("{}-what", props.id);
    html! {
        <details class="void-form">
            <summary>{ shop.say("crew.void.open") }</summary>
            <form class="form" {onsubmit}>
                <p class="note">{ shop.say("crew.void.why") }</p>
                <div class="field" hidden={props.choices.len() < 2}>
                    <label for={select.clone()}>{ shop.say("crew.void.what") }</label>
                    <select id={select} {onchange}>{ for props.choices.iter().enumerate().map(option) }</select>
                </div>
                <Field id={props.id.clone()} label={shop.say("crew.void.reason")} hint={shop.say("crew.void.reason-hint")} value={(*reason).clone()} on_input={typed_into(&reason)} wrong={(*said).clone()} />
                <button type="submit" class="control" disabled={*busy}>{ icon(Picture::Cross) }{ shop.say("crew.void.go") }</button>
            </form>
        </details>
    }
}
