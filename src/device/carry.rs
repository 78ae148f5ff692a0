//! Carries requests to the server from which the app came.

use crate::exchange::folder::{Answer, Ask, Heard};
use gloo::timers::callback::Timeout;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    AbortController, Headers, RequestCache, RequestCredentials, RequestInit, RequestMode, RequestRedirect,
    Response, ResponseType,
};

/// The longest wait for an answer and all that it holds, milliseconds: our own choice.
const ANSWER_MS: u32 = 60_000;
/// A redirection whose status the browser does not tell (Fetch standard, `opaqueredirect`).
const FOUND: u16 = 302;

/// Carries a request. No redirection is followed, no cookie sent, nothing kept by the browser, and no window of its own asks
/// for a password.
pub async fn carry(ask: &Ask, authorization: &str) -> Heard {
    answer(ask, authorization).await.unwrap_or(Heard::Cut)
}

async fn answer(ask: &Ask, authorization: &str) -> Result<Heard, JsValue> {
    let abort = AbortController::new()?;
    let signal = abort.signal();
    // Given up when this value goes, at the latest.
    let _late = Timeout::new(ANSWER_MS, move || abort.abort());
    let headers = Headers::new()?;
    for (name, value) in &ask.fields {
        headers.set(name, value)?;
    }
    headers.set("Authorization", authorization)?;
    let how = RequestInit::new();
    how.set_method(ask.method.as_str());
    how.set_mode(RequestMode::SameOrigin);
    how.set_credentials(RequestCredentials::Omit);
    how.set_cache(RequestCache::NoStore);
    how.set_redirect(RequestRedirect::Manual);
    how.set_headers(&headers);
    how.set_signal(Some(&signal));
    if let Some(body) = &ask.body {
        how.set_body(&JsValue::from(body.as_str()));
    }
    let fetched = gloo::utils::window().fetch_with_str_and_init(&ask.path, &how);
    let response: Response = JsFuture::from(fetched).await?.dyn_into()?;
    if response.type_() == ResponseType::Opaqueredirect {
        return Ok(Heard::Answer(Answer { status: FOUND, ..Answer::default() }));
    }
    let field = |name: &str| response.headers().get(name).ok().flatten();
    let told = field("Content-Length").and_then(|length| length.parse::<usize>().ok());
    if ask.most > 0 && told.is_some_and(|length| length > ask.most) {
        return Ok(Heard::TooLong);
    }
    let mut body = Vec::new();
    if ask.most > 0 {
        let buffer = JsFuture::from(response.array_buffer()?).await?;
        body = js_sys::Uint8Array::new(&buffer).to_vec();
    }
    if ask.most > 0 && body.len() > ask.most {
        return Ok(Heard::TooLong);
    }
    Ok(Heard::Answer(Answer { status: response.status(), retry_after: field("Retry-After"), body }))
}

/// Whether the browser believes that there is a network; it may be wrong with yes and is not with no.
#[must_use]
pub fn online() -> bool {
    gloo::utils::window().navigator().on_line()
}

/// Begins every address of the server from which the app came.
#[must_use]
pub fn origin() -> String {
    gloo::utils::window().location().origin().unwrap_or_default()
}
