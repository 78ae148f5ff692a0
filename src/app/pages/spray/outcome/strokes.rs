//! How each stroke was made: speed and overlap over time, and all of it as a table.

use super::chart::{Bar, chart};
use crate::app::pages::spray::words;
use crate::app::state::Shop;
use crate::spraying::Outcome;
use crate::spraying::better::OVERLAPS;
use crate::spraying::good;
use crate::spraying::strokes::Stroke;
use yew::prelude::*;

/// Speeds within so much of those of a good run are drawn as wanted, as a share of them (as a speed is told to be off).
const NEAR: f64 = 0.1;

pub(super) fn strokes(shop: &Shop, run: &Outcome) -> Html {
    let strokes = &run.reading.strokes;
    let of = |value: fn(&Stroke) -> Option<f64>| -> Vec<Bar> {
        strokes.iter().map(|stroke| (stroke.to.t - stroke.from.t, value(stroke))).collect()
    };
    let overlaps = of(|stroke| stroke.overlap);
    let speeds = good::speeds(run.setup()).map(|good| {
        let wanted = (good.least * (1.0 - NEAR), good.most * (1.0 + NEAR));
        chart(&shop.say("spray.stroke.speeds"), &of(|stroke| Some(stroke.speed)), wanted, |value| {
            words::speed(shop, value)
        })
    });
    let overlapped = overlaps.iter().any(|(_, value)| value.is_some());
    let row = |(nth, stroke): (usize, &Stroke)| row(shop, nth, stroke);
    let head = ["nth", "at", "speed", "steady", "distance", "overlap", "lead", "lag", "stood"];
    html! {
        <section key="strokes" class="spray-strokes">
            <h2>{ shop.say("spray.strokes") }</h2>
            <div class="spray-pair">
                { speeds.unwrap_or_default() }
                { if overlapped { chart(&shop.say("spray.stroke.overlaps"), &overlaps, OVERLAPS, |value| words::share(shop, value)) } else { Html::default() } }
            </div>
            <p class="note">{ shop.say("spray.stroke.band") }</p>
            <details key="table" class="seen"><summary>{ shop.say("spray.stroke.table") }</summary>
                <div class="paper spray-table" tabindex="0" role="region" aria-label={shop.say("spray.stroke.table")}><table class="working"><thead><tr>{ for head.map(|key| html! { <th key={key} scope="col">{ shop.say(&format!("spray.stroke.{key}")) }</th> }) }</tr></thead>
                <tbody>{ for strokes.iter().enumerate().map(row) }</tbody></table></div>
            </details>
        </section>
    }
}

fn row(shop: &Shop, nth: usize, stroke: &Stroke) -> Html {
    let told = |value: Option<f64>, told: fn(&Shop, f64) -> String| {
        value.map_or_else(|| shop.say("spray.stroke.none").to_string(), |value| told(shop, value))
    };
    html! {
        <tr key={nth}>
            <th scope="row">{ nth + 1 }</th>
            <td>{ words::seconds(shop, stroke.from.t) }</td><td>{ words::speed(shop, stroke.speed) }</td>
            <td>{ words::share(shop, stroke.unsteady) }</td><td>{ words::length(shop, stroke.distance) }</td>
            <td>{ told(stroke.overlap, words::share) }</td><td>{ told(stroke.lead, words::length) }</td>
            <td>{ told(stroke.lag, words::length) }</td><td>{ words::seconds(shop, stroke.stood) }</td>
        </tr>
    }
}
