//! Where the folder is, who asks, and how long the password rests.

use crate::app::hooks::use_folder;
use crate::app::parts::{Field, typed_into};
use crate::app::state::{FolderAct, use_shop};
use crate::device::{carry, clock};
use crate::exchange::folder::{Place, Rest, Setup as Used};
use crate::record::LocalDate;
use crate::rules::term::Term;
use yew::prelude::*;

/// What the address of an encrypted server begins with.
const HTTPS: &str = "https:";
/// Parts a user from the password (RFC 7617, section 2).
const COLON: char = ':';

/// What is wrong with what was typed, a field each.
#[derive(Debug, Clone, PartialEq, Default)]
struct Wrong {
    address: AttrValue,
    user: AttrValue,
    password: AttrValue,
    until: AttrValue,
}

#[component]
pub(super) fn Setup() -> Html {
    let shop = use_shop();
    let folder = use_folder();
    let view = &folder.view;
    let address = use_state(|| view.place.clone());
    let user = use_state(|| view.user.clone());
    let password = use_state(String::new);
    let rest = use_state(|| view.rest.unwrap_or(Rest::Page));
    let until = use_state(|| view.until.map(|day| day.to_string()).unwrap_or_default());
    let hands_in = use_state(|| !view.on || view.hands_in);
    let takes = use_state(|| view.takes_results);
    let wrong = use_state(Wrong::default);
    let onsubmit = {
        let (shop, act) = (shop.clone(), folder.act.clone());
        let (address, user, password) = (address.clone(), user.clone(), password.clone());
        let (rest, until, hands_in, takes, wrong) = (*rest, until.clone(), *hands_in, *takes, wrong.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let typed = address.trim();
            let place = Place::new(typed.strip_prefix(carry::origin().as_str()).unwrap_or(typed));
            let say = |bad: bool, key: &str| if bad { shop.say(key) } else { AttrValue::default() };
            let last: Option<LocalDate> = until.parse().ok();
            let rests = last.zip(clock::today()).is_some_and(|(last, today)| Used::may_rest(last, today));
            let now = Wrong {
                address: say(place.is_err(), "folder.address-wrong"),
                user: say(user.is_empty() || user.contains(COLON), "folder.user-wrong"),
                password: say(password.is_empty(), "folder.password-wrong"),
                until: say(rest == Rest::Day && !rests, "folder.until-wrong"),
            };
            wrong.set(now.clone());
            let (Ok(place), true) =
                (place, Wrong { address: AttrValue::default(), ..now } == Wrong::default())
            else {
                return;
            };
            act.emit(FolderAct::Use(Box::new(Used {
                on: true,
                place: Some(place),
                takes_results: takes,
                user: (*user).clone(),
                rest,
                until: last.filter(|_| rest == Rest::Day),
                password: Some((*password).clone()),
                hands_in,
            })));
            password.set(String::new());
        })
    };
    let resting = |one: &Rest| {
        let (rest, one) = (rest.clone(), *one);
        let picked = *rest == one;
        html! {
            <label key={one.slug()} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name="rest" checked={picked} onchange={Callback::from(move |_: Event| rest.set(one))} />
                <span>{ shop.say(&format!("folder.rest.{}", one.slug())) }</span>
            </label>
        }
    };
    let switch = |key: &'static str, state: &UseStateHandle<bool>| {
        let (on, state) = (**state, state.clone());
        html! {
            <label key={key} class={classes!("unit", on.then_some("picked"))}>
                <input type="checkbox" checked={on} onchange={Callback::from(move |_: Event| state.set(!on))} />
                <span>{ shop.say(key) }</span>
            </label>
        }
    };
    let open_way = !carry::origin().starts_with(HTTPS);
    html! {
        <form class="form paper" {onsubmit}>
            <h2>{ shop.say(if view.on { "folder.change" } else { "folder.begin" }) }</h2>
            <p key="open" class="kraft" hidden={!open_way}>{ shop.say("folder.open-way") }</p>
            <Field id="folder-address" label={shop.say("folder.address")} hint={shop.say_with("folder.address-hint", &[("origin", carry::origin())])} value={(*address).clone()} on_input={typed_into(&address)} wrong={wrong.address.clone()} />
            <div class="pair">
                <Field id="folder-user" label={shop.say("folder.user")} value={(*user).clone()} on_input={typed_into(&user)} wrong={wrong.user.clone()} />
                <Field id="folder-password" kind="password" label={shop.say("folder.password")} value={(*password).clone()} on_input={typed_into(&password)} wrong={wrong.password.clone()} />
            </div>
            <fieldset class="setting">
                <legend>{ shop.say("folder.rests-how") }</legend>
                <div class="segments">{ for Rest::ALL.iter().map(resting) }</div>
                <p class="note">{ shop.say(&format!("folder.rest.{}.told", rest.slug())) }</p>
            </fieldset>
            <div key="until" hidden={*rest != Rest::Day}>
                <Field id="folder-until" kind="date" label={shop.say("folder.until")} value={(*until).clone()} on_input={typed_into(&until)} wrong={wrong.until.clone()} />
            </div>
            <fieldset class="setting">
                <legend>{ shop.say("folder.does") }</legend>
                <div class="segments">
                    { switch("folder.hands-in", &hands_in) }
                    { switch("folder.takes", &takes) }
                </div>
                <p class="note">{ shop.say("folder.takes-why") }</p>
            </fieldset>
            <button class="control">{ shop.say("folder.use") }</button>
        </form>
    }
}
