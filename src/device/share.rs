//! What is handed to other devices: the address of the app, the clipboard, and the sheet of the device on which one chooses
//! where something goes.

use js_sys::{Array, Function, Object, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag};

/// The address of the app as it is open here, without what follows the `#`.
#[must_use]
pub fn app_address() -> String {
    let location = gloo::utils::window().location();
    let [origin, path] = [location.origin(), location.pathname()].map(Result::unwrap_or_default);
    format!("{origin}{path}")
}

/// Puts a text on the clipboard; false where the browser does not let it.
pub async fn copy(text: &str) -> bool {
    let clipboard = gloo::utils::window().navigator().clipboard();
    if clipboard.is_undefined() {
        return false;
    }
    JsFuture::from(clipboard.write_text(text)).await.is_ok()
}

/// What is shared.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Shared {
    /// A link.
    Link(String),
    /// A file: its name and its text.
    File(String, String),
}

/// Whether the device has a sheet for such a thing.
#[must_use]
pub fn can_share(what: &Shared) -> bool {
    let asked = || -> Option<bool> {
        let can = method("canShare")?;
        let data = data("", what).ok()?;
        can.call1(&gloo::utils::window().navigator(), &data).ok()?.as_bool()
    };
    asked().unwrap_or(false)
}

/// Opens the sheet; false where the browser refused. Somebody who closes it again has shared nothing, which is no refusal.
pub async fn share(title: &str, what: &Shared) -> bool {
    let begun = || -> Result<js_sys::Promise, JsValue> {
        let share = method("share").ok_or(JsValue::NULL)?;
        let promise = share.call1(&gloo::utils::window().navigator(), &JsValue::from(data(title, what)?))?;
        Ok(promise.unchecked_into())
    };
    match begun() {
        Err(_) => false,
        Ok(promise) => match JsFuture::from(promise).await {
            Ok(_) => true,
            Err(error) => {
                let name = Reflect::get(&error, &"name".into()).ok().and_then(|name| name.as_string());
                name.as_deref() == Some(ABORTED)
            }
        },
    }
}

/// What the browser calls it when somebody closes the sheet (Web Share API, section 2.1).
const ABORTED: &str = "AbortError";

fn method(name: &str) -> Option<Function> {
    Reflect::get(&gloo::utils::window().navigator(), &name.into()).ok()?.dyn_into().ok()
}

fn data(title: &str, what: &Shared) -> Result<Object, JsValue> {
    let data = Object::new();
    if !title.is_empty() {
        Reflect::set(&data, &"title".into(), &title.into())?;
    }
    match what {
        Shared::Link(link) => Reflect::set(&data, &"url".into(), &link.into())?,
        Shared::File(name, text) => {
            let kind = BlobPropertyBag::new();
            // Sheets take few kinds of files; plain text is one of them everywhere.
            kind.set_type("text/plain");
            let parts = Array::of1(&text.into());
            let blob = Blob::new_with_str_sequence_and_options(&parts, &kind)?;
            let options = Object::new();
            Reflect::set(&options, &"type".into(), &"text/plain".into())?;
            let name = format!("{name}.txt");
            let make: Function = Reflect::get(&js_sys::global(), &"File".into())?.dyn_into()?;
            let file = Reflect::construct(&make, &Array::of3(&Array::of1(&blob), &name.into(), &options))?;
            Reflect::set(&data, &"files".into(), &Array::of1(&file))?
        }
    };
    Ok(data)
}
