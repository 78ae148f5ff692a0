//! A check being taken: card after card without a word on how it went, until the cards of the day are done.

use super::super::card::{Around, CardScreen};
use super::super::sheet::ShopSheet;
use super::answers::CheckAnswers;
use super::card::{OfCheck, use_card};
use super::elapsed::{Elapsed, LEAD};
use super::presence::use_presence;
use super::view::View;
use crate::app::hooks::{now, use_book, use_desk};
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
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
    let on_draft = use_desk().put_check.reform(Some);
    let attempt = props.attempt.clone();
    let view = use_view(&attempt);
    let view = view.as_ref().as_ref();
    let begun = view.is_some_and(|view| !view.left && view.step >= books.book.opened_at);
    let closed = use_presence(attempt.clone(), view.is_some(), begun);
    let OfCheck { draft, card, hand_in } = use_card(&attempt, view);
    let screen = match (view, draft, card) {
        (_, draft, _) if props.sheet => html! {
            <ShopSheet key="sheet" back={Route::Sitting { attempt }} sheet={draft.map(|draft| draft.card.sheet.slug.clone())} />
        },
        (None, ..) => without_card(&shop, "none", "check.no-such", Html::default()),
        (Some(view), ..) if view.of_set => {
            let to = Route::SetOf { id: view.set.clone() };
            let go_on = html! { <a href={to.address()} class="next-step">{ shop.say("check.go-on") }{ icon(Picture::Go) }</a> };
            without_card(&shop, "set", "check.of-set", go_on)
        }
        (Some(view), ..) if view.done => {
            let to = Route::CheckAnswers { attempt: attempt.clone() };
            let closing = Callback::from(move |()| {
                *closed.borrow_mut() = true;
                to.go();
            });
            html! { <CheckAnswers key="done" {attempt} {closing} /> }
        }
        (Some(view), Some(draft), Some(card)) => {
            let (key, around) = (format!("card-{}", card.seed), around(&shop, view, attempt));
            html! { <CardScreen {key} {draft} {card} {around} {on_draft} {hand_in} /> }
        }
        (Some(view), ..) => {
            let said = match (&view.next, view.sheet_gone) {
                (_, true) => "check.sheet-gone",
                (Some(_), _) => "check.dealing",
                (None, _) => "card.gone",
            };
            without_card(&shop, "wait", said, Html::default())
        }
    };
    html! { <div class="practise">{ screen }</div> }
}

/// What is seen of the check, worked out once an event; nothing of one that is not of whoever works here.
#[hook]
fn use_view(attempt: &str) -> Rc<Option<View>> {
    let shop = use_shop();
    let books = use_book();
    let journal = &books.book.journal;
    use_memo((shop, journal.next_sequence(), attempt.to_owned()), |(shop, _, attempt)| {
        let view = View::of(shop, journal, attempt, now())?;
        (view.person == shop.settings.person).then_some(view)
    })
}

/// What stands around the card. How many are still to come would tell how the answers so far were.
fn around(shop: &Shop, view: &View, attempt: String) -> Around {
    let said = shop.say_with("check.card", &[("n", (view.today + 1).to_string())]);
    Around {
        note: said.clone(),
        marks: Html::default(),
        lead: html! { <p key="lead" id={LEAD} tabindex="-1" class="note sitting-lead"><span class="spoken">{ said }{ ". " }</span><Elapsed before={view.seconds} /></p> },
        back: Route::Check,
        sheet: Route::SittingSheet { attempt },
        in_check: true,
    }
}

/// The screen where there is no card to answer: why, and what can be done.
fn without_card(shop: &Shop, key: &'static str, said: &str, then: Html) -> Html {
    html! {
        <Frame {key} class="sheet" title={shop.say("check.title")} back={Some(Route::Check)} cautions={shop.cautions_for(&[])}>
            <p class="lead">{ shop.say(said) }</p>
            { then }
        </Frame>
    }
}
