//! The two files and the day.

use super::{Give, Given};
use crate::app::parts::{FileField, Picture, file_field, icon};
use crate::app::state::Shop;
use crate::device::clock;
use crate::device::files::{Picked, picked_from, read};
use crate::signoff::{BYTES_MOST, LIST_BYTES_MOST};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlInputElement;
use yew::prelude::*;

pub(super) fn files(shop: &Shop, given: &Given, give: &UseReducerDispatcher<Given>, book: bool) -> Html {
    let field = |id, file: &Option<std::rc::Rc<Picked>>, most, given: fn(Picked) -> Give| {
        let give = give.clone();
        let onchange = Callback::from(move |event: Event| {
            let Some(file) = picked_from(&event) else { return };
            let give = give.clone();
            spawn_local(async move { give.dispatch(given(read(file, most).await)) });
        });
        let (label, hint) = (shop.say(&format!("verify.{id}")), shop.say(&format!("verify.{id}-hint")));
        file_field(shop, FileField { id, label, hint, file: file.as_deref(), onchange })
    };
    html! {
        <section key="files" class="ticket form two-files">
            <span class="hole" aria-hidden="true"></span>
            <h2>{ shop.say("verify.files") }</h2>
            { field("sign-off", &given.sign_off, BYTES_MOST, Give::SignOff) }
            { field("list", &given.list, LIST_BYTES_MOST, Give::List) }
            { day(shop, given, give) }
            <div key="own" class="own-list" hidden={!book}>{ own(shop, given, give) }</div>
        </section>
    }
}

/// Takes the list of the book of this tablet.
fn own(shop: &Shop, given: &Given, give: &UseReducerDispatcher<Given>) -> Html {
    let (give, own) = (give.clone(), given.own);
    let onchange = move |_: Event| give.dispatch(Give::Own(!own));
    html! {
        <label class={classes!("unit", own.then_some("picked"))}>
            <input type="checkbox" checked={own} {onchange} />{ icon(Picture::Tick) }<span>{ shop.say("verify.own-list") }</span>
        </label>
    }
}

fn day(shop: &Shop, given: &Given, give: &UseReducerDispatcher<Given>) -> Html {
    let today = clock::today().map(|day| day.to_string()).unwrap_or_default();
    let value = if given.day.is_empty() { today } else { given.day.clone() };
    let give = give.clone();
    let onchange = move |event: Event| {
        if let Some(field) = input(&event) {
            give.dispatch(Give::Day(field.value()));
        }
    };
    html! {
        <p key="day" class="field">
            <label for="day">{ shop.say("verify.day") }</label>
            <input id="day" type="date" {value} {onchange} aria-describedby="day-hint" />
            <small id="day-hint">{ shop.say("verify.day-hint") }</small>
        </p>
    }
}

fn input(event: &Event) -> Option<HtmlInputElement> {
    event.target().and_then(|target| target.dyn_into().ok())
}
