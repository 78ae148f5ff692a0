//! What is at hand, by place, in an order that never changes and gives nothing away.

use super::{Ground, Spot, Task, once, room, values, words};
use crate::content::Place;
use crate::rules::term::Term;
use crate::walk::STRIP_H;
use crate::walk::at_hand::{AtHand, at_hand as benches, place_of};
use crate::walk::names::DryTest;
use yew::prelude::*;

/// The place of a finish room that a spot is.
pub(super) const fn place(spot: Spot) -> Option<Place> {
    match spot {
        Spot::Bench => Some(Place::Bench),
        Spot::Booth => Some(Place::Booth),
        Spot::Rack => Some(Place::Rack),
        Spot::Wheel => Some(Place::Wheel),
        Spot::Room => None,
    }
}

/// The spot where something is done.
pub(super) fn spot_of(ground: &Ground<'_>, task: Task) -> Spot {
    let place = match task {
        Task::Work(operation) => place_of(ground.shop.content(), operation),
        Task::Strip => Some(Place::Bench),
        _ => Some(Place::Rack),
    };
    match place {
        Some(Place::Booth) => Spot::Booth,
        Some(Place::Rack) => Spot::Rack,
        Some(Place::Wheel) => Spot::Wheel,
        Some(Place::Bench) | None => Spot::Bench,
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
        once::row(ground, Task::Work(one.operation), words::operation(shop, one.operation), takes)
    };
    let mut found: Vec<Html> = works.iter().map(work).collect();
    if ground.hand.at == Spot::Bench {
        found.push(once::row(ground, Task::Strip, shop.say("walk.strip"), words::hours(shop, STRIP_H.get())));
    }
    if ground.hand.at == Spot::Rack {
        let waits =
            [Task::Hours, Task::Morning].into_iter().chain(DryTest::ALL.iter().copied().map(Task::Until));
        let others = waits.chain([Task::Offer, Task::HandOver]);
        found.extend(others.map(|task| once::row(ground, task, task.name(shop), String::new())));
    }
    html! {
        <>
            { once::made_ready(ground) }
            { once::the_same(ground) }
            <ul key="rows" class="walk-ops">{ for found }</ul>
        </>
    }
}
