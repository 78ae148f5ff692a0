//! Takes an apprentice in: number, name, and the name under which they answered so far, if they did.

use crate::app::hooks::{use_book, use_keys_held, use_people, use_signed};
use crate::app::parts::{Field, typed_into};
use crate::app::state::{Keep, Shop, use_shop};
use crate::people::NotTaken;
use crate::rules::term::Term;
use crate::signoff::ShopNumber;
use yew::prelude::*;

#[component]
pub(super) fn Newcomer() -> Html {
    let shop = use_shop();
    let people = use_people();
    let journal = use_book().book.journal.clone();
    let number = use_state(String::new);
    let name = use_state(String::new);
    let formerly = use_state(|| None::<String>);
    let wrong = use_state(|| (AttrValue::default(), AttrValue::default()));
    let said = use_state(AttrValue::default);
    let known: Vec<String> = journal.everyone().into_iter().map(str::to_owned).collect();
    let (signed, keys) = (use_signed(), use_keys_held());
    // Whether it was said that a number with sign-offs goes to the person they were signed for.
    let same = use_state(|| None::<bool>);
    let without: Vec<String> =
        known.iter().filter(|name| people.crew.of_journal(name).is_none()).cloned().collect();
    let onsubmit = {
        let (people, shop) = (people.clone(), shop.clone());
        let (number, name, formerly) = (number.clone(), name.clone(), formerly.clone());
        let (wrong, said, same) = (wrong.clone(), said.clone(), same.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let Ok(shop_number) = ShopNumber::new(number.trim()) else {
                wrong.set((shop.say("people.number-unfit"), AttrValue::default()));
                return;
            };
            let has = signed.book().is_some_and(|book| {
                book.sign_offs().iter().any(|entry| entry.credential.subject == shop_number)
            });
            if has && !(*same == Some(true) && keys.open.is_some()) {
                same.set(Some(same.unwrap_or(false)));
                return wrong.set((shop.say("people.number-signed"), AttrValue::default()));
            }
            let known: Vec<&str> = known.iter().map(String::as_str).collect();
            match people.crew.with(shop_number, &name, formerly.as_deref(), &known) {
                Err(not) => {
                    let why = shop.say(&format!("people.not.{}", not.slug()));
                    let of_name = not == NotTaken::NameUnfit;
                    wrong.set(if of_name {
                        (AttrValue::default(), why)
                    } else {
                        (why, AttrValue::default())
                    });
                }
                Ok(crew) => {
                    wrong.set(Default::default());
                    let (number, name, formerly) = (number.clone(), name.clone(), formerly.clone());
                    let (said, shop, same) = (said.clone(), shop.clone(), same.clone());
                    let taken = shop.say_with("people.taken", &[("name", name.trim().to_owned())]);
                    let done = Callback::from(move |stored: bool| {
                        if stored {
                            number.set(String::new());
                            name.set(String::new());
                            formerly.set(None);
                            same.set(None);
                            said.set(taken.clone());
                        } else {
                            said.set(shop.say("people.not-stored"));
                        }
                    });
                    people.put.emit(Keep { what: crew, done });
                }
            }
        })
    };
    let on_same = {
        let same = same.clone();
        Callback::from(move |_: Event| same.set(Some(*same != Some(true))))
    };
    let choices = std::iter::once(None).chain(without.iter().map(Some));
    let choices = choices.map(|one| former(&shop, one, &formerly, &name));
    html! {
        <form class="form paper" {onsubmit}>
            <h2>{ shop.say("people.new") }</h2>
            <p class="note">{ shop.say("people.crew-why") }</p>
            <div class="pair">
                <Field id="new-number" label={shop.say("people.number")} hint={shop.say("people.number-hint")} value={(*number).clone()} on_input={typed_into(&number)} wrong={wrong.0.clone()} />
                <Field id="new-name" label={shop.say("people.name")} hint={shop.say("people.name-hint")} value={(*name).clone()} on_input={typed_into(&name)} wrong={wrong.1.clone()} />
            </div>
            <fieldset key="formerly" class="setting" hidden={without.is_empty()}>
                <legend>{ shop.say("people.formerly") }</legend>
                <div class="segments">{ for choices }</div>
            </fieldset>
            <label key="same" hidden={same.is_none()} class={classes!("unit", (*same == Some(true)).then_some("picked"))}>
                <input type="checkbox" checked={*same == Some(true)} onchange={on_same} /><span>{ shop.say("people.same") }</span>
            </label>
            <button type="submit" class="control">{ shop.say("people.take-in") }</button>
            <p role="status">{ (*said).clone() }</p>
        </form>
    }
}

/// The name under which somebody answered so far, or none, to be picked; it is taken for their name where none is typed.
fn former(
    shop: &Shop,
    one: Option<&String>,
    formerly: &UseStateHandle<Option<String>>,
    name: &UseStateHandle<String>,
) -> Html {
    let picked = formerly.as_ref() == one;
    let onchange = {
        let (formerly, name, one) = (formerly.setter(), name.clone(), one.cloned());
        Callback::from(move |_: Event| {
            if let Some(known) = one.as_ref().filter(|_| name.is_empty()) {
                name.set(known.clone());
            }
            formerly.set(one.clone());
        })
    };
    let shown = one.map_or_else(|| shop.say("people.formerly-none"), |name| name.clone().into());
    html! {
        <label key={shown.to_string()} class={classes!("unit", picked.then_some("picked"))}>
            <input type="radio" name="formerly" checked={picked} {onchange} /><span>{ shown }</span>
        </label>
    }
}
