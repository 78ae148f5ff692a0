//! Whether the answers are stored, in words.

use super::{Icon, Picture};
use crate::app::hooks::use_book;
use crate::app::pages::save_copy;
use crate::app::state::{Saved, use_shop};
use yew::prelude::*;

#[component]
pub(super) fn SavedMark() -> Html {
    let shop = use_shop();
    let (class, picture, key) = match use_book().book.saved {
        Saved::Yes => ("saved", Picture::Tick, "saved.saved"),
        Saved::Busy => ("saved busy", Picture::Pencil, "saved.saving"),
        Saved::Failed => ("saved failed", Picture::Cross, "saved.failed"),
    };
    html! { <span {class} role="status"><Icon of={picture} /><span class="word">{ shop.say(key) }</span></span> }
}

/// Stays until the trouble is over and never covers the answer.
#[component]
pub(super) fn SavedStrip() -> Html {
    let shop = use_shop();
    let context = use_book();
    let retry = context.retry.reform(|_: MouseEvent| ());
    let copy = use_callback(context.book.clone(), |_: MouseEvent, book| save_copy(&book.journal));
    html! {
        <div class="strip" role="alert" hidden={context.book.saved != Saved::Failed}>
            <p>{ shop.say("saved.failed-why") }</p>
            <button type="button" class="control" onclick={retry}>{ shop.say("saved.retry") }</button>
            <button type="button" class="control" onclick={copy}>{ shop.say("saved.copy") }</button>
        </div>
    }
}
