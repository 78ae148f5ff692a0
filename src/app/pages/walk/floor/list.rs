//! What is at hand, by place, in an order that never changes and gives nothing away.

use super::hand::last;
use super::{Ground, Spot, Task, room, values, words};
use crate::app::parts::{Picture, icon};
use crate::content::Place;
use crate::rules::term::Term;
use crate::walk::at_hand::{AtHand, at_hand as benches};
use crate::walk::{STRIP_H, Walk};
use yew::prelude::*;

/// The place of a finish room that a spot is.
const fn place(spot: Spot) -> Option<Place> {
    match spot {
        Spot::Bench => Some(Place::Bench),
        Spot::Booth => Some(Place::Booth),
        Spot::Rack => Some(Place::Rack),
        Spot::Wheel => Some(Place::Wheel),
        Spot::Room => None,
    }
}

/// The spot where something is done.
pub(super) const fn spot(place: Place) -> Spot {
    match place {
        Place::Bench => Spot::Bench,
        Place::Booth => Spot::Booth,
        Place::Rack => Spot::Rack,
        Place::Wheel => Spot::Wheel,
    }
}

pub(super) fn at_hand(ground: &Ground<'_>) -> Html {
    let hand = ground.hand;
    let inside = match hand.task {
        Some(task) => values::values(ground, task),
        None if hand.at == Spot::Room => room::room(ground),
        None => rows(ground),
    };
    html! {
        <section key="hand" class="walk-hand">
            <h2 key="next" class="spoken">{ ground.shop.say("walk.next") }</h2>
            <div key="spots" class="segments walk-spots" role="radiogroup" aria-label={ground.shop.say("walk.spots")}>
                { for Spot::ALL.iter().map(|one| tab(ground, *one)) }
            </div>
            { inside }
        </section>
    }
}

fn tab(ground: &Ground<'_>, spot: Spot) -> Html {
    let picked = ground.hand.at == spot;
    let onchange = ground.on(move |hand, _: Event| hand.go(spot));
    html! {
        <label key={spot.slug()} class={classes!("unit", picked.then_some("picked"))}>
            <input type="radio" name="spot" value={spot.slug()} checked={picked} {onchange} /><span>{ ground.shop.say(&format!("walk.spot.{}", spot.slug())) }</span>
        </label>
    }
}

fn rows(ground: &Ground<'_>) -> Html {
    let shop = ground.shop;
    let all = benches(shop.content(), &ground.walk.start().sheet);
    let here = all.iter().find(|bench| Some(bench.place) == place(ground.hand.at));
    let works = here.map(|bench| bench.operations.as_slice()).unwrap_or_default();
    let work = |one: &AtHand<'_>| {
        let takes = words::takes(shop, one.takes.get());
        row(ground, Task::Work(one.operation), words::operation(shop, one.operation), takes)
    };
    let mut found: Vec<Html> = works.iter().map(work).collect();
    if ground.hand.at == Spot::Bench {
        found.push(row(ground, Task::Strip, shop.say("walk.strip"), words::hours(shop, STRIP_H.get())));
    }
    if ground.hand.at == Spot::Rack {
        let others = [
            (Task::Hours, "walk.wait.hours"),
            (Task::Morning, "walk.wait.morning"),
            (Task::Until, "walk.wait.until"),
            (Task::Offer, "walk.offer"),
            (Task::HandOver, "walk.hand-over"),
        ];
        found.extend(others.map(|(task, key)| row(ground, task, shop.say(key), String::new())));
    }
    html! { <ul key="rows" class="walk-ops">{ for found }</ul> }
}

fn row(ground: &Ground<'_>, task: Task, name: AttrValue, takes: String) -> Html {
    let slug = task.slug();
    let before = last_of(ground.walk, task);
    let onclick = ground.on(move |hand, _: MouseEvent| hand.pick(task, before.as_ref()));
    html! {
        <li key={slug}>
            <button type="button" value={slug} {onclick}><span>{ name }</span><span class="note">{ takes }</span>{ icon(Picture::Go) }</button>
        </li>
    }
}

/// The last time that it was done.
fn last_of(walk: &Walk, task: Task) -> Option<crate::walk::Work> {
    match task {
        Task::Work(operation) => last(walk, operation),
        _ => None,
    }
}
