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
/// What stands left of the bars and below them.
const LEFT: u32 = 44;
const BELOW: u32 = 24;
/// Share of its place that a bar takes, in hundredths.
const BAR: u32 = 72;
const HUNDRED: u32 = 100;
/// The widest place of a bar: a single day is no wall.
const PLACE_MOST: u32 = 60;

pub(super) fn day_chart(shop: &Shop, all: &[DayCount]) -> Html {
    let days = all.get(all.len().saturating_sub(DAYS)..).unwrap_or_default();
    let most = days.iter().map(|day| day.all()).max().unwrap_or(1).max(1);
    let count = u32::try_from(days.len()).unwrap_or(1).max(1);
    let place = (WIDE / count).min(PLACE_MOST);
    let bar = |(nth, day): (u32, &DayCount)| bar(LEFT + nth * place, place * BAR / HUNDRED, most, *day);
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
            <svg key="chart" class="day-chart" viewBox={format!("0 0 {} {}", LEFT + WIDE, HIGH + BELOW)} role="img" aria-label={shop.say_with("crew.days.told", &named)}>
                <path class="axis" d={format!("M{LEFT} 8V{HIGH}H{}", LEFT + WIDE)} />
                <text class="end" x={(LEFT - 6).to_string()} y="18">{ most }</text>
                <text class="end" x={(LEFT - 6).to_string()} y={HIGH.to_string()}>{ "0" }</text>
                { for (0..).zip(days).map(bar) }
                <text x={LEFT.to_string()} y={(HIGH + BELOW - 4).to_string()}>{ first }</text>
                <text class="end" x={(LEFT + WIDE).to_string()} y={(HIGH + BELOW - 4).to_string()}>{ last }</text>
            </svg>
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
        let high = (HIGH - 8) * count / most;
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
