//! Voids what was found wrong after it counted, and says what came of it where it was asked for.

use super::void_acts::{VoidActs, void_words};
use super::void_what::{VoidWhat, known_voidings, wrong};
use crate::app::hooks::{use_book, use_crew, use_keys_held, use_people, use_sets};
use crate::app::parts::{Field, Picture, icon, typed_into};
use crate::app::state::{Keep, KeysContext, Shop, use_shop};
use crate::device::page;
use crate::people::Crew;
use crate::record::{AssessorName, EventName, Journal, Stamp, Voided, Voids, Wrong, plain};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::{Element, HtmlSelectElement};
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

#[derive(Properties, PartialEq)]
pub(super) struct VoidFormProps {
    pub(super) id: String,
    /// What can be voided, one of them picked: what each is, in words.
    pub(super) choices: Vec<(VoidWhat, AttrValue)>,
    /// Told before something is voided.
    #[prop_or_default]
    pub(super) voiding: Callback<()>,
}

#[component]
pub(super) fn VoidForm(props: &VoidFormProps) -> Html {
    let shop = use_shop();
    let (books, crew, keys, people, sets) =
        (use_book(), use_crew(), use_keys_held(), use_people(), use_sets());
    let (reason, said) = (use_state(String::new), use_state(AttrValue::default));
    let (picked, busy, open) = (use_state(|| 0_usize), use_state(|| false), use_state(|| false));
    let known = known_voidings(&books, &crew);
    let voids = Voids::of(&known);
    let standing = props.choices.get(*picked).and_then(|(what, _)| what.standing(&voids)).cloned();
    let is_void = standing.is_some();
    let origin = standing.as_ref().map(Voided::origin);
    // What was done here takes the focus to what is said of it; what comes from elsewhere does not.
    let acted = use_mut_ref(|| false);
    let back = use_state(|| false);
    let heading = format!("{}-said", props.id);
    use_effect_with((origin.clone(), heading.clone()), {
        let (acted, back) = (Rc::clone(&acted), back.setter());
        move |(origin, heading)| {
            if acted.replace(false) {
                back.set(origin.is_none());
                page::focus(heading);
            }
        }
    });
    let on_done = {
        let (acted, open) = (Rc::clone(&acted), open.setter());
        Callback::from(move |()| {
            *acted.borrow_mut() = true;
            open.set(false);
        })
    };
    let ontoggle = {
        let open = open.setter();
        Callback::from(move |event: Event| {
            let folded = event.target().and_then(|target| target.dyn_into::<Element>().ok());
            open.set(folded.is_some_and(|folded| folded.has_attribute("open")));
        })
    };
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
        let (voiding, on_done, books, crew) =
            (props.voiding.clone(), on_done.clone(), books.clone(), crew.clone());
        let what = props.choices.get(*picked).map(|(what, _)| what.clone());
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
            voiding.emit(());
            let (shop, reason, said, on_done) = (shop.clone(), reason.clone(), said.clone(), on_done.clone());
            let (by, busy, books, crew) = (by.clone(), busy.clone(), books.clone(), crew.clone());
            spawn_local(async move {
                let wrong = wrong(&crew.content.0, what).await;
                let what = voided(&shop, &books.book.journal, by, wrong, &reason, None).into();
                let done = Callback::from(move |stored: bool| {
                    busy.set(false);
                    if stored {
                        reason.set(String::new());
                        on_done.emit(());
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
    let counts_again = *back && !is_void;
    let words = standing.as_ref().map(|one| void_words(&shop, &sets, one));
    html! {
        <div class="void-form">
            <div key="said" id={heading} class={classes!(is_void.then_some("kraft"))} role="status" tabindex="-1">
                if is_void { <p><b>{ shop.say("crew.void.now") }</b></p>{ words.unwrap_or_default() }<p>{ shop.say("crew.void.elsewhere") }</p> }
                if counts_again { <p>{ shop.say("crew.void.over") }</p> }
                if *busy { <p>{ shop.say("crew.void.busy") }</p> }
            </div>
            if let (Some(voided), Some(origin)) = (standing, origin) {
                <VoidActs key={format!("acts-{}-{}", origin.device, origin.sequence)} id={props.id.clone()} {voided} over=false {on_done} />
            }
            <details key="form" open={*open} {ontoggle} hidden={is_void && props.choices.len() < 2}>
                <summary>{ shop.say(if is_void { "crew.void.other" } else { "crew.void.open" }) }</summary>
                <form class="form" {onsubmit}>
                    <p class="note">{ shop.say("crew.void.why") }</p>
                    <div class="field" hidden={props.choices.len() < 2}>
                        <label for={select.clone()}>{ shop.say("crew.void.what") }</label>
                        <select id={select} {onchange}>{ for props.choices.iter().enumerate().map(option) }</select>
                    </div>
                    <div class="contents" hidden={is_void}>
                        <Field id={props.id.clone()} label={shop.say("crew.void.reason")} hint={shop.say("crew.void.reason-hint")} value={(*reason).clone()} on_input={typed_into(&reason)} wrong={(*said).clone()} />
                        <button type="submit" class="control" disabled={*busy}>{ icon(Picture::Cross) }{ shop.say("crew.void.go") }</button>
                    </div>
                </form>
            </details>
        </div>
    }
}
