//! How long a check has taken today. It is shown and nobody is held to it.

use crate::app::state::use_shop;
use crate::device::Watch;
use crate::learn::MINUTE_SECONDS;
use gloo::timers::callback::Interval;
use yew::prelude::*;

/// How often it is told anew, milliseconds.
const EVERY_MS: u32 = 10_000;

#[derive(Properties, PartialEq)]
pub(super) struct ElapsedProps {
    /// Seconds of the cards before this one.
    pub(super) before: u32,
}

#[component]
pub(super) fn Elapsed(props: &ElapsedProps) -> Html {
    let shop = use_shop();
    let watch = use_memo(props.before, |_| Watch::start());
    let ticks = use_force_update();
    use_effect_with((), move |()| {
        let interval = Interval::new(EVERY_MS, move || ticks.force_update());
        move || drop(interval)
    });
    let minutes = (props.before + watch.seconds()) / MINUTE_SECONDS;
    html! { <span class="elapsed">{ shop.say_with("check.elapsed", &[("n", minutes.to_string())]) }</span> }
}
