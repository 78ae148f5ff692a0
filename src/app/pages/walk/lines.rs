//! Lines of the ticket: what was done, when and to which parts; with the job ticket and the shop sheet.

use super::sheet::SheetAtHand;
use super::start::ticket;
use super::words::{at, micrometres, operation, parts};
use crate::app::state::{Shared, Shop};
use crate::walk::{Decision, Line, Walk};
use yew::prelude::*;

/// Lines that are always in view.
const LAST: usize = 4;

fn line(shop: &Shop, walk: &Walk, (place, line): (usize, &Line)) -> Html {
    let wet = line.wet.map(|wet| micrometres(shop, wet.get()));
    let wet = wet.map(|um| shop.say_with("walk.wet", &[("um", um)])).unwrap_or_default();
    let on = on_parts(shop, walk, line);
    html! {
        <li key={place} id={format!("line-{place}")}>
            <span class="walk-when">{ at(shop, line.begun) }</span>
            <span>{ operation(shop, line.operation) }{ on }{ wet }</span>
        </li>
    }
}

/// The parts that a line is about, behind a comma; nothing where there is but one.
fn on_parts(shop: &Shop, walk: &Walk, line: &Line) -> String {
    let many = walk.start().parts() > 1;
    if many { format!(", {}", parts(shop, walk.start(), &line.parts)) } else { String::new() }
}

/// The last lines, and all of them on demand.
pub(super) fn lines(shop: &Shop, walk: &Shared<Walk>) -> Html {
    let all = walk.lines();
    let from = all.len().saturating_sub(LAST);
    let row = |one| line(shop, walk, one);
    let first = shop.say_with("walk.lines-all", &[("n", all.len().to_string())]);
    html! {
        <section key="lines" class="walk-lines">
            <h2>{ shop.say("walk.lines") }</h2>
            <p key="offer" hidden={walk.offered().is_none()}>{ offer(shop, walk) }</p>
            <p key="none" class="note" hidden={!all.is_empty()}>{ shop.say("walk.lines-none") }</p>
            <ol key="last">{ for all.iter().enumerate().skip(from).map(row) }</ol>
            <details key="all" hidden={from == 0}>
                <summary>{ first }</summary>
                <ol>{ for all.iter().enumerate().take(from).map(row) }</ol>
            </details>
            <details key="job" class="walk-job">
                <summary>{ shop.say("walk.job-ticket") }</summary>
                { ticket(shop, &walk.start().info) }
            </details>
            <SheetAtHand key="sheet" walk={walk.clone()} />
        </section>
    }
}

/// The other day that was offered, as it stands on the ticket.
fn offer(shop: &Shop, walk: &Walk) -> AttrValue {
    let made = walk.turns().iter().rev().find(|turn| matches!(turn.decision, Decision::Offer(_)));
    let named = [
        ("at", at(shop, made.map_or(0.0, |turn| turn.begun)).to_string()),
        ("day", walk.offered().unwrap_or_default().to_string()),
        ("asked", walk.start().info.ticket.days.to_string()),
    ];
    shop.say_with("walk.offer-on-ticket", &named)
}

/// One line in words, where a fault was made.
pub(super) fn made(shop: &Shop, walk: &Walk, place: usize) -> AttrValue {
    let Some(line) = walk.lines().get(place) else { return AttrValue::default() };
    let named = [
        ("at", at(shop, line.begun).to_string()),
        ("what", operation(shop, line.operation).to_string()),
        ("parts", on_parts(shop, walk, line)),
    ];
    shop.say_with("walk.made", &named)
}
