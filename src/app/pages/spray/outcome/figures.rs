//! The figures of a run beside those of a good one.

use crate::app::pages::spray::words;
use crate::app::state::Shop;
use crate::spraying::Outcome;
use crate::spraying::Reading;
use yew::prelude::*;

/// A figure: its key and how it is told.
type Figure = (&'static str, fn(&Shop, &Reading) -> String);

/// Figures of every task.
const ALWAYS: [Figure; 8] = [
    ("mean", |shop, read| words::film(shop, read.film.mean)),
    ("dried", |shop, read| words::film(shop, read.film.dried)),
    ("spread", |shop, read| words::share(shop, read.film.cv)),
    ("least-most", |shop, read| {
        format!("{}, {}", words::film(shop, read.film.least), words::film(shop, read.film.most))
    }),
    ("ran", |shop, read| words::share(shop, read.film.ran)),
    ("dry", |shop, read| words::share(shop, read.film.dry)),
    ("paint", |shop, read| {
        format!("{}, {}", words::volume(shop, read.paint.sprayed), words::share(shop, read.paint.wasted()))
    }),
    ("time", |shop, read| words::seconds(shop, read.time)),
];
/// Figures of a task that asks for an even film.
const EVEN: [Figure; 2] = [
    ("in-window", |shop, read| words::share(shop, read.film.in_window)),
    ("thin-heavy", |shop, read| {
        format!("{}, {}", words::share(shop, read.film.thin), words::share(shop, read.film.heavy))
    }),
];

/// Figures of a repaired place.
const REPAIR: [Figure; 1] = [("strayed", |shop, read| words::share(shop, read.paint.strayed()))];

pub(super) fn figures(shop: &Shop, run: &Outcome, good: Option<&Outcome>) -> Html {
    let even: &[Figure] = if run.setup().task.film.is_some() { &EVEN } else { &[] };
    let repair: &[Figure] = if run.setup().task.repair.is_some() { &REPAIR } else { &[] };
    let row = |(key, told): &Figure| {
        html! {
            <tr key={*key}>
                <th scope="row">{ shop.say(&format!("spray.figure.{key}")) }</th>
                <td>{ told(shop, &run.reading) }</td>
                <td>{ good.map(|good| told(shop, &good.reading)).unwrap_or_default() }</td>
            </tr>
        }
    };
    html! {
        <section key="figures" class="paper spray-table" tabindex="0" aria-label={shop.say("spray.figures")}>
            <h2>{ shop.say("spray.figures") }</h2>
            <table class="working">
                <thead><tr><td></td><th scope="col">{ shop.say("spray.map.own") }</th><th scope="col">{ shop.say("spray.map.good") }</th></tr></thead>
                <tbody>{ for even.iter().chain(repair).chain(&ALWAYS).map(row) }</tbody>
            </table>
        </section>
    }
}
