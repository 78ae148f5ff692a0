//! A line to type in: its name, what is allowed, and what is wrong with it, said beside it.

use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct FieldProps {
    pub(in crate::app) id: AttrValue,
    pub(in crate::app) label: AttrValue,
    /// The type of the input: `text`, `password`, `date`.
    #[prop_or("text")]
    pub(in crate::app) kind: &'static str,
    /// Which keys a tablet shows.
    #[prop_or_default]
    pub(in crate::app) inputmode: Option<&'static str>,
    /// What the browser may fill in.
    #[prop_or("off")]
    pub(in crate::app) autocomplete: &'static str,
    pub(in crate::app) value: AttrValue,
    pub(in crate::app) on_input: Callback<String>,
    /// What is allowed.
    #[prop_or_default]
    pub(in crate::app) hint: AttrValue,
    /// What is wrong with it; empty where nothing is.
    #[prop_or_default]
    pub(in crate::app) wrong: AttrValue,
}

#[component]
pub(in crate::app) fn Field(props: &FieldProps) -> Html {
    let oninput = props.on_input.reform(|event: InputEvent| {
        let target = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        target.map(|input| input.value()).unwrap_or_default()
    });
    let (hint, wrong) = (format!("{}-hint", props.id), format!("{}-wrong", props.id));
    let invalid = !props.wrong.is_empty();
    html! {
        <div class="field">
            <label for={props.id.clone()}>{ &props.label }</label>
            <input id={props.id.clone()} type={props.kind} inputmode={props.inputmode} autocomplete={props.autocomplete}
                autocapitalize="none" spellcheck="false" value={props.value.clone()} {oninput}
                aria-describedby={format!("{hint} {wrong}")} aria-invalid={invalid.then_some("true")} />
            <p id={hint} class="note" hidden={props.hint.is_empty()}>{ &props.hint }</p>
            <p id={wrong} class="wrong" role="alert" hidden={!invalid}>{ &props.wrong }</p>
        </div>
    }
}

/// Takes what is typed into a state.
pub(in crate::app) fn typed_into(state: &UseStateHandle<String>) -> Callback<String> {
    let set = state.setter();
    Callback::from(move |text| set.set(text))
}
