//! Sets or takes away the PIN of an apprentice.

use crate::app::hooks::use_people;
use crate::app::parts::{Field, typed_into};
use crate::app::state::{Keep, use_shop};
use crate::device::page;
use crate::people::{Crew, Member, PIN_LEAST, PIN_MOST, Pin};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct PinProps {
    pub(super) member: Member,
}

#[component]
pub(super) fn PinForm(props: &PinProps) -> Html {
    let shop = use_shop();
    let people = use_people();
    let typed = use_state(String::new);
    let busy = use_state(|| false);
    let wrong = use_state(AttrValue::default);
    let said = use_state(AttrValue::default);
    let number = props.member.number.to_string();
    let limits = [("least", PIN_LEAST.to_string()), ("most", PIN_MOST.to_string())];
    let store = {
        let (said, busy, shop, put) = (said.clone(), busy.clone(), shop.clone(), people.put.clone());
        move |crew: Crew| {
            let (said, busy, shop) = (said.clone(), busy.clone(), shop.clone());
            let done = Callback::from(move |stored| {
                busy.set(false);
                said.set(shop.say(if stored { "people.stored" } else { "people.not-stored" }));
            });
            put.emit(Keep { what: crew, done });
        }
    };
    let onsubmit = {
        let (people, typed, busy, wrong, shop) =
            (people.clone(), typed.clone(), busy.clone(), wrong.clone(), shop.clone());
        let (number, limits, store) = (number.clone(), limits.clone(), store.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            if *busy {
                return;
            }
            if !Pin::is_one(&typed) {
                return wrong.set(shop.say_with("people.pin-unfit", &limits));
            }
            busy.set(true);
            wrong.set(AttrValue::default());
            let (people, typed, busy, wrong, shop) =
                (people.clone(), typed.clone(), busy.clone(), wrong.clone(), shop.clone());
            let (number, store) = (number.clone(), store.clone());
            page::once_drawn(move || {
                let pin = page::random_bytes().and_then(|salt| Pin::new(&typed, salt));
                typed.set(String::new());
                match pin.and_then(|pin| people.crew.with_pin(&number, Some(pin)).ok()) {
                    Some(crew) => store(crew),
                    None => {
                        busy.set(false);
                        wrong.set(shop.say("people.no-random"));
                    }
                }
            });
        })
    };
    let take_away = {
        let (people, number) = (people.clone(), number);
        Callback::from(move |_: MouseEvent| {
            if let Ok(crew) = people.crew.with_pin(&number, None) {
                store(crew);
            }
        })
    };
    let has = props.member.pin.is_some();
    html! {
        <form class="form paper" {onsubmit}>
            <h2>{ shop.say("people.pin") }</h2>
            <p class="note">{ shop.say("people.pin-why") }</p>
            <Field id="person-pin" kind="password" inputmode="numeric" label={shop.say("people.pin-new")} hint={shop.say_with("people.pin-hint", &limits)}
                value={(*typed).clone()} on_input={typed_into(&typed)} wrong={(*wrong).clone()} />
            <div class="people">
                <button type="submit" class="control" disabled={*busy}>{ shop.say("people.pin-set") }</button>
                <button type="button" class="control" hidden={!has} onclick={take_away}>{ shop.say("people.pin-off") }</button>
            </div>
            <p role="status">{ (*said).clone() }</p>
        </form>
    }
}
