//! Hours against the shortest schedule of the same job in the same room: as bars, and as a table.

use crate::app::pages::walk::words;
use crate::app::state::Shop;
use crate::walk::report::{Report, Spent};
use yew::prelude::*;

/// Width of all of it, of the names before the bars, and of the longest bar.
const WIDE: f64 = 640.0;
const NAMES: f64 = 96.0;
const BARS: f64 = 540.0;
const HIGH: f64 = 30.0;
const APART: f64 = 46.0;

pub(super) fn hours(shop: &Shop, report: &Report) -> Html {
    let rows: Vec<(&str, Spent)> =
        [Some(("yours", report.spent)), report.shortest.map(|spent| ("shortest", spent))]
            .into_iter()
            .flatten()
            .collect();
    let longest = rows.iter().map(|(_, spent)| spent.total_h).fold(1.0, f64::max);
    let bar = |(nth, (key, spent)): (u8, &(&str, Spent))| {
        let (bench, wait) = (spent.bench_h / longest * BARS, spent.waiting_h() / longest * BARS);
        let y = f64::from(nth) * APART;
        html! {
            <g key={(*key).to_owned()}>
                <text x="0" y={(y + HIGH * 0.7).to_string()}>{ shop.say(&format!("walk.hours.{key}")) }</text>
                <rect class="bench" x={NAMES.to_string()} y={y.to_string()} width={format!("{bench:.1}")} height={HIGH.to_string()} />
                <rect class="wait" x={format!("{:.1}", NAMES + bench)} y={y.to_string()} width={format!("{wait:.1}")} height={HIGH.to_string()} />
            </g>
        }
    };
    let row = |(key, spent): &(&str, Spent)| {
        html! {
            <tr key={(*key).to_owned()}>
                <th scope="row">{ shop.say(&format!("walk.hours.{key}")) }</th>
                <td>{ words::hours(shop, spent.bench_h) }</td><td>{ words::hours(shop, spent.waiting_h()) }</td>
                <td>{ words::hours(shop, spent.total_h) }</td><td>{ spent.day }</td>
            </tr>
        }
    };
    let height = APART * f64::from(u8::try_from(rows.len()).unwrap_or(u8::MAX));
    let lost = [("hours", words::hours(shop, report.lost_work_h()))];
    let over = report.days_over().filter(|_| report.spent.bench_h > 0.0);
    let days = [("n", over.unwrap_or_default().to_string())];
    html! {
        <section key="hours" class="walk-hours">
            <h2>{ shop.say("walk.hours") }</h2>
            <svg viewBox={format!("0 0 {WIDE} {height}")} aria-hidden="true" focusable="false">{ for (0_u8..).zip(&rows).map(bar) }</svg>
            <p class="note walk-key"><span class="bench">{ shop.say("walk.hours.bench") }</span><span class="wait">{ shop.say("walk.hours.wait") }</span></p>
            <table class="working">
                <thead><tr><td></td>{ for ["bench", "wait", "total", "day"].map(|key| html! { <th key={key} scope="col">{ shop.say(&format!("walk.hours.{key}")) }</th> }) }</tr></thead>
                <tbody>{ for rows.iter().map(row) }</tbody>
            </table>
            <p class="note" hidden={over.is_none()}>{ shop.say_with("walk.hours.over", &days) }</p>
            <p class="note" hidden={report.lost_work_h() <= 0.0}>{ shop.say_with("walk.hours.lost", &lost) }</p>
        </section>
    }
}
