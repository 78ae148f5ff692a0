//! How far a person would go on the answer: three steps, each with the chance of being right that it stands for.

use super::{Picture, icon};
use crate::app::state::Shop;
use crate::record::Certainty;
use crate::rules::term::Term;
use yew::prelude::*;

/// Id of the field, which takes the focus where it is what an answer wants still.
pub(in crate::app) const CERTAINTY: &str = "certainty";

pub(in crate::app) fn certainty_field(
    shop: &Shop,
    now: Option<Certainty>,
    on_pick: &Callback<Certainty>,
) -> Html {
    let step = |certainty: &Certainty| {
        let certainty = *certainty;
        let picked = now == Some(certainty);
        let onchange = on_pick.reform(move |_: Event| certainty);
        let key = format!("card.certainty.{}", certainty.slug());
        html! {
            <label key={certainty.slug()} class={classes!("step", picked.then_some("picked"))}>
                <input type="radio" name="certainty" checked={picked} {onchange} />
                <span class="step-name">{ icon(Picture::Tick) }{ shop.say(&key) }</span>
                <span class="step-odds">{ shop.say(&format!("{key}.odds")) }</span>
            </label>
        }
    };
    html! {
        <fieldset key="certainty" id={CERTAINTY} tabindex="-1" class="certainty">
            <legend>{ shop.say("card.certainty") }</legend>
            <div class="steps">{ for Certainty::ALL.iter().map(step) }</div>
        </fieldset>
    }
}
