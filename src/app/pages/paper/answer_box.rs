//! Room for an answer on paper, in the form that the card asks for.

use crate::app::parts::LETTERS;
use crate::app::state::Shop;
use crate::card::{Card, Kind, Offered};
use crate::exchange::set::OwnCard;
use crate::quantity::Unit;
use crate::record::Certainty;
use crate::rules::term::Term;
use yew::prelude::*;

pub(super) fn answer_box(shop: &Shop, card: &Card) -> Html {
    let words =
        || card.options.iter().map(|option| shop.voice().answer(&card.family, option)).collect::<Vec<_>>();
    let asked = match card.kind {
        Kind::ChooseOne | Kind::ChooseAll | Kind::Order => rows(&words()),
        Kind::Number => number(card.unit),
        Kind::Point => place(shop),
        // Left out of paper: `cards_on_paper`.
        Kind::Spray => Html::default(),
        Kind::Diagnose => {
            card.offered.as_ref().map(|offered| diagnosis(shop, card, offered)).unwrap_or_default()
        }
    };
    html! {
        <div key="answer" class="answer-box">
            { asked }
            <p class="tick">{ square() }{ shop.say("card.not-enough") }</p>
        </div>
    }
}

/// What is done on the paper to answer. Text: `app.worksheet.<key>`.
pub(super) fn how(card: &Card) -> &'static str {
    match card.kind {
        Kind::ChooseOne => "worksheet.tick-one",
        Kind::ChooseAll => "worksheet.tick-all",
        Kind::Order => "worksheet.put-order",
        Kind::Number if siblings(card.unit).len() > 1 => "worksheet.figure-unit",
        Kind::Number => "worksheet.figure",
        Kind::Point => "worksheet.point",
        Kind::Diagnose => "worksheet.tests",
        Kind::Spray => "worksheet.not-on-paper",
    }
}

/// The same for a card of the shop's own.
pub(super) fn how_own(own: &OwnCard) -> &'static str {
    if own.asks_all() { "worksheet.tick-all" } else { "worksheet.tick-one" }
}

/// A card of the shop's own.
pub(super) fn own_box(own: &OwnCard) -> Html {
    html! { <div key="answer" class="answer-box">{ rows(&own.options) }</div> }
}

pub(super) fn certainty_boxes(shop: &Shop) -> Html {
    let one = |certainty: &Certainty| {
        let words = shop.say(&format!("card.certainty.{}", certainty.slug()));
        html! { <span key={certainty.slug()} class="tick">{ square() }{ words }</span> }
    };
    html! {
        <p key="certainty" class="how-far">
            <span>{ shop.say("worksheet.how-far") }</span>
            { for Certainty::ALL.iter().map(one) }
        </p>
    }
}

fn square() -> Html {
    html! { <i class="square" aria-hidden="true"></i> }
}

/// Each thing with its letter and a square before it.
fn rows(words: &[String]) -> Html {
    let row = |(nth, words): (usize, &String)| {
        html! {
            <li key={nth}>{ square() }<b>{ LETTERS.get(nth).copied().unwrap_or_default() }</b><span>{ words }</span></li>
        }
    };
    html! { <ul class="to-tick">{ for words.iter().enumerate().map(row) }</ul> }
}

/// A line for the figure, then its unit: the one asked for, or one of its siblings with a square before each.
fn number(unit: Option<Unit>) -> Html {
    let units = siblings(unit);
    let one =
        |unit: &Unit| html! { <span key={unit.symbol()} class="tick">{ square() }{ unit.symbol() }</span> };
    let named = match *units {
        [only] => html! { <span>{ only.symbol() }</span> },
        _ => html! { <>{ for units.iter().map(one) }</> },
    };
    html! { <p class="figure-on-paper"><b class="on-line"></b>{ named }</p> }
}

fn siblings(unit: Option<Unit>) -> Vec<Unit> {
    unit.map(Unit::siblings).unwrap_or_default()
}

fn place(shop: &Shop) -> Html {
    html! {
        <p class="figure-on-paper">
            <span>{ shop.say("worksheet.column") }</span><i class="cell" aria-hidden="true"></i>
            <span>{ shop.say("worksheet.row") }</span><i class="cell" aria-hidden="true"></i>
        </p>
    }
}

/// The tests with what they show, and what can be named. Paper cannot keep a result back: whoever answers is told to number
/// only the tests that they would have done.
fn diagnosis(shop: &Shop, card: &Card, offered: &Offered) -> Html {
    let term = |slug: &String| shop.voice().term(&card.family, slug);
    let test = |slug: &String| {
        html! {
            <tr key={slug.clone()}><td>{ square() }</td><th scope="row">{ term(slug) }</th><td>{ shop.voice().shown_by(card, slug) }</td></tr>
        }
    };
    let part = |key: &'static str, slugs: &[String]| {
        let words: Vec<String> = slugs.iter().map(term).collect();
        html! { <div {key}><h4>{ shop.say(&format!("card.{key}")) }</h4>{ rows(&words) }</div> }
    };
    html! {
        <>
            <table class="tests-on-paper"><tbody>{ for offered.tests.iter().map(test) }</tbody></table>
            <div class="three">
                { part("fault", &offered.faults) }
                { part("cause", &offered.causes) }
                { part("remedy", &offered.remedies) }
            </div>
        </>
    }
}
