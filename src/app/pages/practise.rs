//! Practise: the card on the desk, before and after it is handed in.

use super::card::CardScreen;
use super::deal;
use super::handed::HandedScreen;
use crate::app::hooks::{use_book, use_desk};
use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::card::{self, Slate};
use crate::device::{Watch, clock};
use crate::record::{Draft, Entry, Event, FORMAT, Help, Stamp, Within};
use std::rc::Rc;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Practise() -> Html {
    let shop = use_shop();
    let books = use_book();
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
    // Nothing on the desk, or a card of another person or an older sheet: the next one is dealt.
    use_effect_with((card.is_some(), shop.clone()), {
        let (put, journal) = (desk.put.clone(), Rc::clone(&books.book.journal));
        move |(there, shop)| {
            if !there {
                put.emit(deal::fresh(shop, &journal, None, None, 0));
            }
        }
    });
    let hand_in = use_callback(
        (shop.clone(), books.clone(), watch),
        |(draft, card): (Rc<Draft>, Rc<card::Card>), (shop, books, watch)| {
            let sequence = books.book.journal.next_sequence();
            let seconds = watch.as_ref().as_ref().map(Watch::seconds);
            if let Some(handed) = handed_in(shop, sequence, &draft, &card, seconds) {
                books.hand_in.emit(handed);
            }
        },
    );
    let screen = match (draft, (*card).clone()) {
        (Some(draft), Some(card)) => {
            let entry = draft.handed.and_then(|sequence| books.book.journal.find(sequence)).cloned();
            let seed = card.seed;
            match entry {
                None => html! {
                    <CardScreen key={format!("card-{seed}")} {draft} {card} on_draft={desk.put.reform(Some)} {hand_in} />
                },
                Some(entry) => html! {
                    <HandedScreen key={format!("handed-{seed}")} {draft} {card} entry={Rc::new(entry)} put={desk.put} />
                },
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

/// The event of an answer, and its card as handed in. `None` while something is missing.
fn handed_in(
    shop: &crate::app::state::Shop,
    sequence: u64,
    draft: &Draft,
    card: &card::Card,
    active_seconds: Option<u32>,
) -> Option<(Event, Draft)> {
    let world = shop.world(&draft.card.sheet.slug)?;
    let answer = draft.slate.answer(card)?;
    let graded = card::grade(card, &world, &answer)?;
    let stamp = Stamp {
        format: FORMAT,
        sequence,
        device: shop.settings.device.clone(),
        at: clock::now(),
        date: clock::today(),
        person: draft.person.clone(),
    };
    let entry = Entry {
        stamp,
        family: card.family.clone(),
        version: card.version,
        seed: card.seed,
        sheet: draft.card.sheet.clone(),
        answer,
        certainty: draft.certainty?,
        mark: graded.mark,
        guess: card::luck(card, &world),
        active_seconds,
        help: Help::None,
        within: Within::Practice,
    };
    Some((Event::Answered(entry), Draft { handed: Some(sequence), ..draft.clone() }))
}
