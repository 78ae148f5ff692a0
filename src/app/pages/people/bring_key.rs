//! Brings the file of a key to this tablet.

use crate::app::hooks::use_keys_held;
use crate::app::parts::{FileField, file_field};
use crate::app::state::{Keep, KeysContext, Shop, use_shop};
use crate::device::files::{Picked, picked_from, read};
use crate::rules::term::Term;
use crate::signoff::{BYTES_MOST, WrappedKey, grouped};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct BringKeyProps {
    /// What came of it.
    pub(super) said: AttrValue,
    pub(super) on_said: Callback<AttrValue>,
}

#[component]
pub(super) fn BringKey(props: &BringKeyProps) -> Html {
    let shop = use_shop();
    let keys = use_keys_held();
    let file = use_state(|| None::<Picked>);
    let onchange = {
        let (file, on_said, shop) = (file.setter(), props.on_said.clone(), shop.clone());
        Callback::from(move |event: Event| {
            let Some(picked) = picked_from(&event) else { return };
            let (file, on_said, shop, keys) = (file.clone(), on_said.clone(), shop.clone(), keys.clone());
            spawn_local(async move {
                let picked = read(picked, BYTES_MOST).await;
                let key = picked.bytes.as_ref().ok().map(|bytes| WrappedKey::read(bytes));
                file.set(Some(picked));
                match key {
                    None => on_said.emit(AttrValue::default()),
                    Some(Err(locked)) => on_said.emit(shop.text(&format!("locked.{}", locked.slug()))),
                    Some(Ok(key)) => keep(&shop, &keys, key, on_said),
                }
            });
        })
    };
    let field = FileField {
        id: "bring-key",
        label: shop.say("bring.key"),
        hint: shop.say("bring.key-hint"),
        file: file.as_ref(),
        onchange,
    };
    html! {
        <>
            { file_field(&shop, field) }
            <p key="key-said" role="status">{ props.said.clone() }</p>
        </>
    }
}

/// Keeps a key with those of the tablet.
fn keep(shop: &Shop, keys: &KeysContext, key: WrappedKey, on_said: Callback<AttrValue>) {
    let (shop, fingerprint) = (shop.clone(), grouped(&key.public.fingerprint()));
    let done = Callback::from(move |stored| {
        let named = [("fingerprint", fingerprint.clone())];
        on_said.emit(if stored {
            shop.say_with("bring.key-here", &named)
        } else {
            shop.say("people.not-stored")
        });
    });
    keys.put.emit(Keep { what: keys.with(key), done });
}
