//! What happens to the work, moment by moment.

use crate::app::state::use_shop;
use crate::content::Consequence;
use crate::quantity::{Measure, Unit};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct MomentsProps {
    pub(super) after: Consequence,
}

#[component]
pub(super) fn Moments(props: &MomentsProps) -> Html {
    let shop = use_shop();
    let after = &props.after;
    let hours =
        |hours: f64| shop.voice().measure(Measure::new(hours, Unit::Hour, u8::from(hours.fract() > 0.0)));
    let moment = |name: &'static str| {
        html! {
            <li key={name} class={name}>
                <h3>{ shop.say(&format!("verdict.{name}")) }</h3>
                <p>{ shop.text(&format!("after.{}.{name}", after.id)) }</p>
            </li>
        }
    };
    let work = shop.say_with("verdict.rework", &[("hours", hours(after.rework_h))]);
    let wait = shop.say_with("verdict.waiting", &[("hours", hours(after.wait_h))]);
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
