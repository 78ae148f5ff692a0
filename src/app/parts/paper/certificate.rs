//! The certificate: one page to be hung up or carried along.

use super::Checked;
use super::foot::{code, foot, signatures};
use crate::app::state::Shop;
use crate::device::clock;
use crate::signoff::{Genre, When};
use yew::prelude::*;

pub(super) fn certificate(shop: &Shop, checked: &Checked<'_>) -> Html {
    let one = checked.one;
    let dates = [("from", clock::day(&one.from)), ("until", clock::day(&one.until))];
    // A reason stands where and only where the knowledge evidence was not sufficient.
    let reason = one.evidence.iter().find(|evidence| evidence.genre == Genre::Reason);
    html! {
        <article class="printed certificate">
            <div class="frame-line">
                <header>
                    <div>
                        <p class="over">{ shop.say("paper.over") }{ ", " }{ &one.shop }</p>
                        <h2>{ &one.achievement.name }</h2>
                        <p class="holder">{ shop.say_with("paper.holder", &[("number", one.subject.text().to_owned())]) }</p>
                    </div>
                    { stamp(&one.from) }
                </header>
                <p>{ &one.achievement.description }</p>
                <p><b>{ shop.say_with("paper.dates", &dates) }</b></p>
                { reason.map(|reason| html! {
                    <p key="reason"><b>{ shop.say("paper.reason") }</b>{ " " }{ &reason.name }{ ": " }{ &reason.narrative }</p>
                }).unwrap_or_default() }
                { signatures(shop, one) }
                { code(shop, checked) }
            </div>
            { foot(shop, checked) }
        </article>
    }
}

/// The stamp, drawn so that a photocopier keeps it; the words beside it say the same.
fn stamp(from: &When) -> Html {
    html! {
        <svg class="stamp" viewBox="0 0 60 60" aria-hidden="true" focusable="false">
            <circle cx="30" cy="30" r="28" /><circle cx="30" cy="30" r="23" class="thin" />
            <path d="M21 23l7 7 12-15" />
            <text x="30" y="41">{ from.day().to_owned() }</text>
        </svg>
    }
}
