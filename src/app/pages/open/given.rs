//! A file that is picked, or a link that is pasted.

use crate::app::parts::{Field, FileField, Picture, file_field, icon, typed_into};
use crate::app::route::TAKE;
use crate::app::state::use_shop;
use crate::device::files::{Picked, picked_from, read};
use crate::exchange::link::unpack;
use crate::exchange::{Ours, Refused};
use wasm_bindgen_futures::spawn_local;
use web_sys::SubmitEvent;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct GivenProps {
    /// Gets the bytes, or why there are none.
    pub(super) on_given: Callback<Result<Vec<u8>, Refused>>,
}

#[component]
pub(super) fn Given(props: &GivenProps) -> Html {
    let shop = use_shop();
    let file = use_state(|| None::<Picked>);
    let link = use_state(String::new);
    let onchange = {
        let (set, on_given) = (file.setter(), props.on_given.clone());
        Callback::from(move |event: Event| {
            let Some(picked) = picked_from(&event) else { return };
            let (set, on_given) = (set.clone(), on_given.clone());
            spawn_local(async move {
                let picked = read(picked, Ours::MOST).await;
                let bytes = picked.bytes.as_ref().map(|_| Vec::new()).map_err(|why| *why);
                set.set(Some(Picked { name: picked.name, bytes }));
                if let Ok(bytes) = picked.bytes {
                    on_given.emit(Ok(bytes));
                }
            });
        })
    };
    let onsubmit = {
        let (on_given, link) = (props.on_given.clone(), (*link).clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let code = link.split_once(TAKE).map_or(link.as_str(), |(_, code)| code).trim();
            on_given.emit(unpack(code).map(String::into_bytes));
        })
    };
    let (label, hint) = (shop.say("open.file"), shop.say("open.file-hint"));
    html! {
        <form class="paper form" {onsubmit}>
            <p class="lead">{ shop.say("open.lead") }</p>
            { file_field(&shop, FileField { id: "file", label, hint, file: file.as_ref(), onchange }) }
            <Field id="link" label={shop.say("open.link")} value={(*link).clone()} on_input={typed_into(&link)} hint={shop.say("open.link-hint")} />
            <button type="submit" class="control">{ icon(Picture::Loupe) }{ shop.say("open.look") }</button>
        </form>
    }
}
