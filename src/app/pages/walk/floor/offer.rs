//! What is set of a wait and of another day.

use super::{Ground, Task, words};
use crate::app::parts::{Field, Picture, icon};
use crate::app::state::Shop;
use crate::quantity::{DUST, HOURS_A_DAY, MINUTES_AN_HOUR, Measure, Unit, read_number};
use crate::walk::WAIT_MOST;
use yew::prelude::*;

/// Waits that are offered at one touch, hours: minutes, a coat, a half day, a day, days, weeks.
const WAITS: [f64; 10] =
    [5.0 / MINUTES_AN_HOUR, 10.0 / MINUTES_AN_HOUR, 0.5, 1.0, 2.0, 4.0, 24.0, 72.0, 168.0, 336.0];
/// Hours of a step.
const STEP_H: f64 = 0.5;
/// Id of the field in which hours are typed.
pub(super) const WAIT_FIELD: &str = "walk-wait";

pub(super) fn more(ground: &Ground<'_>, task: Task) -> Html {
    match task {
        Task::Hours => hours(ground),
        Task::Offer => day(ground),
        Task::HandOver => note(ground, "walk.hand-over-told"),
        Task::Strip => note(ground, "walk.strip-told"),
        Task::Morning => note(ground, "walk.wait.morning-told"),
        Task::Work(_) | Task::Until(_) => Html::default(),
    }
}

fn note(ground: &Ground<'_>, key: &str) -> Html {
    html! { <p key="note" class="note">{ ground.shop.say(key) }</p> }
}

/// Hours as they are typed; `None` of what is no wait.
fn read_hours(text: &str) -> Option<f64> {
    read_number(text).filter(|hours| *hours > 0.0 && *hours <= WAIT_MOST.get())
}

/// A wait that is offered: whole days as days.
fn span(shop: &Shop, hours: f64) -> String {
    let days = hours / HOURS_A_DAY;
    if days < 1.0 {
        words::hours(shop, hours)
    } else {
        shop.say_with("walk.days", &[("n", days.to_string())]).to_string()
    }
}

fn hours(ground: &Ground<'_>) -> Html {
    let Ground { shop, hand, walk, .. } = ground;
    let set = |hours: f64| {
        ground.on(move |hand, _: MouseEvent| {
            hand.wait_typed = None;
            hand.wait_h = hours;
        })
    };
    // By what stands there when it is touched: a second touch may come before the screen shows the first.
    let step = |by: f64| {
        ground.on(move |hand, _: MouseEvent| {
            hand.wait_typed = None;
            hand.wait_h = (hand.wait_h + by).clamp(WAITS[0], WAIT_MOST.get());
        })
    };
    let usual = |hours: &f64| {
        let picked = (hand.wait_h - hours).abs() < DUST;
        html! {
            <button key={hours.to_string()} type="button" class={classes!("control", picked.then_some("picked"))} aria-pressed={picked.to_string()} onclick={set(*hours)}>{ span(shop, *hours) }</button>
        }
    };
    let language = Shop::clone(shop);
    let typed = ground.on(move |hand, text: String| match read_hours(&language.texts().typed(&text)) {
        Some(hours) => {
            hand.wait_h = hours;
            hand.wait_typed = None;
        }
        None => hand.wait_typed = Some(text),
    });
    // Minutes are told in hundredths of an hour.
    let decimals = if hand.wait_h < STEP_H { 2 } else { 1 };
    let wait = Measure::new(hand.wait_h, Unit::Hour, decimals);
    let shown = hand.wait_typed.clone().unwrap_or_else(|| shop.texts().figure(wait));
    let bounds = [("from", words::hours(shop, WAITS[0])), ("to", words::hours(shop, WAIT_MOST.get()))];
    let wrong =
        if hand.wait_typed.is_some() { shop.say_with("walk.allowed", &bounds) } else { AttrValue::default() };
    let until = [("at", words::at(shop, walk.clock() + hand.wait_h).to_string())];
    html! {
        <div key="hours" class="walk-wait">
            <div class="people">{ for WAITS.iter().map(usual) }</div>
            <div key="typed" class="walk-typed">
                <button key="less" type="button" class="control square" aria-label={shop.say("walk.shorter")} onclick={step(-STEP_H)}>{ icon(Picture::Dash) }</button>
                <Field key="field" id={WAIT_FIELD} inputmode="decimal" label={shop.say("walk.wait.typed")} value={shown} on_input={typed} {wrong} />
                <button key="more" type="button" class="control square" aria-label={shop.say("walk.longer")} onclick={step(STEP_H)}>{ icon(Picture::Plus) }</button>
            </div>
            <p class="note" role="status">{ shop.say_with("walk.until", &until) }</p>
        </div>
    }
}

fn day(ground: &Ground<'_>) -> Html {
    let Ground { shop, hand, walk, .. } = ground;
    let least = walk.start().info.ticket.days.saturating_add(1);
    let earlier = ground.on(move |hand, _: MouseEvent| hand.day = hand.day.saturating_sub(1).max(least));
    let later = ground.on(move |hand, _: MouseEvent| hand.day = hand.day.saturating_add(1).max(least));
    let named = [("day", hand.day.to_string())];
    let asked = [("day", walk.start().info.ticket.days.to_string())];
    html! {
        <div key="day" class="walk-wait">
            <p class="note">{ shop.say_with("walk.offer-told", &asked) }</p>
            { stepper(shop.say("walk.earlier"), shop.say("walk.later"), shop.say_with("walk.day", &named).to_string(), earlier, later) }
        </div>
    }
}

fn stepper(
    less: AttrValue,
    more: AttrValue,
    shown: String,
    on_less: Callback<MouseEvent>,
    on_more: Callback<MouseEvent>,
) -> Html {
    html! {
        <div key="stepper" class="stepper">
            <button key="less" type="button" class="control square" aria-label={less} onclick={on_less}>{ icon(Picture::Dash) }</button>
            <output key="shown" class="count">{ shown }</output>
            <button key="more" type="button" class="control square" aria-label={more} onclick={on_more}>{ icon(Picture::Plus) }</button>
        </div>
    }
}
