//! The certificate: one page to be hung up or carried along.

use super::Checked;
use super::foot::{code, foot, signatures};
use crate::app::parts::stamp;
use crate::app::state::Shop;
use crate::device::clock;
use crate::signoff::Genre;
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
                    { stamp(one.from.day()) }
                </header>
                <p>{ &one.achievement.description }</p>
                <p><b>{ shop.say_with("paper.dates", &dates) }</b></p>
                { reason.map(|reason| html! {
                    <p key="reason"><b>{ shop.say("paper.reason") }</b>{ " " }{ &reason.narrative }</p>
                }).unwrap_or_default() }
                { signatures(shop, one) }
                { code(shop, checked) }
            </div>
            { foot(shop, checked) }
        </article>
    }
}
