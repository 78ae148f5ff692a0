//! How far a person would go on the answer: three steps, each with the chance of being right that it stands for.

use super::{Icon, Picture};
use crate::app::state::use_shop;
use crate::record::Certainty;
use crate::rules::term::Term;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct CertaintyProps {
    pub(in crate::app) picked: Option<Certainty>,
    pub(in crate::app) on_pick: Callback<Certainty>,
}

#[component]
pub(in crate::app) fn CertaintyField(props: &CertaintyProps) -> Html {
    let shop = use_shop();
    let step = |certainty: &Certainty| {
        let certainty = *certainty;
        let picked = props.picked == Some(certainty);
        let onchange = props.on_pick.reform(move |_: Event| certainty);
        let key = format!("card.certainty.{}", certainty.slug());
        html! {
            <label key={certainty.slug()} class={classes!("step", picked.then_some("picked"))}>
                <input type="radio" name="certainty" checked={picked} {onchange} />
                <span class="step-name"><Icon of={Picture::Tick} />{ shop.say(&key) }</span>
                <span class="step-odds">{ shop.say(&format!("{key}.odds")) }</span>
            </label>
        }
    };
    html! {
        <fieldset class="certainty">
            <legend>{ shop.say("card.certainty") }</legend>
            <div class="steps">{ for Certainty::ALL.iter().map(step) }</div>
        </fieldset>
    }
}
