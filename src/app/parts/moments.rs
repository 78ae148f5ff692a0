//! What happens to the work, moment by moment.

use crate::app::state::use_shop;
use crate::content::Consequence;
use crate::quantity::{Measure, Unit};
use yew::prelude::*;

/// From so many hours on a time is told in days.
const DAYS_FROM_H: f64 = 48.0;

#[derive(Properties, PartialEq)]
pub(super) struct MomentsProps {
    pub(super) after: Consequence,
}

#[component]
pub(super) fn Moments(props: &MomentsProps) -> Html {
    let shop = use_shop();
    let after = &props.after;
    let time = |hours: f64| {
        let measure = Measure::new(hours, Unit::Hour, 0);
        let measure = if hours < DAYS_FROM_H { measure } else { measure.in_unit(Unit::Day) };
        shop.voice().measure(Measure { decimals: u8::from(measure.value.fract() > 0.0), ..measure })
    };
    let moment = |name: &'static str| {
        html! {
            <li key={name} class={name}>
                <h3>{ shop.say(&format!("verdict.{name}")) }</h3>
                <p>{ shop.text(&format!("after.{}.{name}", after.id)) }</p>
            </li>
        }
    };
    let work = shop.say_with("verdict.rework", &[("hours", time(after.rework_h))]);
    let wait = shop.say_with("verdict.waiting", &[("hours", time(after.wait_h))]);
    html! {
        <section class="after">
            <h2>{ shop.say("verdict.after") }</h2>
            <ol class="moments">
                { moment("now") }
                { moment("later") }
                { moment("fix") }
            </ol>
            <p class="cost" hidden={after.rework_h <= 0.0 && after.wait_h <= 0.0}>
                <strong>{ work }{ " " }<span hidden={after.wait_h <= 0.0}>{ wait }</span></strong>
                <small>{ shop.say("verdict.estimate") }</small>
            </p>
        </section>
    }
}
