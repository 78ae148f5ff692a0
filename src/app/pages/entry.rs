//! One answer of the record, as the card that was seen.

use super::card::{cautions, stage_name};
use super::deal;
use crate::app::hooks::use_book;
use crate::app::parts::{Frame, Verdict, answered_panels, card_ticket};
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::card;
use crate::device::clock;
use crate::record::CardName;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct EntryProps {
    pub(in crate::app) sequence: u64,
}

#[component]
pub(in crate::app) fn Entry(props: &EntryProps) -> Html {
    let shop = use_shop();
    let book = use_book().book;
    let back = Some(Route::Record);
    let Some(entry) = book.journal.find(props.sequence) else {
        return html! {
            <Frame class="sheet" title={shop.say("record.title")} {back} cautions={shop.cautions_for(&[])}><p class="lead">{ shop.say("record.empty") }</p></Frame>
        };
    };
    let name = CardName {
        family: entry.family.clone(),
        version: entry.version,
        seed: entry.seed,
        sheet: entry.sheet.clone(),
    };
    let at = clock::local(&entry.stamp.at);
    let note = shop.say_with("record.answered", &[("at", at)]);
    let graded = deal::again(&shop, &name).and_then(|card| {
        let world = shop.world(&entry.sheet.slug)?;
        let graded = card::grade(&card, &world, &entry.answer)?;
        Some((Rc::new(card), Rc::new(graded)))
    });
    match graded {
        None => html! {
            <Frame class="sheet" title={shop.say("record.title")} {note} {back} cautions={shop.cautions_for(&[])}>
                <p class="lead">{ shop.say("record.gone") }</p>
                <p>{ shop.voice().answer(&entry.family, &entry.answer) }</p>
            </Frame>
        },
        Some((card, graded)) => {
            let panels = answered_panels(&shop, &card, entry.answer.place(), &Callback::from(|_| ()));
            html! {
                <Frame class="handed" title={stage_name(&shop, &card)} {note} {back} cautions={cautions(&shop, &card)}>
                    { card_ticket(&shop, &card) }
                    <h2 key="ask">{ shop.voice().ask(&card) }</h2>
                    <Verdict key="verdict" {card} {graded} answer={entry.answer.clone()} certainty={entry.certainty} {panels} />
                </Frame>
            }
        }
    }
}
