//! What is printed of a sign-off, black on white: shown on the screen as it comes out of the printer.

mod certificate;
mod checklist;
mod foot;

use super::{Picture, icon};
use crate::app::route::Paper;
use crate::app::state::Shop;
use crate::device::page;
use crate::signoff::{Credential, Hash, TrustList, When};
use yew::prelude::*;

/// A sign-off that was believed, and by what.
pub(in crate::app) struct Checked<'a> {
    pub(in crate::app) one: &'a Credential,
    pub(in crate::app) hash: Hash,
    pub(in crate::app) list: &'a TrustList,
    /// The day asked about.
    pub(in crate::app) on: &'a When,
}

pub(in crate::app) fn paper(shop: &Shop, paper: Paper, checked: &Checked<'_>) -> Html {
    match paper {
        Paper::Certificate => certificate::certificate(shop, checked),
        Paper::Checklist => checklist::checklist(shop, checked),
    }
}

pub(in crate::app) fn print_button(shop: &Shop) -> Html {
    html! {
        <button type="button" class="next-step" onclick={|_: MouseEvent| page::print()}>{ icon(Picture::Print) }{ shop.say("paper.print") }</button>
    }
}
