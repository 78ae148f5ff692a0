//! What happens to the work, moment by moment.

use super::cut::cut;
use crate::app::state::Shop;
use crate::content::Consequence;
use crate::quantity::{Measure, Unit};
use yew::prelude::*;

/// From so many hours on a time is told in days.
const DAYS_FROM_H: f64 = 48.0;

pub(super) fn moments(shop: &Shop, after: &Consequence) -> Html {
    let time = |hours: f64| {
        let measure = Measure::new(hours, Unit::Hour, 0);
        let measure = if hours < DAYS_FROM_H { measure } else { measure.in_unit(Unit::Day) };
        shop.voice().measure(Measure { decimals: u8::from(measure.value.fract() > 0.0), ..measure })
    };
    let work = shop.say_with("verdict.rework", &[("hours", time(after.rework_h))]);
    let waiting = if after.rework_h > 0.0 { "verdict.and-waiting" } else { "verdict.waiting" };
    let wait = shop.say_with(waiting, &[("hours", time(after.wait_h))]);
    let free = after.rework_h <= 0.0 && after.wait_h <= 0.0;
    let moment = |name: &'static str, cost: bool| {
        html! {
            <li key={name} class={name}>
                <h3 key="name">{ shop.say(&format!("verdict.{name}")) }</h3>
                <p key="cost" class="cost" hidden={free || !cost}>
                    <strong>
                        <span hidden={after.rework_h <= 0.0}>{ &work }{ " " }</span>
                        <span hidden={after.wait_h <= 0.0}>{ &wait }</span>
                    </strong>
                </p>
                <p key="words">{ shop.text(&format!("after.{}.{name}", after.id)) }</p>
            </li>
        }
    };
    html! {
        <section key="moments" class="after">
            <h2>{ shop.say("verdict.after") }</h2>
            <div class="after-place">
                { cut(shop, &after.fault) }
                <ol class="moments">
                { moment("now", false) }
                { moment("later", false) }
                { moment("fix", true) }
                </ol>
            </div>
            <p class="note" hidden={free}>{ shop.say("verdict.estimate") }</p>
        </section>
    }
}
