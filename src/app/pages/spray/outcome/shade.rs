//! A shaded edge: the colour difference by zone, both sides beside each other, bands along the edge.

use crate::app::pages::spray::run::Run;
use crate::app::pages::spray::words;
use crate::app::state::Shop;
use crate::rules::term::Term;
use crate::spraying::reading::shade::ZoneRead;
use yew::prelude::*;

pub(super) fn shade(shop: &Shop, run: &Run) -> Html {
    let Some(shade) = &run.reading.shade else { return Html::default() };
    let row = |read: &ZoneRead| {
        html! {
            <tr key={read.zone.slug()}>
                <th scope="row">{ shop.say(&format!("spray.{}", read.zone.slug())) }</th>
                <td>{ words::colour(read.lightness) }</td><td>{ words::colour(read.wanted) }</td><td>{ words::colour(read.difference) }</td>
            </tr>
        }
    };
    let head = ["zone", "lightness", "wanted", "difference"];
    let named = [("sides", words::colour(shade.sides)), ("banding", words::colour(shade.banding))];
    html! {
        <section key="shade" class="paper spray-table" tabindex="0" aria-label={shop.say("spray.shade")}>
            <h2>{ shop.say("spray.shade") }</h2>
            <table class="working">
                <thead><tr>{ for head.map(|key| html! { <th key={key} scope="col">{ shop.say(&format!("spray.shade.{key}")) }</th> }) }</tr></thead>
                <tbody>{ for shade.zones.iter().map(row) }</tbody>
            </table>
            <p>{ shop.say_with("spray.shade.alike", &named) }</p>
        </section>
    }
}
