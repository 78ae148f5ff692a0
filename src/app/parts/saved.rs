//! Whether the answers are stored, in words.

use super::{Picture, icon};
use crate::app::state::{BookContext, Saved, Shop};
use yew::prelude::*;

pub(super) fn saved_mark(shop: &Shop, saved: Saved) -> Html {
    let (class, picture, key) = match saved {
        Saved::Yes => ("saved", Picture::Tick, "saved.saved"),
        Saved::Busy => ("saved busy", Picture::Pencil, "saved.saving"),
        Saved::Failed => ("saved failed", Picture::Cross, "saved.failed"),
    };
    html! { <span {class} role="status">{ icon(picture) }<span class="word">{ shop.say(key) }</span></span> }
}

/// Stays until the trouble is over and never covers the answer.
pub(super) fn saved_strip(shop: &Shop, context: &BookContext, save: &Callback<()>) -> Html {
    let retry = context.retry.reform(|_: MouseEvent| ());
    let copy = save.reform(|_: MouseEvent| ());
    html! {
        <div class="strip" role="alert" hidden={context.book.saved != Saved::Failed}>
            <p>{ shop.say("saved.failed-why") }</p>
            <button type="button" class="control" onclick={retry}>{ shop.say("saved.retry") }</button>
            <button type="button" class="control" onclick={copy}>{ shop.say("saved.copy") }</button>
        </div>
    }
}
