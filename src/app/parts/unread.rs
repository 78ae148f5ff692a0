//! Says that something is stored which this program cannot read.

use crate::app::state::Shop;
use yew::prelude::*;

/// How many stored files cannot be read, and that they stay; nothing where all can.
pub(in crate::app) fn unread(shop: &Shop, files: usize) -> Html {
    html! {
        <p key="saved.unread" class="kraft" hidden={files == 0}>
            { if files > 0 { shop.say_with("saved.unread", &[("n", files.to_string())]) } else { AttrValue::default() } }
        </p>
    }
}
