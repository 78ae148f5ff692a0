//! Opens the key of an instructor or assessor by its passphrase, and locks it again.

use super::{Field, Picture, icon, typed_into};
use crate::app::hooks::{use_keys_held, use_signed};
use crate::app::route::Route;
use crate::app::state::{Shop, Unlocked, use_shop};
use crate::device::{clock, page};
use crate::rules::term::Term;
use crate::signoff::{Person, SecretKey, WrappedKey};
use std::rc::Rc;
use yew::prelude::*;

/// The key that a typed passphrase opens, or in words why it does not. It takes a second or two, see [`page::once_drawn`].
pub(in crate::app) fn opened(shop: &Shop, wrapped: &WrappedKey, typed: &str) -> Result<SecretKey, AttrValue> {
    let key = wrapped.open(&page::normalised(typed));
    key.map_err(|locked| shop.text(&format!("locked.{}", locked.slug())))
}

/// Who has opened a key, or the way to do so.
#[component]
pub(in crate::app) fn Unlock() -> Html {
    let shop = use_shop();
    let keys = use_keys_held();
    let signed = use_signed();
    let chosen = use_state(|| 0_usize);
    let typed = use_state(String::new);
    let busy = use_state(|| false);
    let wrong = use_state(AttrValue::default);
    let now = clock::when();
    let known: Vec<(Person, WrappedKey)> = signed.book().map_or_else(Vec::new, |book| {
        let trusted = |person: &&Person| now.as_ref().is_some_and(|now| person.trusted_at(now));
        let here = |person: &Person| Some((person.clone(), keys.wrapped(&person.key)?.clone()));
        book.list().people.iter().filter(trusted).filter_map(here).collect()
    });
    let onsubmit = {
        let one = known.get(*chosen).or(known.first()).cloned();
        let (typed, busy, wrong, shop) = (typed.clone(), busy.clone(), wrong.clone(), shop.clone());
        let set_open = keys.set_open.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let (Some((person, wrapped)), false) = (one.clone(), *busy) else { return };
            busy.set(true);
            wrong.set(AttrValue::default());
            let (typed, busy, wrong, shop) = (typed.clone(), busy.clone(), wrong.clone(), shop.clone());
            let set_open = set_open.clone();
            page::once_drawn(move || {
                match opened(&shop, &wrapped, &typed) {
                    Ok(key) => set_open.emit(Some(Unlocked { person, key: Rc::new(key) })),
                    Err(why) => wrong.set(why),
                }
                typed.set(String::new());
                busy.set(false);
            });
        })
    };
    if let Some(open) = &keys.open {
        let lock = keys.set_open.reform(|_: MouseEvent| None);
        let named = [("name", open.person.name.clone()), ("number", open.person.number.to_string())];
        return html! {
            <section key="unlocked" class="kraft unlocked">
                <p>{ icon(Picture::Tick) }{ shop.say_with("unlock.open", &named) }</p>
                <button type="button" class="control" onclick={lock}>{ shop.say("unlock.lock") }</button>
            </section>
        };
    }
    let choice = |(place, (person, _)): (usize, &(Person, WrappedKey))| {
        let onchange = {
            let chosen = chosen.setter();
            Callback::from(move |_: Event| chosen.set(place))
        };
        let picked = *chosen == place;
        html! {
            <label key={person.key.did()} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name="unlock-who" checked={picked} {onchange} />
                <span>{ format!("{} ({})", person.name, person.number) }</span>
            </label>
        }
    };
    html! {
        <section key="locked" class="paper unlock">
            <h2>{ shop.say("unlock.title") }</h2>
            <p key="none" hidden={!known.is_empty()}>
                { shop.say("unlock.none") }{ " " }<a class="text-link" href={Route::People.address()}>{ shop.say("unlock.people") }</a>
            </p>
            <form key="form" class="form" hidden={known.is_empty()} {onsubmit}>
                <fieldset key="who" class="setting">
                    <legend>{ shop.say("unlock.who") }</legend>
                    <div class="segments">{ for known.iter().enumerate().map(choice) }</div>
                </fieldset>
                <Field id="unlock-passphrase" label={shop.say("unlock.passphrase")} kind="password" autocomplete="current-password"
                    value={(*typed).clone()} on_input={typed_into(&typed)} wrong={(*wrong).clone()} />
                <button type="submit" class="control" disabled={*busy}>
                    { if *busy { shop.say("unlock.busy") } else { shop.say("unlock.go") } }
                </button>
                <p class="note" role="status">{ if *busy { shop.say("unlock.wait") } else { AttrValue::default() } }</p>
            </form>
        </section>
    }
}
