//! Asks for a name, once and only if one is wanted.

use crate::app::state::use_shop;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// Longest name.
const NAME_MOST: &str = "24";

#[derive(Properties, PartialEq)]
pub(in crate::app) struct NameProps {
    pub(in crate::app) name: AttrValue,
    pub(in crate::app) label: AttrValue,
    /// Gets the name; empty for going on without.
    pub(in crate::app) on_name: Callback<String>,
    pub(in crate::app) skip: bool,
    /// What its button says where more happens than that the name is used. Text: `app.<key>`.
    #[prop_or_default]
    pub(in crate::app) next: Option<&'static str>,
}

/// That a name is used now, where it was given.
pub(in crate::app) fn named(said: &AttrValue) -> Html {
    html! { <p key="named" class="kraft named" role="status">{ said }</p> }
}

/// Id of what is wrong.
const WRONG: &str = "name-wrong";

#[component]
pub(in crate::app) fn NameField(props: &NameProps) -> Html {
    let shop = use_shop();
    let typed = use_state(|| props.name.to_string());
    let tried = use_state(|| false);
    let oninput = {
        let set = typed.setter();
        move |event: InputEvent| {
            let target = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
            if let Some(input) = target {
                set.set(input.value());
            }
        }
    };
    // Where something follows at once, no name is no answer.
    let wanted = props.next.is_some();
    let onsubmit = use_callback(((*typed).clone(), props.on_name.clone(), wanted), {
        let tried = tried.setter();
        move |event: SubmitEvent, (typed, on, wanted)| {
            event.prevent_default();
            tried.set(true);
            let name = typed.trim();
            if !(*wanted && name.is_empty()) {
                on.emit(name.to_owned());
            }
        }
    });
    let wrong = wanted && *tried && typed.trim().is_empty();
    let skip = props.on_name.reform(|_: MouseEvent| String::new());
    html! {
        <form class="name-form" {onsubmit}>
            <label for="name">{ &props.label }</label>
            <input id="name" type="text" autocomplete="off" maxlength={NAME_MOST} value={(*typed).clone()} {oninput}
                aria-invalid={wrong.to_string()} aria-describedby={WRONG} />
            <button type="submit" class={if wanted { "next-step" } else { "control" }}>{ shop.say(props.next.unwrap_or("home.name-save")) }</button>
            <button type="button" class="control" hidden={!props.skip} onclick={skip}>{ shop.say("home.name-skip") }</button>
            <p id={WRONG} class="wrong" role="alert" hidden={!wrong}>{ shop.say("home.name-missing") }</p>
        </form>
    }
}
