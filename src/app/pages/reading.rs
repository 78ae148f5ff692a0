//! In place of a screen while the journal is read that it shows.

use crate::app::parts::Frame;
use crate::app::state::use_shop;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Reading() -> Html {
    let shop = use_shop();
    html! {
        <Frame class="sheet" title={shop.say("name")} cautions={shop.cautions_for(&[])}>
            <p key="said" class="lead" role="status">{ shop.say("reading") }</p>
        </Frame>
    }
}
