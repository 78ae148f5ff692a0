//! A stopwatch for whoever wants one. It goes on while the page is closed.

use crate::app::parts::{Picture, icon};
use crate::app::state::use_shop;
use crate::device::clock;
use crate::record::Stopwatch;
use gloo::timers::callback::Interval;
use yew::prelude::*;

const TICK_MS: u32 = 1000;
const MINUTE: u32 = 60;

#[derive(Properties, PartialEq)]
pub(super) struct WatchProps {
    pub(super) stopwatch: Stopwatch,
    pub(super) on_press: Callback<Stopwatch>,
}

/// Seconds that it has run until now.
pub(super) fn ran(stopwatch: &Stopwatch) -> u32 {
    let running = stopwatch.since.as_deref().map_or(0, clock::seconds_since);
    stopwatch.seconds.saturating_add(running)
}

#[component]
pub(super) fn StopwatchField(props: &WatchProps) -> Html {
    let shop = use_shop();
    let tick = use_force_update();
    let runs = props.stopwatch.since.is_some();
    use_effect_with(runs, move |runs| {
        let interval = runs.then(|| Interval::new(TICK_MS, move || tick.force_update()));
        move || drop(interval)
    });
    let press = {
        let stopwatch = props.stopwatch.clone();
        props.on_press.reform(move |_: MouseEvent| stopwatch.pressed(clock::now(), ran(&stopwatch)))
    };
    let zero = props.on_press.reform(|_: MouseEvent| Stopwatch::default());
    let seconds = ran(&props.stopwatch);
    html! {
        <div class="stopwatch" role="group" aria-label={shop.say("assess.stopwatch")}>
            <span class="ran" role="timer">{ shown(seconds) }</span>
            <button type="button" class="control" onclick={press}>
                { icon(if runs { Picture::Dash } else { Picture::Go }) }{ shop.say(if runs { "assess.stop" } else { "assess.start" }) }
            </button>
            <button type="button" class="control" disabled={seconds == 0} onclick={zero}>{ shop.say("assess.zero") }</button>
        </div>
    }
}

/// Minutes and seconds.
pub(super) fn shown(seconds: u32) -> String {
    format!("{}:{:02}", seconds / MINUTE, seconds % MINUTE)
}
