//! A cut through the film of a part: what lies on it from the wood up, to scale in height and with its figures in words.

use super::words::micrometres;
use crate::app::state::Shop;
use crate::process::lying::Lying;
use crate::walk::names::Operation;
use yew::prelude::*;

/// Size of the drawing, and where the wood begins.
const WIDTH: f64 = 240.0;
const WOOD_AT: f64 = 96.0;
const HEIGHT: f64 = 120.0;
/// Height of a micrometre, unless the film would leave the drawing: then all of it takes `MOST`.
const A_MICROMETRE: f64 = 0.42;
const MOST: f64 = 88.0;

/// A layer of the film: its name, the operations that lay it.
const FILM: [(&str, &[Operation]); 3] = [
    ("seal", &[Operation::Washcoat, Operation::Seal]),
    ("colour", &[Operation::Colour, Operation::Shade]),
    ("clear", &[Operation::Protect, Operation::Clear]),
];

/// Micrometres of a layer of the film, and its coats.
fn film(lying: &Lying, name: &str, of: &[Operation]) -> (f64, u32) {
    let laid = lying.laid.iter().filter(|laid| of.contains(&laid.operation));
    let (um, coats) = laid.fold((0.0, 0), |(um, coats), laid| (um + laid.dry.get(), coats + laid.coats));
    // What levelling took is gone from the clear.
    (if name == "clear" { lying.clear.get() } else { um }, coats)
}

/// `part` is what the part is called.
pub(super) fn cut(shop: &Shop, part: &AttrValue, lying: &Lying) -> Html {
    let films: Vec<(&str, f64, u32)> = FILM
        .iter()
        .map(|(name, of)| (*name, film(lying, name, of)))
        .map(|(name, (um, coats))| (name, um, coats))
        .collect();
    let total: f64 = films.iter().map(|(_, um, _)| um).sum();
    let scale = if total * A_MICROMETRE > MOST { MOST / total } else { A_MICROMETRE };
    let mut top = WOOD_AT;
    let bands = films.iter().filter(|(_, um, _)| *um > 0.0).map(|(name, um, _)| {
        let height = um * scale;
        top -= height;
        html! { <rect key={*name} class={*name} x="0" y={format!("{top:.1}")} width={WIDTH.to_string()} height={format!("{height:.1}")} /> }
    });
    let bands: Vec<Html> = bands.collect();
    let (stained, filled) = (lying.last(Operation::Stain).is_some(), lying.last(Operation::Fill).is_some());
    let mut told: Vec<AttrValue> = Vec::new();
    told.extend(stained.then(|| shop.say("walk.cut.stain")));
    told.extend(filled.then(|| shop.say("walk.cut.filler")));
    told.extend(films.iter().filter(|(_, um, _)| *um > 0.0).map(|(name, um, coats)| {
        let named = [("um", micrometres(shop, *um)), ("n", coats.to_string())];
        shop.say_with(&format!("walk.cut.{name}"), &named)
    }));
    if told.is_empty() {
        told.push(shop.say("walk.cut.bare"));
    }
    let named = [("part", part.to_string()), ("um", micrometres(shop, total))];
    let pores = if filled { "pores filled" } else { "pores" };
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
