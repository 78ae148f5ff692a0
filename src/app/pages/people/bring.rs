//! Brings the file of a key, or of a whole book, to this tablet.

use super::bring_book::BringBook;
use super::bring_key::BringKey;
use crate::app::state::use_shop;
use yew::prelude::*;

/// What came of the file that was picked last.
#[derive(Clone, Default, PartialEq)]
struct Said {
    of_key: AttrValue,
    of_book: AttrValue,
}

#[component]
pub(super) fn Bring() -> Html {
    let shop = use_shop();
    let said = use_state(Said::default);
    let on_key = {
        let said = said.setter();
        Callback::from(move |of_key: AttrValue| said.set(Said { of_key, ..Said::default() }))
    };
    let on_book = {
        let said = said.setter();
        Callback::from(move |of_book: AttrValue| said.set(Said { of_book, ..Said::default() }))
    };
    html! {
        <section class="paper form">
            <h2>{ shop.say("bring.title") }</h2>
            <BringKey said={said.of_key.clone()} on_said={on_key} />
            <BringBook said={said.of_book.clone()} on_said={on_book} />
        </section>
    }
}
