//! How long a check has taken today. It is shown and nobody is held to it.

use crate::app::state::use_shop;
use crate::device::{Watch, page};
use crate::learn::MINUTE_SECONDS;
use gloo::timers::callback::Interval;
use yew::prelude::*;

/// Id of the line over a card of a check. It takes the focus, so that the next card is heard of.
pub(super) const LEAD: &str = "check-card";
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
        page::focus(LEAD);
        let interval = Interval::new(EVERY_MS, move || ticks.force_update());
        move || drop(interval)
    });
    let minutes = (props.before + watch.seconds()) / MINUTE_SECONDS;
    html! { <span class="elapsed">{ shop.say_with("check.elapsed", &[("n", minutes.to_string())]) }</span> }
}
