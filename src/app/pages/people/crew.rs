//! The apprentices as rows.

use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::people::Member;
use yew::prelude::*;

/// A row for each, leading to their screen.
pub(super) fn rows(shop: &Shop, members: &[Member]) -> Html {
    let row = |member: &Member| {
        let to = Route::Person { number: member.number.to_string() };
        let pin = if member.pin.is_some() { shop.say("people.has-pin") } else { shop.say("people.no-pin") };
        html! {
            <li key={member.number.to_string()}>
                <a href={to.address()} class="row-link">
                    <span class="words"><b>{ &member.name }</b><span class="note">{ member.number.to_string() }{ ". " }{ pin }</span></span>
                    { icon(Picture::Go) }
                </a>
            </li>
        }
    };
    html! { <ul key="rows" class="rows links">{ for members.iter().map(row) }</ul> }
}
