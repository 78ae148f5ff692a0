//! Carries requests to the server from which the app came.

use crate::exchange::folder::{Answer, Ask, Heard};
use gloo::timers::callback::Timeout;
use js_sys::{Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    AbortController, Headers, ReadableStreamDefaultReader, RequestCache, RequestCredentials, RequestInit,
    RequestMode, RequestRedirect, Response, ResponseType,
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
    let Some(body) = body(&response, ask.most).await? else { return Ok(Heard::TooLong) };
    Ok(Heard::Answer(Answer { status: response.status(), retry_after: field("Retry-After"), body }))
}

/// The body of an answer; nothing where it is longer than so many bytes, and none is asked for with 0. It is read piece by
/// piece and let go of as soon as it is too long: its length need not be told, and need not be true.
async fn body(response: &Response, most: usize) -> Result<Option<Vec<u8>>, JsValue> {
    let mut body = Vec::new();
    let Some(stream) = response.body().filter(|_| most > 0) else { return Ok(Some(body)) };
    let reader: ReadableStreamDefaultReader = stream.get_reader().dyn_into()?;
    loop {
        let read = JsFuture::from(reader.read()).await?;
        if Reflect::get(&read, &"done".into())?.is_truthy() {
            return Ok(Some(body));
        }
        let piece: Uint8Array = Reflect::get(&read, &"value".into())?.dyn_into()?;
        body.extend(piece.to_vec());
        if body.len() > most {
            // Whether the server hears that no more is wanted changes nothing here.
            drop(reader.cancel());
            return Ok(None);
        }
    }
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
