//! Answers over days: bars that are read, and the same as a table.

use crate::app::state::Shop;
use crate::device::clock;
use crate::exchange::crew::DayCount;
use yew::prelude::*;

/// Days that are drawn, the latest ones: more bars cannot be told apart on a phone.
const DAYS: usize = 30;
/// Width and height of the bars in the units of the drawing.
const WIDE: u32 = 600;
const HIGH: u32 = 160;
/// Share of its place that a bar takes, in hundredths.
const BAR: u32 = 72;
const HUNDRED: u32 = 100;
/// Room above the highest bar for its edge.
const EDGE: u32 = 2;
/// The widest place of a bar: a single day is no wall.
const PLACE_MOST: u32 = 60;

pub(super) fn day_chart(shop: &Shop, all: &[DayCount]) -> Html {
    let days = all.get(all.len().saturating_sub(DAYS)..).unwrap_or_default();
    let most = days.iter().map(|day| day.all()).max().unwrap_or(1).max(1);
    let count = u32::try_from(days.len()).unwrap_or(1).max(1);
    let place = (WIDE / count).min(PLACE_MOST);
    let wide = count * place;
    let bar = |(nth, day): (u32, &DayCount)| bar(nth * place, place * BAR / HUNDRED, most, *day);
    let row = |day: &DayCount| {
        html! {
            <tr key={day.day.to_string()}><th scope="row">{ clock::local_day(day.day) }</th><td>{ day.right }</td><td>{ day.wrong }</td><td>{ day.sure_and_wrong }</td></tr>
        }
    };
    let kinds = ["right", "wrong", "sure"];
    let head = |kind: &&'static str| html! { <th key={*kind} scope="col">{ shop.say(&format!("crew.days.{kind}")) }</th> };
    let legend = |kind: &&'static str| {
        html! {
            <li key={*kind}><svg viewBox="0 0 24 24" class="day-chart chart-key" aria-hidden="true" focusable="false"><rect class={*kind} x="2" y="2" width="20" height="20" />{ stripes(kind, 2, 2, 20, 20) }</svg>{ shop.say(&format!("crew.days.{kind}")) }</li>
        }
    };
    let ends =
        days.first().zip(days.last()).map(|(first, last)| [first, last].map(|day| clock::local_day(day.day)));
    let [first, last] = ends.unwrap_or_default();
    let last = if days.len() > 1 { last } else { String::new() };
    let named = [("first", first.clone()), ("last", last.clone()), ("most", most.to_string())];
    html! {
        <section key="days" class="days" hidden={days.is_empty()}>
            <h2>{ shop.say("crew.days") }</h2>
            <ul key="legend" class="legend">{ for kinds.iter().map(legend) }</ul>
            <p key="scale" class="note">{ shop.say_with("crew.days.scale", &named) }</p>
            <div key="chart" class="day-chart-box">
                <svg class="day-chart" width={wide.to_string()} viewBox={format!("0 0 {wide} {HIGH}")} role="img" aria-label={shop.say_with("crew.days.told", &named)}>
                    { for (0..).zip(days).map(bar) }
                    <path class="axis" d={format!("M0 {HIGH}H{wide}")} />
                </svg>
                <p class="ends"><span>{ first }</span><span>{ last }</span></p>
            </div>
            <details key="table" class="seen"><summary>{ shop.say("crew.as-table") }</summary>
                <div class="paper"><table class="working counts"><thead><tr><th scope="col">{ shop.say("crew.days.day") }</th>{ for kinds.iter().map(head) }</tr></thead><tbody>{ for days.iter().rev().map(row) }</tbody></table></div>
            </details>
        </section>
    }
}

/// The bar of a day from below: right, wrong, sure and wrong.
fn bar(x: u32, wide: u32, most: u32, day: DayCount) -> Html {
    let mut below = HIGH;
    let parts = [("right", day.right), ("wrong", day.wrong), ("sure", day.sure_and_wrong)].map(|(kind, count)| {
        let high = (HIGH - EDGE) * count / most;
        below = below.saturating_sub(high);
        html! {
            <g key={kind}><rect class={kind} x={x.to_string()} y={below.to_string()} width={wide.to_string()} height={high.to_string()} />{ stripes(kind, x, below, wide, high) }</g>
        }
    });
    html! { <g key={day.day.to_string()}>{ for parts }</g> }
}

/// Wrong answers are striped, so that no colour is needed to tell them apart.
fn stripes(kind: &str, x: u32, y: u32, wide: u32, high: u32) -> Html {
    /// Units between two stripes.
    const EACH: usize = 5;
    if kind != "wrong" {
        return Html::default();
    }
    let lines: String =
        (y..y + high).step_by(EACH).map(|at| format!("M{x} {at}h{wide}")).collect::<Vec<_>>().join("");
    html! { <path class="stripes" d={lines} /> }
}
