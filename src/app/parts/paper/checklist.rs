//! The checklist: every criterion, and the evidence that the sign-off rests on.

use super::Checked;
use super::foot::{code, foot, signatures};
use crate::app::parts::says::genre;
use crate::app::parts::{Picture, icon};
use crate::app::state::Shop;
use crate::device::clock;
use crate::signoff::Evidence;
use yew::prelude::*;

pub(super) fn checklist(shop: &Shop, checked: &Checked<'_>) -> Html {
    let one = checked.one;
    let head = [
        ("number", one.subject.text().to_owned()),
        ("shop", one.shop.clone()),
        ("from", clock::day(&one.from)),
        ("until", clock::day(&one.until)),
    ];
    let criterion = |(nth, text): (usize, &String)| {
        html! {
            <tr key={nth}>
                <td>{ (nth + 1).to_string() }</td><td>{ text }</td>
                <td class="met">{ icon(Picture::Tick) }{ shop.say("paper.met") }</td>
            </tr>
        }
    };
    let evidence = |(nth, evidence): (usize, &Evidence)| {
        html! {
            <div key={nth} class="together">
                <dt>{ genre(shop, evidence) }{ ". " }{ &evidence.name }</dt><dd>{ &evidence.narrative }</dd>
            </div>
        }
    };
    html! {
        <article class="printed checklist">
            <header>
                <div>
                    <p class="over">{ shop.say("paper.checklist") }</p>
                    <h2>{ &one.achievement.name }</h2>
                    <p>{ shop.say_with("paper.checklist-head", &head) }</p>
                </div>
            </header>
            <h3>{ shop.say("paper.watched") }</h3>
            <p>{ &one.achievement.criteria }</p>
            <table>
                <thead><tr>
                    <th scope="col">{ shop.say("paper.nth") }</th>
                    <th scope="col">{ shop.say("paper.criterion") }</th>
                    <th scope="col">{ shop.say("paper.judged") }</th>
                </tr></thead>
                <tbody>{ for one.criteria.iter().enumerate().map(criterion) }</tbody>
            </table>
            <h3>{ shop.say("paper.rests-on") }</h3>
            <dl class="rests-on">{ for one.evidence.iter().enumerate().map(evidence) }</dl>
            { signatures(shop, one) }
            { code(shop, checked) }
            { foot(shop, checked) }
        </article>
    }
}
