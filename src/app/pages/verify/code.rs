//! A code typed off paper: does the paper belong to this file?

use super::{Give, Given, Outcome};
use crate::app::parts::{SignKind, sign};
use crate::app::state::Shop;
use crate::signoff::Code;
use wasm_bindgen::JsCast;
use web_sys::HtmlTextAreaElement;
use yew::prelude::*;

/// Longest text that is taken: a code has some 110 characters.
const CODE_MOST: &str = "300";

pub(super) fn typed(
    shop: &Shop,
    given: &Given,
    outcome: &Outcome,
    give: &UseReducerDispatcher<Given>,
) -> Html {
    let code = match outcome {
        Outcome::Judged { verdict, .. } => verdict.credential.as_ref().zip(verdict.hash),
        Outcome::Waiting | Outcome::NoList(_) | Outcome::NoDay => None,
    };
    let code = code.map(|(one, hash)| Code::new(one, hash));
    let give = give.clone();
    let oninput = move |event: InputEvent| {
        let field = event.target().and_then(|target| target.dyn_into::<HtmlTextAreaElement>().ok());
        if let Some(field) = field {
            give.dispatch(Give::Code(field.value()));
        }
    };
    let same = code.as_ref().map(|code| code.is(&given.code));
    let (kind, said) = match same.filter(|_| !given.code.trim().is_empty()) {
        None => (None, AttrValue::default()),
        Some(true) => (Some(SignKind::Right), shop.say("verify.code-same")),
        Some(false) => (Some(SignKind::Wrong), shop.say("verify.code-other")),
    };
    html! {
        <section key="code" class="paper form" hidden={code.is_none()}>
            <h2>{ shop.say("verify.code") }</h2>
            <p class="field">
                <label for="code">{ shop.say("verify.code-typed") }</label>
                <textarea id="code" rows="3" maxlength={CODE_MOST} autocomplete="off" autocapitalize="off" spellcheck="false" value={given.code.clone()} {oninput} aria-describedby="code-hint" />
                <small id="code-hint">{ shop.say("verify.code-hint") }</small>
            </p>
            <p class={classes!("standing", "code-said", if same == Some(true) { "ok" } else { "wrong" })} role="status">{ kind.map(sign).unwrap_or_default() }{ said }</p>
        </section>
    }
}
