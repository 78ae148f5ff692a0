//! Hours against the shortest schedule of the same job in the same room: as bars, and as a table.

use crate::app::pages::walk::words;
use crate::app::state::Shop;
use crate::walk::report::{Report, Spent};
use yew::prelude::*;

/// Width of the longest bar, and height of each, in units of its own.
const WIDE: f64 = 540.0;
const HIGH: f64 = 30.0;

pub(super) fn hours(shop: &Shop, report: &Report) -> Html {
    let rows: Vec<(&str, Spent)> =
        [Some(("yours", report.spent)), report.shortest.map(|spent| ("shortest", spent))]
            .into_iter()
            .flatten()
            .collect();
    let longest = rows.iter().map(|(_, spent)| spent.total_h).fold(1.0, f64::max);
    let bar = |(key, spent): &(&str, Spent)| {
        let (bench, wait) = (spent.bench_h / longest * WIDE, spent.waiting_h() / longest * WIDE);
        html! {
            <div key={(*key).to_owned()} class="walk-bar">
                <span>{ shop.say(&format!("walk.hours.{key}")) }</span>
                <svg viewBox={format!("0 0 {WIDE} {HIGH}")} preserveAspectRatio="none" focusable="false">
                    <rect class="bench" x="0" y="0" width={format!("{bench:.1}")} height={HIGH.to_string()} />
                    <rect class="wait" x={format!("{bench:.1}")} y="0" width={format!("{wait:.1}")} height={HIGH.to_string()} />
                </svg>
            </div>
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
    let lost = [("hours", words::hours(shop, report.lost_work_h()))];
    let than = than_shortest(report).map(|(key, days)| shop.say_with(key, &[("n", days.to_string())]));
    html! {
        <section key="hours" class="walk-hours">
            <h2>{ shop.say("walk.hours") }</h2>
            <div class="walk-bars" aria-hidden="true">{ for rows.iter().map(bar) }</div>
            <p class="note walk-key"><span class="bench">{ shop.say("walk.hours.bench") }</span><span class="wait">{ shop.say("walk.hours.wait") }</span></p>
            <table class="working">
                <thead><tr><td></td>{ for ["bench", "wait", "total", "day"].map(|key| html! { <th key={key} scope="col">{ shop.say(&format!("walk.hours.{key}")) }</th> }) }</tr></thead>
                <tbody>{ for rows.iter().map(row) }</tbody>
            </table>
            <p class="note" hidden={than.is_none()}>{ than.clone().unwrap_or_default() }</p>
            <p class="note" hidden={report.lost_work_h() <= 0.0}>{ shop.say_with("walk.hours.lost", &lost) }</p>
        </section>
    }
}

/// How the day compares with that of the shortest schedule, and by how many days; nothing where nothing was worked, or where
/// a walk that goes on may still take longer.
fn than_shortest(report: &Report) -> Option<(&'static str, u32)> {
    let shortest = report.shortest.filter(|_| report.spent.bench_h > 0.0)?;
    match (report.days_over()?, shortest.day.saturating_sub(report.spent.day)) {
        (0, _) if report.in_time.is_none() => None,
        (0, 0) => Some(("walk.hours.as-short", 0)),
        (0, less) => Some(("walk.hours.less", less)),
        (over, _) => Some(("walk.hours.over", over)),
    }
}
