//! A mistake being named: what is wrong with the decision that is looked at, and the rule that it broke.

use crate::app::parts::{Picture, icon};
use crate::app::state::use_shop;
use crate::rules::term::Term;
use crate::rules::verdict::RuleId;
use crate::walk::kinds::MistakeKind;
use wasm_bindgen::JsCast;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct NamingProps {
    /// The place of the decision that is looked at; none at the beginning.
    pub(super) at: Option<usize>,
    /// Told which decision broke which rule.
    pub(super) add: Callback<(usize, String)>,
}

#[component]
pub(super) fn Naming(props: &NamingProps) -> Html {
    let shop = use_shop();
    let rule = use_state(String::new);
    let kind = use_state(|| None::<MistakeKind>);
    let on_rule = {
        let rule = rule.setter();
        move |event: Event| {
            let list = event.target().and_then(|target| target.dyn_into::<HtmlSelectElement>().ok());
            rule.set(list.map(|list| list.value()).unwrap_or_default());
        }
    };
    let named = props.at.filter(|_| !rule.is_empty()).map(|at| (at, (*rule).clone()));
    let ready = named.is_some();
    let add = {
        let add = props.add.clone();
        move |_: MouseEvent| named.iter().for_each(|one| add.emit(one.clone()))
    };
    let of_kind = |one: &MistakeKind| {
        let (set, rule, one) = (kind.setter(), rule.setter(), *one);
        let picked = *kind == Some(one);
        let onchange = move |_: Event| {
            set.set(Some(one));
            rule.set(String::new());
        };
        html! {
            <label key={one.slug()} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name="walk-kind" value={one.slug()} checked={picked} {onchange} />{ icon(Picture::Tick) }<span>{ shop.say(&format!("walk.mistake.{}", one.slug())) }</span>
            </label>
        }
    };
    let rules = kind.map(MistakeKind::rules).unwrap_or_default();
    let option = |one: &RuleId| {
        let id = one.0;
        html! { <option key={id} value={id} selected={*rule == id}>{ shop.text(&format!("rule.{id}")) }</option> }
    };
    html! {
        <section key="name" class="walk-name">
            <h2>{ shop.say("walk.name-it") }</h2>
            <fieldset key="kind" class="walk-choice"><legend>{ shop.say("walk.which-kind") }</legend>{ for MistakeKind::ALL.iter().map(of_kind) }</fieldset>
            <div key="rule" class="field" hidden={kind.is_none()}>
                <label for="walk-rule">{ shop.say("walk.which-rule") }</label>
                <select id="walk-rule" onchange={on_rule}>
                    <option value="" selected={rule.is_empty()}>{ shop.say("walk.pick-rule") }</option>
                    { for rules.iter().map(option) }
                </select>
            </div>
            <button type="button" class={classes!("control", (!ready).then_some("not-yet"))} onclick={add}>{ shop.say(if ready { "walk.name-add" } else { "walk.name-first" }) }</button>
        </section>
    }
}
