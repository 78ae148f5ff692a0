//! Where the folder is, who asks, and how long the password rests.

use super::typed::{Wrong, use_typed};
use crate::app::hooks::use_folder;
use crate::app::parts::{Field, typed_into};
use crate::app::state::{FolderAct, Shop, use_shop};
use crate::device::carry;
use crate::exchange::folder::Rest;
use crate::rules::term::Term;
use yew::prelude::*;

/// What the address of an encrypted server begins with.
const HTTPS: &str = "https:";

#[component]
pub(super) fn Setup() -> Html {
    let shop = use_shop();
    let folder = use_folder();
    let typed = use_typed(&folder.view);
    let wrong = use_state(Wrong::default);
    let onsubmit = {
        let (shop, act) = (shop.clone(), folder.act.clone());
        let (typed, wrong) = (typed.clone(), wrong.setter());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            match typed.read(&shop) {
                Err(now) => wrong.set(now),
                Ok(used) => {
                    wrong.set(Wrong::default());
                    act.emit(FolderAct::Use(Box::new(used)));
                    typed.password.set(String::new());
                }
            }
        })
    };
    let open_way = !carry::origin().starts_with(HTTPS);
    html! {
        <form class="form paper" {onsubmit}>
            <h2>{ shop.say(if folder.view.on { "folder.change" } else { "folder.begin" }) }</h2>
            <p key="open" class="kraft" hidden={!open_way}>{ shop.say("folder.open-way") }</p>
            <Field id="folder-address" label={shop.say("folder.address")} hint={shop.say_with("folder.address-hint", &[("origin", carry::origin())])} value={(*typed.address).clone()} on_input={typed_into(&typed.address)} wrong={wrong.address.clone()} />
            <div class="pair">
                <Field id="folder-user" label={shop.say("folder.user")} value={(*typed.user).clone()} on_input={typed_into(&typed.user)} wrong={wrong.user.clone()} />
                <Field id="folder-password" kind="password" label={shop.say("folder.password")} value={(*typed.password).clone()} on_input={typed_into(&typed.password)} wrong={wrong.password.clone()} />
            </div>
            { rests(&shop, &typed.rest) }
            <div key="until" hidden={*typed.rest != Rest::Day}>
                <Field id="folder-until" kind="date" label={shop.say("folder.until")} value={(*typed.until).clone()} on_input={typed_into(&typed.until)} wrong={wrong.until.clone()} />
            </div>
            <fieldset class="setting">
                <legend>{ shop.say("folder.does") }</legend>
                <div class="segments">
                    { switch(&shop, "folder.hands-in", &typed.hands_in) }
                    { switch(&shop, "folder.takes", &typed.takes) }
                </div>
                <p class="note">{ shop.say("folder.takes-why") }</p>
            </fieldset>
            <button class="control">{ shop.say("folder.use") }</button>
        </form>
    }
}

/// How long the password rests.
fn rests(shop: &Shop, rest: &UseStateHandle<Rest>) -> Html {
    let choice = |one: &Rest| {
        let (set, one) = (rest.setter(), *one);
        let picked = **rest == one;
        html! {
            <label key={one.slug()} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name="rest" checked={picked} onchange={Callback::from(move |_: Event| set.set(one))} />
                <span>{ shop.say(&format!("folder.rest.{}", one.slug())) }</span>
            </label>
        }
    };
    html! {
        <fieldset class="setting">
            <legend>{ shop.say("folder.rests-how") }</legend>
            <div class="segments">{ for Rest::ALL.iter().map(choice) }</div>
            <p class="note">{ shop.say(&format!("folder.rest.{}.told", rest.slug())) }</p>
        </fieldset>
    }
}

/// Something that the folder does or not.
fn switch(shop: &Shop, key: &'static str, state: &UseStateHandle<bool>) -> Html {
    let (on, set) = (**state, state.setter());
    html! {
        <label {key} class={classes!("unit", on.then_some("picked"))}>
            <input type="checkbox" checked={on} onchange={Callback::from(move |_: Event| set.set(!on))} />
            <span>{ shop.say(key) }</span>
        </label>
    }
}
