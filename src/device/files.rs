//! Files that leave the browser.

use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, Url};

/// Offers a JSON text as a file to save.
///
/// # Errors
/// What the browser said.
pub fn save_json(name: &str, json: &str) -> Result<(), JsValue> {
    let kind = BlobPropertyBag::new();
    kind.set_type("application/json");
    let blob = Blob::new_with_str_sequence_and_options(&js_sys::Array::of1(&json.into()), &kind)?;
    let url = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = gloo::utils::document().create_element("a")?.unchecked_into();
    link.set_href(&url);
    link.set_download(name);
    link.click();
    Url::revoke_object_url(&url)
}
