//! How a walk can be walked, to be picked.

use crate::app::parts::{Picture, icon};
use crate::app::state::Shop;
use crate::rules::term::Term;
use crate::walk::Mode;
use yew::prelude::*;

/// The ways that are offered.
const WAYS: [Mode; 3] = [Mode::Guided, Mode::Own, Mode::Inspect];

pub(super) fn ways(shop: &Shop, mode: &UseStateHandle<Mode>) -> Html {
    let way = |one: &Mode| {
        let (set, one) = (mode.setter(), *one);
        let picked = **mode == one;
        let onchange = move |_: Event| set.set(one);
        html! {
            <label key={one.slug()} class={classes!("choice", "walk-way", picked.then_some("picked"))}>
                <input type="radio" name="way" checked={picked} {onchange} />
                <span class="letter" aria-hidden="true">{ icon(Picture::Tick) }</span>
                <span class="words"><b>{ shop.text(&format!("walk.mode.{}", one.slug())) }</b><span class="note">{ shop.say(&format!("walk.way.{}", one.slug())) }</span></span>
            </label>
        }
    };
    html! {
        <section key="way">
            <h2 id="way-name">{ shop.say("walk.how") }</h2>
            <div class="choices" role="radiogroup" aria-labelledby="way-name">{ for WAYS.iter().map(way) }</div>
        </section>
    }
}
