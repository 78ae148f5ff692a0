//! An edition of a shop sheet that came as a file: what it is, and what it changes, before it is taken.

use super::{Column, differ_table};
use crate::app::hooks::use_sheets;
use crate::app::state::{Keep, use_shop};
use crate::device::clock;
use crate::exchange::OwnSheet;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct SheetOfferProps {
    /// What came, read and not taken yet.
    pub(in crate::app) own: OwnSheet,
    /// Told once it is on this tablet.
    pub(in crate::app) on_taken: Callback<OwnSheet>,
}

#[component]
pub(in crate::app) fn SheetOffer(props: &SheetOfferProps) -> Html {
    let shop = use_shop();
    let sheets = use_sheets();
    let failed = use_state(|| false);
    let own = &props.own;
    let here = sheets.editions.get(&own.slug());
    let sheet = own.sheet(shop.content());
    let base = shop.content().sheet(&own.base);
    let onclick = {
        let (own, put, on_taken, failed) =
            (own.clone(), sheets.put.clone(), props.on_taken.clone(), failed.setter());
        Callback::from(move |_: MouseEvent| {
            let (taken, on_taken, failed) = (own.clone(), on_taken.clone(), failed.clone());
            let done = Callback::from(move |stored: bool| {
                failed.set(!stored);
                if stored {
                    on_taken.emit(taken.clone());
                }
            });
            put.emit(Keep { what: own.clone(), done });
        })
    };
    let named = [("name", own.name.clone()), ("edition", own.edition.to_string())];
    let made = [("by", own.by.clone()), ("at", clock::local(&own.at))];
    let other = sheets
        .editions
        .iter()
        .any(|one| one.name == own.name && one.edition == own.edition && one.hash != own.hash);
    let differ = sheet.as_ref().ok().zip(base).map(|(sheet, base)| {
        let one = Column { name: shop.sheet_name(&base.slug), sheet: base };
        differ_table(&shop, &one, &Column { name: shop.say_with("own.edition", &named), sheet })
    });
    let refused = sheet.as_ref().err().map(|refused| shop.refused(refused));
    html! {
        <section key="offer" class="paper own-offer">
            <h2>{ shop.say_with("own.edition", &named) }</h2>
            <p key="made">{ shop.say_with(if own.by.is_empty() { "own.made-at" } else { "own.made" }, &made) }</p>
            <p key="note" hidden={own.note.is_empty()}>{ &own.note }</p>
            { for differ }
            <p key="refused" class="wrong" role="alert" hidden={refused.is_none()}>{ refused.clone().unwrap_or_default() }</p>
            <p key="here" role="status" hidden={here.is_none()}>{ shop.say_with("own.here", &[("name", shop.sheet_name(&own.slug()).to_string())]) }</p>
            <p key="other" class="note" hidden={!other}>{ shop.say("own.other-edition") }</p>
            <button key="take" type="button" class="next-step" hidden={refused.is_some() || here.is_some()} {onclick}>{ shop.say("own.take") }</button>
            <p key="failed" class="wrong" role="alert" hidden={!*failed}>{ if *failed { shop.say("people.not-stored") } else { AttrValue::default() } }</p>
        </section>
    }
}
