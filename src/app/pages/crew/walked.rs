//! The walks of one person, and what was decided wrongly on them.

use crate::app::pages::{decided_row, walked_job};
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::device::clock;
use crate::exchange::crew::{WalkDone, WalkWhat, walks};
use crate::record::{Decided, Event, Inspected, Voids, Walked};
use crate::rules::term::Term;
use yew::prelude::*;

/// Latest wrong decisions shown.
const LATEST: usize = 30;

pub(super) fn walked(shop: &Shop, events: &[&Event], voids: &Voids<'_>) -> Html {
    let all = walks(events.iter().copied());
    let decided = events.iter().filter_map(|event| event.walked());
    let decided = decided.filter_map(|walked| Some((walked, walked.decided()?)));
    let wrong = decided.filter(|(_, decided)| !decided.broke.is_empty());
    let mut wrong: Vec<(&Walked, &Decided)> = wrong.collect();
    wrong.reverse();
    wrong.truncate(LATEST);
    let row = |(walked, decided): &(&Walked, &Decided)| {
        let (device, sequence) = (walked.stamp.device.clone(), walked.stamp.sequence);
        let to = Route::CrewAnswer { device, sequence };
        decided_row(shop, walked, decided, &to, voids.touches_decided(decided).is_some())
    };
    html! {
        <>
            <section key="wrong-walked" hidden={wrong.is_empty()}>
                <h2>{ shop.say("walked.wrong") }</h2>
                <ul class="rows links">{ for wrong.iter().map(row) }</ul>
            </section>
            <section key="walks" hidden={all.is_empty()}>
                <h2>{ shop.say("walked.jobs") }</h2>
                <ul class="rows">{ for all.iter().rev().map(|one| done(shop, one)) }</ul>
            </section>
        </>
    }
}

fn done(shop: &Shop, one: &WalkDone<'_>) -> Html {
    let (told, again) = match one.what {
        WalkWhat::Walked { way, again, decisions, wrong, came } => {
            let named = [
                ("mode", shop.text(&format!("walk.mode.{}", way.slug())).to_string()),
                ("n", decisions.to_string()),
                ("wrong", wrong.to_string()),
                ("came", shop.say(&format!("walked.came.{}", came.slug())).to_string()),
            ];
            (shop.say_with("walked.done", &named), again)
        }
        WalkWhat::Inspected(told) => (inspected(shop, told), false),
    };
    let stamp = &one.last.stamp;
    html! {
        <li key={format!("{}-{}", stamp.device, one.last.walk)}>
            { icon(Picture::Walk) }
            <span class="words"><b>{ walked_job(shop, one.last) }</b><span>{ told }</span>
                <span key="again" hidden={!again}>{ shop.say("walked.again") }</span>
                <span key="at" class="note">{ clock::local(&stamp.at) }</span></span>
        </li>
    }
}

fn inspected(shop: &Shop, told: &Inspected) -> AttrValue {
    let missed = u32::try_from(told.missed.len()).unwrap_or(u32::MAX);
    let of = told.found.saturating_add(told.half).saturating_add(missed);
    let named = [
        ("found", told.found.to_string()),
        ("of", of.to_string()),
        ("half", told.half.to_string()),
        ("wrong", told.wrong.to_string()),
    ];
    shop.say_with("walked.inspected", &named)
}
