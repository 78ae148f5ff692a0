//! What the person who works holds, as they see it themselves.

use super::held;
use crate::app::hooks::{use_people, use_signed};
use crate::app::state::use_shop;
use crate::device::clock;
use yew::prelude::*;

/// Nothing where the person has no number, or the shop no book.
#[component]
pub(in crate::app) fn Holding() -> Html {
    let shop = use_shop();
    let (people, signed) = (use_people(), use_signed());
    let person = &shop.settings.person;
    let number = people.crew.of_journal(person).map(|member| member.number.clone());
    let here = number.zip(signed.book()).zip(clock::when());
    let hidden = here.is_none();
    let rows = here.map(|((number, book), now)| {
        held(&shop, book, &number, &now, false)
            .unwrap_or_else(|| html! { <p class="note">{ shop.say("standing.nothing") }</p> })
    });
    html! {
        <section class="holding" {hidden}>
            <h2>{ shop.say("standing.title") }</h2>
            { rows.unwrap_or_default() }
        </section>
    }
}
