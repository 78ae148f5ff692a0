//! A field in which a file is picked, with what became of it beside it.

use super::{Picture, icon};
use crate::app::state::Shop;
use crate::device::files::{Picked, Unread};
use yew::prelude::*;

/// What may be picked: what the app saves, and what the sheet of a device made plain text of.
const ACCEPTED: &str = ".json,.jsonl,.txt,application/json,text/plain";
/// Bytes of a kilobyte, as limits are told.
const KILOBYTE: usize = 1024;

pub(in crate::app) struct FileField<'a> {
    pub(in crate::app) id: &'static str,
    pub(in crate::app) label: AttrValue,
    /// Which file is wanted.
    pub(in crate::app) hint: AttrValue,
    /// What was picked.
    pub(in crate::app) file: Option<&'a Picked>,
    pub(in crate::app) onchange: Callback<Event>,
}

pub(in crate::app) fn file_field(shop: &Shop, field: FileField<'_>) -> Html {
    let FileField { id, label, hint, file, onchange } = field;
    let (class, said) = match file.map(|file| (&file.name, &file.bytes)) {
        None => ("note", hint),
        Some((name, Ok(_))) => ("file-name", AttrValue::from(name.clone())),
        Some((name, Err(Unread::Failed))) => {
            ("wrong", shop.say_with("file.failed", &[("name", name.clone())]))
        }
        Some((name, Err(Unread::TooLarge { most }))) => {
            let most = (most / KILOBYTE).to_string();
            ("wrong", shop.say_with("file.too-large", &[("name", name.clone()), ("most", most)]))
        }
    };
    let told = format!("{id}-told");
    html! {
        <div key={id} class="field file-field">
            <label for={id} class="control">{ icon(Picture::File) }{ label }</label>
            <input {id} type="file" accept={ACCEPTED} class="file-input" {onchange} aria-describedby={told.clone()} />
            <p id={told} {class} role="status">{ said }</p>
        </div>
    }
}
