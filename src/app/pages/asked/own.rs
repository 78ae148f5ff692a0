//! Criteria of the shop's own: listed, added, taken away.

use crate::app::parts::{Field, Picture, icon, typed_into};
use crate::app::state::use_shop;
use crate::content::{OWN_CRITERIA_MOST, OWN_CRITERION_MOST, OwnCriterion};
use crate::record::plain;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct OwnProps {
    pub(super) criteria: Vec<OwnCriterion>,
    pub(super) on_change: Callback<Vec<OwnCriterion>>,
}

#[component]
pub(super) fn Own(props: &OwnProps) -> Html {
    let shop = use_shop();
    let typed = use_state(String::new);
    let critical = use_state(|| false);
    let wrong = use_state(AttrValue::default);
    let add = {
        let (typed, critical, wrong, shop) = (typed.clone(), critical.clone(), wrong.clone(), shop.clone());
        let (criteria, on_change) = (props.criteria.clone(), props.on_change.clone());
        Callback::from(move |_: MouseEvent| {
            let text = plain(&typed);
            let length = text.chars().count();
            let limits = [("most", OWN_CRITERION_MOST.to_string()), ("all", OWN_CRITERIA_MOST.to_string())];
            let twice = criteria.iter().any(|one| one.text == text);
            if !(1..=OWN_CRITERION_MOST).contains(&length) || criteria.len() >= OWN_CRITERIA_MOST || twice {
                return wrong.set(shop.say_with("asked.criterion-unfit", &limits));
            }
            let mut criteria = criteria.clone();
            criteria.push(OwnCriterion { text, critical: *critical });
            on_change.emit(criteria);
            wrong.set(AttrValue::default());
            typed.set(String::new());
            critical.set(false);
        })
    };
    let row = |(place, one): (usize, &OwnCriterion)| {
        let take_away = {
            let (criteria, on_change) = (props.criteria.clone(), props.on_change.clone());
            Callback::from(move |_: MouseEvent| {
                let mut criteria = criteria.clone();
                criteria.remove(place);
                on_change.emit(criteria);
            })
        };
        let mark = if one.critical { shop.say("asked.critical") } else { AttrValue::default() };
        html! {
            <li key={one.text.clone()}>
                <span class="words"><span>{ &one.text }</span><span class="note">{ mark }</span></span>
                <button type="button" class="control square" onclick={take_away}>
                    { icon(Picture::Cross) }<span class="spoken">{ shop.say_with("asked.take-away", &[("text", one.text.clone())]) }</span>
                </button>
            </li>
        }
    };
    let on_critical = {
        let critical = critical.clone();
        Callback::from(move |_: Event| critical.set(!*critical))
    };
    html! {
        <section class="form">
            <h3>{ shop.say("asked.own") }</h3>
            <ul class="rows">{ for props.criteria.iter().enumerate().map(row) }</ul>
            <Field id="own-criterion" label={shop.say("asked.own-new")} hint={shop.say("asked.own-hint")} value={(*typed).clone()} on_input={typed_into(&typed)} wrong={(*wrong).clone()} />
            <label class={classes!("unit", critical.then_some("picked"))}>
                <input type="checkbox" checked={*critical} onchange={on_critical} /><span>{ shop.say("asked.own-critical") }</span>
            </label>
            <button type="button" class="control" onclick={add}>{ shop.say("asked.own-add") }</button>
        </section>
    }
}
