//! A cut through the film of a part: what lies on its wood, to scale in height and with its figures in words.

use super::words::{self, micrometres};
use crate::app::state::Shop;
use crate::process::lying::Lying;
use crate::rules::term::Term;
use crate::walk::Walk;
use crate::walk::cut::layers;
use crate::walk::names::Operation;
use yew::prelude::*;

/// Size of the drawing, and where the wood begins.
const WIDTH: f64 = 240.0;
const WOOD_AT: f64 = 96.0;
const HEIGHT: f64 = 120.0;
/// Height of a micrometre, unless the film would leave the drawing: then all of it takes `MOST`.
const A_MICROMETRE: f64 = 0.42;
const MOST: f64 = 88.0;

/// The cut through a part as it lies there.
pub(super) fn of_part(shop: &Shop, walk: &Walk, part: usize) -> Html {
    let name = words::part(shop, &walk.start().info, part);
    let open = walk.start().shows_pores(part);
    walk.part(part).map(|lying| cut(shop, &name, &lying, open)).unwrap_or_default()
}

/// `part` is what the part is called; `open` whether its wood shows pores.
fn cut(shop: &Shop, part: &AttrValue, lying: &Lying, open: bool) -> Html {
    let film = layers(lying);
    let total: f64 = film.iter().map(|layer| layer.um).sum();
    let scale = if total * A_MICROMETRE > MOST { MOST / total } else { A_MICROMETRE };
    let mut top = WOOD_AT;
    let bands = film.iter().enumerate().map(|(nth, layer)| {
        let height = layer.um * scale;
        top -= height;
        html! { <rect key={nth} class={layer.kind.slug()} x="0" y={format!("{top:.1}")} width={WIDTH.to_string()} height={format!("{height:.1}")} /> }
    });
    let bands: Vec<Html> = bands.collect();
    let (stained, filled) = (lying.last(Operation::Stain).is_some(), lying.last(Operation::Fill).is_some());
    let mut told: Vec<AttrValue> = Vec::new();
    told.extend(stained.then(|| shop.say("walk.cut.stain")));
    told.extend(filled.then(|| shop.say("walk.cut.filler")));
    told.extend(film.iter().map(|layer| {
        let named = [("um", micrometres(shop, layer.um)), ("n", layer.coats.to_string())];
        shop.say_with(&format!("walk.cut.{}", layer.kind.slug()), &named)
    }));
    // What lies uppermost is told first, as it is drawn.
    told.reverse();
    if told.is_empty() {
        told.push(shop.say("walk.cut.bare"));
    }
    let named = [("part", part.to_string()), ("um", micrometres(shop, total))];
    let pores = match (open, filled) {
        (false, _) => "none",
        (true, true) => "pores filled",
        (true, false) => "pores",
    };
    html! {
        <figure key="cut" class="walk-cut">
            <figcaption>{ shop.say_with("walk.cut.of", &named) }</figcaption>
            <svg viewBox={format!("0 0 {WIDTH} {HEIGHT}")} aria-hidden="true" focusable="false" preserveAspectRatio="none">
                <rect key="wood" class="wood" x="0" y={WOOD_AT.to_string()} width={WIDTH.to_string()} height={(HEIGHT - WOOD_AT).to_string()} />
                <rect key="stain" class={if stained { "stain" } else { "none" }} x="0" y={WOOD_AT.to_string()} width={WIDTH.to_string()} height="7" />
                <path key="pores" class={pores} d="M34 96h12q-1 11-6 14-5-3-6-14zM98 96h12q-1 11-6 14-5-3-6-14zM168 96h12q-1 11-6 14-5-3-6-14z" />
                <g key="film">{ for bands }</g>
                <path key="skin" class="skin" d={format!("M0 {top:.1}H{WIDTH}")} />
            </svg>
            <ul class="walk-layers">{ for told.into_iter().enumerate().map(|(nth, told)| html! { <li key={nth}>{ told }</li> }) }</ul>
        </figure>
    }
}
