//! The film map of the run, beside that of a good one: the strokes over it, figures where it stands out, its scale.

use super::replayed::Replayed;
use crate::app::pages::spray::words;
use crate::app::parts::{FilmMap, FilmScale, Marks};
use crate::app::state::Shop;
use crate::quantity::{Measure, Unit};
use crate::rules::term::Term;
use crate::spraying::Outcome;
use crate::spraying::Path;
use crate::spraying::reading::Place;
use std::rc::Rc;
use yew::prelude::*;

/// Most figures on a map: more would cover it.
const FIGURES: usize = 6;
/// Size of the box of a figure, mm of a face 500 mm wide, and where its text stands in it.
const BOX: (f64, f64) = (46.0, 26.0);
const TEXT: f64 = 20.0;
const OF_WIDTH: f64 = 500.0;
/// Width of the drawing of the scale, of its strip, and heights of marks and words.
const WIDE: f64 = 480.0;

pub(super) fn maps(shop: &Shop, run: &Rc<Outcome>, good: Option<&Rc<Outcome>>) -> Html {
    let beside = match good {
        Some(good) => html! {
            <figure key="good">
                <figcaption>{ shop.say("spray.map.good") }</figcaption>
                <FilmMap key="map" sprayer={Rc::clone(&good.sprayer)} alt={alt(shop, good)}>{ strokes(&good.path, "ghost") }</FilmMap>
            </figure>
        },
        None => Html::default(),
    };
    html! {
        <section key="maps" class="spray-maps">
            <h2>{ shop.say("spray.map") }</h2>
            <div class="spray-pair">
                <figure key="own">
                    <figcaption>{ shop.say("spray.map.own") }</figcaption>
                    <Replayed key="map" run={Rc::clone(run)} good={good.cloned()} alt={alt(shop, run)}>
                        { good.map(|good| strokes(&good.path, "ghost")).unwrap_or_default() }
                        { strokes(&run.path, "own") }
                        { for run.reading.places.iter().take(FIGURES).enumerate().map(|(nth, place)| figure(run, nth, place)) }
                    </Replayed>
                </figure>
                { beside }
            </div>
            { scale(shop, run) }
            <p class="note spray-key"><span class="own">{ shop.say("spray.map.line-own") }</span><span class="ghost">{ shop.say("spray.map.line-good") }</span></p>
            { places(shop, run) }
        </section>
    }
}

/// What a map shows, in words.
fn alt(shop: &Shop, run: &Outcome) -> AttrValue {
    let film = &run.reading.film;
    let named = [
        ("mean", words::film(shop, film.mean)),
        ("least", words::film(shop, film.least)),
        ("most", words::film(shop, film.most)),
    ];
    shop.say_with("spray.map.told", &named)
}

/// The lines along which a gun sprayed.
fn strokes(path: &Path, class: &'static str) -> Html {
    let mut line = String::new();
    let mut on = false;
    for point in path.points() {
        if on || point.trigger > 0.0 {
            let step = if on { 'L' } else { 'M' };
            line.push_str(&format!("{step}{:.1} {:.1}", point.x, point.y));
        }
        on = point.trigger > 0.0;
    }
    html! { <><path class="spray-line under" d={line.clone()} /><path class={classes!("spray-line", class)} d={line} /></> }
}

/// The mean film of a place that stands out.
fn figure(run: &Outcome, nth: usize, place: &Place) -> Html {
    let grid = run.sprayer.film().grid();
    let (least, most) = (grid.across(0), grid.across(grid.columns));
    let scale = (most - least) / OF_WIDTH;
    let x = place.x.clamp(least + BOX.0 / 2.0 * scale, most - BOX.0 / 2.0 * scale);
    html! {
        <g key={format!("{}-{nth}", place.kind.slug())} class="spray-figure" transform={format!("translate({x:.1} {:.1}) scale({scale:.3})", place.y)}>
            <rect x={(-BOX.0 / 2.0).to_string()} y={(-BOX.1 / 2.0).to_string()} width={BOX.0.to_string()} height={BOX.1.to_string()} />
            <text y={(TEXT / 2.0 - 3.0).to_string()}>{ Measure::new(place.film, Unit::Micrometre, 0).figure() }</text>
        </g>
    }
}

/// The scale with its limits.
fn scale(shop: &Shop, run: &Outcome) -> Html {
    let marks = Marks::of(run.setup());
    let tick = |(nth, line): (usize, &f64)| {
        let x = line / marks.end * WIDE;
        html! { <g key={nth}><path d={format!("M{x:.1} 0V10")} /><text x={format!("{x:.1}")} y="28">{ words::film(shop, *line) }</text></g> }
    };
    let lines: Vec<f64> = core::iter::once(0.0).chain(marks.lines.iter().copied()).collect();
    let key = if run.setup().window().is_some() { "spray.map.scale-window" } else { "spray.map.scale" };
    html! {
        <div key="scale" class="spray-scale">
            <FilmScale key="strip" marks={marks.clone()} />
            <svg key="ticks" viewBox={format!("-4 0 {} 34", WIDE + 8.0)} aria-hidden="true" focusable="false">{ for lines.iter().enumerate().map(tick) }</svg>
            <p class="note">{ shop.say(key) }</p>
        </div>
    }
}

/// The places that stand out, as a table.
fn places(shop: &Shop, run: &Outcome) -> Html {
    let places = &run.reading.places;
    let row = |(nth, place): (usize, &Place)| {
        html! {
            <tr key={nth}>
                <th scope="row">{ shop.say(&format!("spray.{}", place.kind.slug())) }</th>
                <td>{ words::film(shop, place.film) }</td><td>{ words::area(shop, place.area) }</td>
                <td>{ words::length(shop, place.x) }</td><td>{ words::length(shop, place.y) }</td>
            </tr>
        }
    };
    let head = ["place", "place-film", "place-area", "place-x", "place-y"];
    html! {
        <details key="places" class="seen" hidden={places.is_empty()}><summary>{ shop.say("spray.map.places") }</summary>
            <div class="paper spray-table" tabindex="0" role="region" aria-label={shop.say("spray.map.places")}><table class="working"><thead><tr>{ for head.map(|key| html! { <th key={key} scope="col">{ shop.say(&format!("spray.map.{key}")) }</th> }) }</tr></thead>
            <tbody>{ for places.iter().enumerate().map(row) }</tbody></table></div>
        </details>
    }
}
