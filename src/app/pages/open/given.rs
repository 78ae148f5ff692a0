//! A file that is picked, or a link that is pasted.

use crate::app::parts::{Field, FileField, Picture, file_field, icon, typed_into};
use crate::app::state::{Shop, use_shop};
use crate::device::files::{Picked, picked_from, read};
use crate::exchange::link::{code_in, unpack};
use crate::exchange::{Ours, Refused};
use wasm_bindgen_futures::spawn_local;
use web_sys::SubmitEvent;
use yew::prelude::*;

/// A file as it was given.
#[derive(Debug)]
pub(super) struct Given {
    /// What it is called, or that it stood in a link.
    pub(super) name: String,
    /// Its bytes, or why there are none.
    pub(super) bytes: Result<Vec<u8>, Refused>,
}

impl Given {
    /// What stands in a link, or in the code of one.
    pub(super) fn linked(shop: &Shop, pasted: &str) -> Self {
        let bytes = code_in(pasted).and_then(unpack).map(String::into_bytes);
        Self { name: shop.say("open.in-link").to_string(), bytes }
    }
}

#[derive(Properties, PartialEq)]
pub(super) struct GiveProps {
    pub(super) on_given: Callback<Given>,
}

#[component]
pub(super) fn Give(props: &GiveProps) -> Html {
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
                let Picked { name, bytes } = picked;
                let kept = bytes.as_ref().map(|_| Vec::new()).map_err(|why| *why);
                set.set(Some(Picked { name: name.clone(), bytes: kept }));
                if let Ok(bytes) = bytes {
                    on_given.emit(Given { name, bytes: Ok(bytes) });
                }
            });
        })
    };
    let onsubmit = {
        let (shop, on_given, link) = (shop.clone(), props.on_given.clone(), (*link).clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            on_given.emit(Given::linked(&shop, &link));
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
