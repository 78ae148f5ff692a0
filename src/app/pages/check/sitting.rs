//! A check being taken: card after card without a word on how it went, until the cards of the day are done.

use super::super::card::{Around, CardScreen};
use super::super::deal;
use super::super::events::{HandedIn, answered};
use super::super::sheet::ShopSheet;
use super::answers::CheckAnswers;
use super::elapsed::{Elapsed, LEAD};
use super::presence::use_presence;
use super::view::View;
use crate::app::hooks::{now, use_book, use_desk};
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{OnDesk, use_shop};
use crate::card::Slate;
use crate::device::Watch;
use crate::record::Within;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct SittingProps {
    pub(in crate::app) attempt: String,
    /// Whether the shop sheet is looked at meanwhile.
    pub(in crate::app) sheet: bool,
}

#[component]
pub(in crate::app) fn Sitting(props: &SittingProps) -> Html {
    let shop = use_shop();
    let books = use_book();
    let desk = use_desk();
    let attempt = props.attempt.clone();
    let journal = &books.book.journal;
    let view = use_memo((shop.clone(), journal.next_sequence(), attempt.clone()), |(shop, _, attempt)| {
        let view = View::of(shop, journal, attempt, now())?;
        (view.person == shop.settings.person).then_some(view)
    });
    let view = view.as_ref().as_ref();
    let begun = view.is_some_and(|view| !view.left && view.step >= books.book.opened_at);
    let closed = use_presence(attempt.clone(), view.is_some(), begun);
    let draft =
        desk.check.clone().filter(|draft| view.is_some_and(|view| view.waits(&shop, &attempt, draft)));
    let missing = view.filter(|_| draft.is_none()).and_then(|view| view.next.clone());
    use_effect_with(missing, {
        let put = desk.put_check.clone();
        move |missing| {
            if missing.is_some() {
                put.emit(missing.clone());
            }
        }
    });
    let name = draft.as_ref().map(|draft| draft.card.clone());
    let card = use_memo((shop.clone(), name), |(shop, name)| {
        name.as_ref().and_then(|name| deal::again(shop, name)).map(Rc::new)
    });
    let fresh = draft
        .as_ref()
        .zip(card.as_ref().as_ref())
        .is_some_and(|(draft, card)| draft.slate == Slate::for_card(card));
    let seed = card.as_ref().as_ref().map(|card| card.seed);
    // An answer that was begun before this page was opened is not timed.
    let watch = use_memo(seed, |_| fresh.then(Watch::start));
    let set = view.map(|view| view.set.clone()).unwrap_or_default();
    let hand_in = use_callback(
        (shop.clone(), books.hand_in.clone(), watch, attempt.clone(), set),
        |handed: HandedIn, (shop, hand_in, watch, attempt, set)| {
            let seconds = watch.as_ref().as_ref().map(Watch::seconds);
            let within = Within::Check { attempt: attempt.clone(), set: set.clone() };
            if let Some(event) = answered(shop, &handed, seconds, within) {
                hand_in.emit((event, OnDesk::NextOfCheck));
            }
        },
    );
    let on_sheet = draft.as_ref().map(|draft| draft.card.sheet.slug.clone());
    let back = Route::Check;
    let screen = match (view, draft, (*card).clone()) {
        _ if props.sheet => html! {
            <ShopSheet key="sheet" back={Route::Sitting { attempt: attempt.clone() }} sheet={on_sheet} />
        },
        (None, ..) => html! {
            <Frame key="none" class="sheet" title={shop.say("check.title")} back={Some(back)} cautions={shop.cautions_for(&[])}>
                <p class="lead">{ shop.say("check.no-such") }</p>
            </Frame>
        },
        (Some(view), ..) if view.of_set => html! {
            <Frame key="set" class="sheet" title={shop.say("check.title")} back={Some(back)} cautions={shop.cautions_for(&[])}>
                <p class="lead">{ shop.say("check.of-set") }</p>
                <a href={Route::SetOf { id: view.set.clone() }.address()} class="next-step">{ shop.say("check.go-on") }{ icon(Picture::Go) }</a>
            </Frame>
        },
        (Some(view), ..) if view.done => {
            let to = Route::CheckAnswers { attempt: attempt.clone() };
            let closing = Callback::from(move |()| {
                *closed.borrow_mut() = true;
                to.go();
            });
            html! { <CheckAnswers key="done" attempt={attempt.clone()} {closing} /> }
        }
        (Some(view), Some(draft), Some(card)) => {
            // How many are still to come would tell how the answers so far were.
            let named = [("n", (view.today + 1).to_string())];
            let said = shop.say_with("check.card", &named);
            let around = Around {
                note: said.clone(),
                marks: Html::default(),
                lead: html! { <p key="lead" id={LEAD} tabindex="-1" class="note sitting-lead"><span class="spoken">{ said }{ ". " }</span><Elapsed before={view.seconds} /></p> },
                back,
                sheet: Route::SittingSheet { attempt: attempt.clone() },
            };
            let seed = card.seed;
            html! {
                <CardScreen key={format!("card-{seed}")} {draft} {card} {around} on_draft={desk.put_check.reform(Some)} {hand_in} />
            }
        }
        (Some(view), ..) => {
            let key = match (&view.next, view.sheet_gone) {
                (_, true) => "check.sheet-gone",
                (Some(_), _) => "check.dealing",
                (None, _) => "card.gone",
            };
            html! {
                <Frame key="wait" class="sheet" title={shop.say("check.title")} back={Some(back)} cautions={shop.cautions_for(&[])}>
                    <p class="lead">{ shop.say(key) }</p>
                </Frame>
            }
        }
    };
    html! { <div class="practise">{ screen }</div> }
}
