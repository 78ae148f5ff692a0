//! One answer of the record, as the card that was seen.

use super::card::{cautions, stage_name};
use super::deal;
use super::sets::OwnVerdict;
use crate::app::hooks::{use_sets, use_told};
use crate::app::parts::{Frame, Picture, Verdict, answered_panels, card_ticket, icon};
use crate::app::route::Route;
use crate::app::state::{Told, use_shop};
use crate::card;
use crate::device::clock;
use crate::learn::check::{answers_of, in_order};
use crate::record::{CardName, Entry as Answered};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct EntryProps {
    pub(in crate::app) sequence: u64,
    /// The check whose answers are gone through; none from the record.
    #[prop_or_default]
    pub(in crate::app) attempt: Option<String>,
    /// The set whose answers are looked at; none from elsewhere.
    #[prop_or_default]
    pub(in crate::app) set: Option<String>,
}

#[component]
pub(in crate::app) fn Entry(props: &EntryProps) -> Html {
    let shop = use_shop();
    let told = use_told();
    let attempt = props.attempt.clone();
    let back = Some(match (&attempt, &props.set) {
        (Some(attempt), _) => Route::CheckAnswers { attempt: attempt.clone() },
        (None, Some(set)) => Route::SetOf { id: set.clone() },
        (None, None) => Route::Record,
    });
    let sets = use_sets();
    let plain = |key: &str| {
        html! {
            <Frame class="sheet" title={shop.say("record.title")} back={back.clone()} cautions={shop.cautions_for(&[])}><p class="lead">{ shop.say(key) }</p></Frame>
        }
    };
    let Some(entry) = told.journal.find(props.sequence) else { return plain("record.empty") };
    if told.hides(entry) {
        return plain("check.not-yet");
    }
    let next = attempt.as_ref().and_then(|attempt| after(&told, attempt, entry));
    let next = next.zip(attempt).map(|(sequence, attempt)| Route::CheckAnswer { attempt, sequence });
    let action = html! {
        <div class="onward" hidden={next.is_none()}>
            <a href={next.unwrap_or(Route::Record).address()} class="next-step">{ shop.say("check.next-answer") }{ icon(Picture::Go) }</a>
        </div>
    };
    let name = CardName {
        family: entry.family.clone(),
        version: entry.version,
        seed: entry.seed,
        sheet: entry.sheet.clone(),
    };
    let at = clock::local(&entry.stamp.at);
    let note = shop.say_with("record.answered", &[("at", at)]);
    let own = entry.within.set().and_then(|set| sets.find(set));
    let own = own.and_then(|kept| kept.set.own_cards.iter().find(|card| card.id() == entry.family));
    if let Some(card) = own.cloned().map(Rc::new) {
        return html! {
            <Frame class="handed" title={shop.say("record.title")} {note} {back} cautions={shop.cautions_for(&[])} {action}>
                <OwnVerdict {card} answer={entry.answer.clone()} certainty={entry.certainty} />
            </Frame>
        };
    }
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
                <Frame class="handed" title={stage_name(&shop, &card)} {note} {back} cautions={cautions(&shop, &card)} {action}>
                    { card_ticket(&shop, &card) }
                    <h2 key="ask">{ shop.voice().ask(&card) }</h2>
                    <Verdict key="verdict" {card} {graded} answer={entry.answer.clone()} certainty={entry.certainty} {panels} />
                </Frame>
            }
        }
    }
}

/// Number of the answer that is looked at after this one.
fn after(told: &Told, attempt: &str, entry: &Answered) -> Option<u64> {
    let answers = in_order(answers_of(told.journal.events(), &entry.stamp.device, attempt));
    let mut rest = answers.into_iter().skip_while(|one| one.stamp.sequence != entry.stamp.sequence);
    rest.nth(1).filter(|one| !told.hides(one)).map(|one| one.stamp.sequence)
}
