//! Files that leave the browser, and files that are picked and read.

use js_sys::{Array, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, HtmlAnchorElement, HtmlInputElement, Url};

/// Offers a JSON text as a file to save.
///
/// # Errors
/// What the browser said.
pub fn save_json(name: &str, json: &str) -> Result<(), JsValue> {
    save(name, json, "application/json")
}

/// Offers a table as a CSV file to save.
///
/// # Errors
/// What the browser said.
pub fn save_csv(name: &str, csv: &str) -> Result<(), JsValue> {
    save(name, csv, "text/csv;charset=utf-8")
}

/// Offers an archive as a ZIP file to save.
///
/// # Errors
/// What the browser said.
pub fn save_zip(name: &str, bytes: &[u8]) -> Result<(), JsValue> {
    offer(name, &Array::of1(&Uint8Array::from(bytes)), "application/zip")
}

/// A long text that the browser holds part by part, so that it is never whole in our memory.
#[derive(Debug, Default)]
pub struct Parts(Array);

impl Parts {
    /// Adds a part at the end.
    pub fn push(&self, part: &str) {
        self.0.push(&part.into());
    }

    /// Offers the whole as a JSON file to save.
    ///
    /// # Errors
    /// What the browser said.
    pub fn save_json(&self, name: &str) -> Result<(), JsValue> {
        offer(name, &self.0, "application/json")
    }
}

fn save(name: &str, text: &str, media_type: &str) -> Result<(), JsValue> {
    offer(name, &Array::of1(&text.into()), media_type)
}

/// Offers texts or bytes, one behind the other, as a file to save.
fn offer(name: &str, parts: &Array, media_type: &str) -> Result<(), JsValue> {
    let kind = BlobPropertyBag::new();
    kind.set_type(media_type);
    let blob = Blob::new_with_str_sequence_and_options(parts, &kind)?;
    let url = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = gloo::utils::document().create_element("a")?.unchecked_into();
    link.set_href(&url);
    link.set_download(name);
    link.click();
    Url::revoke_object_url(&url)
}

/// A file that was picked, with what came of reading it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Picked {
    /// Its name.
    pub name: String,
    /// Its bytes, or why they are not there.
    pub bytes: Result<Vec<u8>, Unread>,
}

/// Why a picked file was not read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unread {
    /// It has more bytes than such a file may have; none of them was read.
    TooLarge {
        /// How many it has at most.
        most: usize,
    },
    /// The browser could not read it: moved, taken away, or not allowed.
    Failed,
}

/// Takes the file out of a field where one was picked, so that the same one can be picked again.
#[must_use]
pub fn take_picked(field: &HtmlInputElement) -> Option<File> {
    let file = field.files().and_then(|files| files.get(0));
    field.set_value("");
    file
}

/// The file that was just picked in the field that an event is of; see [`take_picked`].
#[must_use]
pub fn picked_from(event: &web_sys::Event) -> Option<File> {
    event.target().and_then(|target| target.dyn_into().ok()).and_then(|field| take_picked(&field))
}

/// The files that were just picked in the field that an event is of, which takes several.
#[must_use]
pub fn all_picked_from(event: &web_sys::Event) -> Vec<File> {
    let field: Option<HtmlInputElement> = event.target().and_then(|target| target.dyn_into().ok());
    let Some(field) = field else { return Vec::new() };
    let files = field.files();
    let picked = files.iter().flat_map(|files| (0..files.length()).filter_map(|nth| files.get(nth)));
    let picked = picked.collect();
    field.set_value("");
    picked
}

/// Reads a picked file. Its size is asked before anything of it is read.
pub async fn read(file: File, most: usize) -> Picked {
    let name = file.name();
    #[allow(clippy::cast_precision_loss, reason = "limits are far under 2^53")]
    if file.size() > most as f64 {
        return Picked { name, bytes: Err(Unread::TooLarge { most }) };
    }
    let read = JsFuture::from(file.array_buffer()).await;
    let bytes = read.map(|buffer| Uint8Array::new(&buffer).to_vec()).map_err(|_| Unread::Failed);
    Picked { name, bytes }
}
