//! Practise: the card on the desk, before and after it is handed in.

use super::card::{Around, CardScreen, place};
use super::deal;
use super::events::{HandedIn, answered};
use super::handed::HandedScreen;
use crate::app::hooks::{use_book, use_desk, use_told};
use crate::app::parts::{Frame, round};
use crate::app::route::Route;
use crate::app::state::{OnDesk, use_shop};
use crate::card::Slate;
use crate::device::Watch;
use crate::learn::Round;
use crate::record::Within;
use std::rc::Rc;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Practise() -> Html {
    let shop = use_shop();
    let books = use_book();
    let told = use_told();
    let desk = use_desk();
    let draft = desk.draft.clone().filter(|draft| draft.person == shop.settings.person);
    let name = draft.as_ref().map(|draft| draft.card.clone());
    let card = use_memo((shop.clone(), name), |(shop, name)| {
        name.as_ref().and_then(|name| deal::again(shop, name)).map(Rc::new)
    });
    let name = card.as_ref().as_ref().map(|card| (card.family.clone(), card.seed));
    // An answer that was begun before this page was opened is not timed.
    let fresh = draft
        .as_ref()
        .zip(card.as_ref().as_ref())
        .is_some_and(|(draft, card)| draft.slate == Slate::for_card(card));
    let watch = use_memo(name, |_| fresh.then(Watch::start));
    let left = use_memo((), |()| draft.as_ref().and_then(|draft| draft.handed));
    // Nothing on the desk, or a card of another person or an older sheet: the next one is dealt.
    use_effect_with((card.is_some(), shop.clone()), {
        let put = desk.put.clone();
        move |(there, shop)| {
            if !there {
                put.emit(deal::fresh(shop, &told, None, None, 0));
            }
        }
    });
    let hand_in =
        use_callback((shop.clone(), books.clone(), watch), |handed: HandedIn, (shop, books, watch)| {
            let seconds = watch.as_ref().as_ref().map(Watch::seconds);
            if let Some(event) = answered(shop, &handed, seconds, Within::Practice) {
                books.hand_in.emit((event, OnDesk::Handed((*handed.draft).clone())));
            }
        });
    let screen = match (draft, (*card).clone()) {
        (Some(draft), Some(card)) => {
            let entry = draft.handed.and_then(|sequence| books.book.journal.find(sequence)).cloned();
            let seed = card.seed;
            match entry {
                None => {
                    let length = Round::of(shop.content(), draft.within);
                    let around = Around {
                        note: place(&shop, &draft, length),
                        marks: round(&shop, draft.done, length.cards),
                        lead: Html::default(),
                        back: Route::Home,
                        sheet: Route::CardSheet,
                        in_check: false,
                    };
                    html! {
                        <CardScreen key={format!("card-{seed}")} {draft} {card} {around} on_draft={desk.put.reform(Some)} {hand_in} />
                    }
                }
                Some(entry) => {
                    let left = *left == Some(entry.stamp.sequence);
                    html! {
                        <HandedScreen key={format!("handed-{seed}")} {draft} {card} entry={Rc::new(entry)} put={desk.put} {left} />
                    }
                }
            }
        }
        _ => html! {
            <Frame key="none" class="sheet" title={shop.say("name")} back={Some(Route::Home)} cautions={shop.cautions_for(&[])}>
                <p class="lead">{ shop.say("card.gone") }</p>
            </Frame>
        },
    };
    html! { <div class="practise">{ screen }</div> }
}
