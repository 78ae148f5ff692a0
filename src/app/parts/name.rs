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
}

#[component]
pub(in crate::app) fn NameField(props: &NameProps) -> Html {
    let shop = use_shop();
    let typed = use_state(|| props.name.to_string());
    let oninput = {
        let set = typed.setter();
        move |event: InputEvent| {
            let target = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
            if let Some(input) = target {
                set.set(input.value());
            }
        }
    };
    let onsubmit =
        use_callback(((*typed).clone(), props.on_name.clone()), |event: SubmitEvent, (typed, on)| {
            event.prevent_default();
            on.emit(typed.trim().to_owned());
        });
    let skip = props.on_name.reform(|_: MouseEvent| String::new());
    html! {
        <form class="name-form" {onsubmit}>
            <label for="name">{ &props.label }</label>
            <input id="name" type="text" autocomplete="off" maxlength={NAME_MOST} value={(*typed).clone()} {oninput} />
            <button type="submit" class="control">{ shop.say("home.name-save") }</button>
            <button type="button" class="control" hidden={!props.skip} onclick={skip}>{ shop.say("home.name-skip") }</button>
        </form>
    }
}
