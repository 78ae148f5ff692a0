//! The air of the room along the days: what holds now, what held before, what comes.

use super::words::time;
use crate::app::state::Shop;
use crate::content::RoomAir;
use crate::quantity::{Measure, Unit};
use crate::walk::Walk;
use crate::walk::clock::midnight;
use yew::prelude::*;

/// Readings before and after the one that holds.
const BEFORE: usize = 1;
const AFTER: usize = 2;

pub(super) fn air(shop: &Shop, walk: &Walk) -> Html {
    let all = &walk.start().info.air;
    let begins = |one: &RoomAir| midnight(one.day) + one.hour;
    let now = all.iter().rposition(|one| begins(one) <= walk.clock()).unwrap_or_default();
    let voice = shop.voice();
    let cell = |(place, one): (usize, &RoomAir)| {
        let holds = place == now;
        let named = [("day", one.day.to_string()), ("time", time(one.hour))];
        let when = if holds { shop.say("walk.now") } else { shop.say_with("walk.at", &named) };
        let degrees = voice.measure(Measure::new(one.air_c.get(), Unit::Celsius, 0));
        let humidity = voice.measure(Measure::new(one.rh.get(), Unit::Percent, 0));
        html! {
            <li key={place} class={holds.then_some("now")} aria-current={holds.then_some("true")}>
                <b>{ when }</b><span>{ degrees }{ ", " }{ humidity }</span>
            </li>
        }
    };
    let shown = all.iter().enumerate().skip(now.saturating_sub(BEFORE)).take(BEFORE + 1 + AFTER);
    html! { <ol key="air" class="walk-air" aria-label={shop.say("walk.air-name")}>{ for shown.map(cell) }</ol> }
}
