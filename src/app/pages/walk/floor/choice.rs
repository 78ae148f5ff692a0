//! A choice of an operation, as rows; nothing is chosen to begin with.

use super::{Ground, guide};
use crate::app::parts::{Picture, icon};
use crate::content::Choice;
use yew::prelude::*;

pub(super) fn id(key: &str) -> String {
    format!("walk-choice-{key}")
}

pub(super) fn choice(ground: &Ground<'_>, choice: &Choice) -> Html {
    let Ground { shop, hand, .. } = ground;
    let now = hand.values.picks.get(&choice.key);
    let option = |pick: &crate::content::Pick| {
        let picked = now == Some(&pick.slug);
        let (key, slug) = (choice.key.clone(), pick.slug.clone());
        let onchange = ground.on(move |hand, _: Event| {
            hand.values.picks.insert(key.clone(), slug.clone());
        });
        html! {
            <label key={pick.slug.clone()} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name={id(&choice.key)} value={pick.slug.clone()} checked={picked} {onchange} />
                { icon(Picture::Tick) }<span>{ shop.text(&format!("walk.pick.{}.{}", choice.key, pick.slug)) }<small>{ guide::of_pick(ground, &choice.key, &pick.slug) }</small></span>
            </label>
        }
    };
    html! {
        <fieldset key={choice.key.clone()} class="walk-choice" id={id(&choice.key)} tabindex="-1">
            <legend>{ shop.text(&format!("walk.choice.{}", choice.key)) }</legend>
            { for choice.options.iter().map(option) }
        </fieldset>
    }
}
