//! The page: what is written on its root element, what it says when the program stops, whether its data are kept.

use crate::content::{Content, Texts};
use gloo::timers::callback::Timeout;
use js_sys::Reflect;
use std::collections::BTreeMap;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// The event that tells of a new version, and the one that takes it: `boot/start.js` sends and hears them.
pub const NEW_VERSION: &str = "stepboard:new-version";
const TAKE_NEW_VERSION: &str = "stepboard:take-new-version";
/// The event after which every window of the app is loaded anew.
const LOAD_ALL_ANEW: &str = "stepboard:load-all-anew";

/// Whether a new version waits.
#[must_use]
pub fn new_version_waits() -> bool {
    let root = gloo::utils::document().document_element();
    root.is_some_and(|root| root.has_attribute("data-new-version"))
}

/// Loads the page anew with the version that waits.
pub fn take_new_version() {
    if let Ok(event) = web_sys::Event::new(TAKE_NEW_VERSION) {
        // Nobody hears it where there is no service worker, and then no version waits.
        let _ = gloo::utils::document().dispatch_event(&event);
    }
}

/// Whether the browser promises to keep what is stored.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kept {
    /// It promises.
    Yes,
    /// It may delete it when space runs short.
    No,
    /// It does not tell.
    Unknown,
}

/// Sets or takes away a `data-` mark on the root element, which the styles read.
pub fn mark_root(name: &str, value: Option<&str>) {
    let Some(root) = gloo::utils::document().document_element() else { return };
    let name = format!("data-{name}");
    // Names and values are our own plain words: neither call can fail.
    let _ = match value {
        Some(value) => root.set_attribute(&name, value),
        None => root.remove_attribute(&name),
    };
}

/// Width and height of the window in its own pixels; 0 where they cannot be read.
#[must_use]
pub fn size() -> (u32, u32) {
    let window = gloo::utils::window();
    let read =
        |length: Result<JsValue, JsValue>| length.ok().and_then(|length| length.as_f64()).unwrap_or(0.0);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "windows are small and not negative"
    )]
    let whole = |length: f64| length.clamp(0.0, 65_535.0) as u32;
    (whole(read(window.inner_width())), whole(read(window.inner_height())))
}

/// Sets the language of the page.
pub fn set_language(language: &str) {
    if let Some(root) = gloo::utils::document().document_element() {
        // `lang` takes any text.
        let _ = root.set_attribute("lang", language);
    }
}

/// The language of the page; empty where none was set.
#[must_use]
pub fn language() -> String {
    let root = gloo::utils::document().document_element();
    root.and_then(|root| root.get_attribute("lang")).unwrap_or_default()
}

/// The language of the browser as it names it, such as `es-MX`; empty where it names none.
#[must_use]
pub fn browser_language() -> String {
    gloo::utils::window().navigator().language().unwrap_or_default()
}

/// Whether a language that a browser names, such as `es-MX`, is one of ours, such as `es`.
#[must_use]
pub fn is_of_language(named: &str, ours: &str) -> bool {
    named.split('-').next().is_some_and(|first| first.eq_ignore_ascii_case(ours))
}

/// Writes a message to the page when the program stops, since it cannot draw any more.
pub fn tell_when_broken(content: &Content) {
    let message = |texts: &Texts| texts.get("app.broken").to_owned();
    let messages: BTreeMap<String, String> =
        content.texts.iter().map(|(language, texts)| (language.clone(), message(texts))).collect();
    std::panic::set_hook(Box::new(move |info| {
        web_sys::console::error_1(&info.to_string().into());
        let document = gloo::utils::document();
        let Ok(note) = document.create_element("p") else { return };
        note.set_class_name("broken");
        note.set_text_content(messages.get(&language()).map(String::as_str));
        if note.set_attribute("role", "alert").is_ok() {
            // Nothing is left to tell it to when even this fails.
            let _ = gloo::utils::body().prepend_with_node_1(&note);
        }
    }));
}

/// Asks the browser to keep what is stored.
pub async fn ask_to_keep() -> Kept {
    let storage = gloo::utils::window().navigator().storage();
    if storage.is_undefined() {
        return Kept::Unknown;
    }
    let asked = async { JsFuture::from(storage.persist()?).await };
    match asked.await.map(|answer| answer.as_bool()) {
        Ok(Some(true)) => Kept::Yes,
        Ok(Some(false)) => Kept::No,
        Ok(None) | Err(_) => Kept::Unknown,
    }
}

/// A text typed on any keyboard in one form (Unicode NFKC, as NIST SP 800-63B-4 section 3.1.1.2 has it for passphrases): an
/// accent typed alone or with its letter is the same.
#[must_use]
pub fn normalised(text: &str) -> String {
    // The browser knows this form; one that did not would leave the text as it is.
    js_sys::JsString::from(text).normalize("NFKC").into()
}

/// Bytes from the browser's secure source; `None` where it has none.
#[must_use]
pub fn random_bytes<const N: usize>() -> Option<[u8; N]> {
    let mut bytes = [0_u8; N];
    gloo::utils::window().crypto().ok()?.get_random_values_with_u8_array(&mut bytes).ok()?;
    Some(bytes)
}

/// A random name for this device: 16 hexadecimal digits.
#[must_use]
pub fn random_name() -> String {
    // A name keeps nothing secret: it must be another than that of any other tablet.
    let bytes = random_bytes().unwrap_or_else(|| js_sys::Math::random().to_bits().to_le_bytes());
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Time for the browser to draw, milliseconds.
const DRAWN_MS: u32 = 60;

/// Does something that takes all of the page for a second or two, once what was set before can be seen.
pub fn once_drawn(call: impl FnOnce() + 'static) {
    Timeout::new(DRAWN_MS, call).forget();
}

/// Loads this page and the app's other windows anew, since what they hold is not what is stored any more.
pub fn all_windows_anew() {
    if let Ok(event) = web_sys::Event::new(LOAD_ALL_ANEW) {
        // `boot/start.js` hears it on every page of the app.
        let _ = gloo::utils::document().dispatch_event(&event);
    }
}

/// Opens the browser's own window for printing, where it has one.
pub fn print() {
    // A browser that cannot print does nothing.
    let _ = gloo::utils::window().print();
}

/// Scrolls the page to its top, where it scrolls as a whole.
pub fn to_top() {
    gloo::utils::window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// Brings the element with that id into view and gives it the focus; what it is folded away in is opened.
pub fn bring(id: &str) {
    if let Some(element) = gloo::utils::document().get_element_by_id(id) {
        while let Ok(Some(folded)) = element.closest("details:not([open])") {
            if folded.set_attribute("open", "").is_err() {
                break;
            }
        }
        element.scroll_into_view();
    }
    focus(id);
}

/// Id of the first field in which something is wrong.
#[must_use]
pub fn wrong_field() -> Option<String> {
    let wrong = gloo::utils::document().query_selector("[aria-invalid=true]").ok()??;
    Some(wrong.id())
}

/// Brings the first field in which something is wrong into view, once the screen shows it.
pub fn to_wrong_field() {
    once_drawn(|| {
        if let Some(field) = wrong_field() {
            bring(&field);
        }
    });
}

/// Whether an element with that id is on the page.
#[must_use]
pub fn is_there(id: &str) -> bool {
    gloo::utils::document().get_element_by_id(id).is_some()
}

/// Moves the focus to the element with that id, if there is one.
pub fn focus(id: &str) {
    let element = gloo::utils::document().get_element_by_id(id);
    if let Some(element) = element.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
        // An element that cannot take the focus leaves it where it is.
        let _: Result<(), JsValue> = element.focus();
    }
}

/// What the boot script leaves for the program under a name.
pub(super) fn left_by_boot(name: &str) -> Option<JsValue> {
    let left = Reflect::get(&js_sys::global(), &"stepboard".into()).ok()?;
    Reflect::get(&left, &name.into()).ok().filter(|found| !found.is_undefined())
}
