//! A shaded edge: the colour difference by zone, the fade of both sides beside its target, bands once round the edge.

use super::lines::{Axis, Line, lines};
use crate::app::pages::spray::words;
use crate::app::state::Shop;
use crate::rules::term::Term;
use crate::spraying::Outcome;
use crate::spraying::reading::ShadeRead;
use crate::spraying::reading::shade::{Ring, ZoneRead};
use yew::prelude::*;

/// Lightness that a chart leaves free over and under its lines.
const ROOM: f64 = 4.0;
/// A whole turn, and the quarters at which a chart of it has words.
const TURN: f64 = 1.0;
const QUARTERS: [(f64, &str); 5] =
    [(0.0, "top"), (0.25, "right"), (0.5, "bottom"), (0.75, "left"), (1.0, "top")];

pub(super) fn shade(shop: &Shop, run: &Outcome) -> Html {
    let Some(shade) = &run.reading.shade else { return Html::default() };
    let row = |read: &ZoneRead| {
        html! {
            <tr key={read.zone.slug()}>
                <th scope="row">{ shop.say(&format!("spray.{}", read.zone.slug())) }</th>
                <td>{ words::colour(shop, read.lightness) }</td><td>{ words::colour(shop, read.wanted) }</td><td>{ words::colour(shop, read.difference) }</td>
            </tr>
        }
    };
    let head = ["zone", "lightness", "wanted", "difference"];
    let named =
        [("sides", words::colour(shop, shade.sides)), ("banding", words::colour(shop, shade.banding))];
    html! {
        <>
            <section key="shade" class="paper spray-table" tabindex="0" aria-label={shop.say("spray.shade")}>
                <h2>{ shop.say("spray.shade") }</h2>
                <table class="working">
                    <thead><tr>{ for head.map(|key| html! { <th key={key} scope="col">{ shop.say(&format!("spray.shade.{key}")) }</th> }) }</tr></thead>
                    <tbody>{ for shade.zones.iter().map(row) }</tbody>
                </table>
                <p>{ shop.say_with("spray.shade.alike", &named) }</p>
            </section>
            <section key="shade-charts" class="spray-strokes">
                <div class="spray-pair">{ fade(shop, shade) }{ round(shop, shade) }</div>
                <p class="note spray-key">
                    <span class="wanted">{ shop.say("spray.shade.line-wanted") }</span>
                    <span class="left">{ shop.say("spray.shade.line-left") }</span>
                    <span class="right">{ shop.say("spray.shade.line-right") }</span>
                </p>
            </section>
        </>
    }
}

/// An axis of lightness that holds all lines.
fn lightness(lines: &[Line]) -> Axis {
    let values = || lines.iter().flat_map(|line| line.places.iter().map(|(_, value)| *value));
    let (least, most) = (values().fold(f64::INFINITY, f64::min), values().fold(0.0, f64::max));
    let words = [least, most].map(|value| (value, words::lightness(value)));
    Axis { from: least - ROOM, to: most + ROOM, words: words.to_vec() }
}

/// Lightness from the edge inwards.
fn fade(shop: &Shop, shade: &ShadeRead) -> Html {
    let line = |class: &'static str, value: fn(&Ring) -> Option<f64>| Line {
        class,
        places: shade.rings.iter().filter_map(|ring| Some((ring.inwards, value(ring)?))).collect(),
    };
    let all = [
        line("wanted", |ring| Some(ring.wanted)),
        line("left", |ring| ring.left),
        line("right", |ring| ring.right),
    ];
    let to = shade.rings.last().map_or(0.0, |ring| ring.inwards);
    let words = [0.0, to / 2.0, to].map(|at| (at, words::length(shop, at)));
    let across = Axis { from: 0.0, to, words: words.to_vec() };
    lines(&shop.say("spray.shade.fade"), &across, &lightness(&all), &all)
}

/// Lightness of the edge once round.
fn round(shop: &Shop, shade: &ShadeRead) -> Html {
    let mut places = Vec::new();
    let mut at = 0.0;
    let step = TURN / shade.round.iter().map(|_| 1.0).sum::<f64>().max(1.0);
    for value in &shade.round {
        places.extend(value.map(|value| (at + step / 2.0, value)));
        at += step;
    }
    let all = [
        Line { class: "wanted", places: vec![(0.0, shade.edge), (TURN, shade.edge)] },
        Line { class: "left", places },
    ];
    let words = QUARTERS.map(|(at, key)| (at, shop.say(&format!("spray.shade.{key}")).to_string()));
    let across = Axis { from: 0.0, to: TURN, words: words.to_vec() };
    lines(&shop.say("spray.shade.round"), &across, &lightness(&all), &all)
}
