//! Somebody else's walk: the decisions with a mistake in them are named, each with the rule that it broke, and graded.

mod graded;

pub(super) use graded::groups;

use super::scrub::Scrub;
use super::words;
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shared, use_shop};
use crate::rules::term::Term;
use crate::walk::Walk;
use crate::walk::inspect::{Inspected, inspect};
use crate::walk::kinds::MistakeKind;
use wasm_bindgen::JsCast;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct InspectProps {
    pub(super) walk: Shared<Walk>,
    /// Turns that were named, each with a rule.
    pub(super) named: Vec<(usize, String)>,
    /// Says that the last one is not stored.
    pub(super) strip: Html,
    /// Keeps what is named.
    pub(super) name: Callback<Vec<(usize, String)>>,
    /// All is named that was found.
    pub(super) done: Callback<()>,
}

#[component]
pub(super) fn Inspect(props: &InspectProps) -> Html {
    let shop = use_shop();
    let walk = &props.walk;
    let turn = use_state(|| 0_usize);
    let rule = use_state(String::new);
    let kind = use_state(|| None::<MistakeKind>);
    let graded = use_state(|| None::<Inspected>);
    let on_turn = {
        let turn = turn.setter();
        move |to: usize| turn.set(to)
    };
    let on_rule = {
        let rule = rule.setter();
        move |event: Event| {
            let list = event.target().and_then(|target| target.dyn_into::<HtmlSelectElement>().ok());
            rule.set(list.map(|list| list.value()).unwrap_or_default());
        }
    };
    let at = turn.checked_sub(1);
    let ready = at.is_some() && !rule.is_empty();
    let add = {
        let (name, named, rule) = (props.name.clone(), props.named.clone(), (*rule).clone());
        move |_: MouseEvent| {
            let Some(at) = at.filter(|_| ready) else { return };
            let mut all = named.clone();
            if !all.iter().any(|one| one.0 == at && one.1 == rule) {
                all.push((at, rule.clone()));
                name.emit(all);
            }
        }
    };
    let row = |(nth, (turn, rule)): (usize, &(usize, String))| {
        let took = walk.turns().get(*turn);
        let did = took.map(|turn| words::decision(&shop, walk.start(), &turn.decision)).unwrap_or_default();
        let (name, named) = (props.name.clone(), props.named.clone());
        let take_off = move |_: MouseEvent| {
            let kept = named.iter().enumerate().filter(|(place, _)| *place != nth);
            name.emit(kept.map(|(_, one)| one.clone()).collect());
        };
        let label = shop.say_with("walk.unname", &[("what", did.clone())]);
        html! {
            <li key={format!("{turn}-{rule}")}>
                <span class="words"><b>{ format!("{}. {did}", turn + 1) }</b><span class="note">{ shop.text(&format!("rule.{rule}")) }</span></span>
                <button type="button" class="control square" aria-label={label} onclick={take_off}>{ icon(Picture::Cross) }</button>
            </li>
        }
    };
    let grade = {
        let (graded, shop, walk, named) = (graded.setter(), shop.clone(), walk.clone(), props.named.clone());
        move |_: MouseEvent| graded.set(Some(inspect(&walk, &named, shop.content())))
    };
    if let Some(told) = (*graded).as_ref() {
        return graded::graded(&shop, walk, told, &props.done);
    }
    let action = html! {
        <button type="button" class="next-step" onclick={grade}>{ shop.say_with("walk.inspect-done", &[("n", props.named.len().to_string())]) }{ icon(Picture::Go) }</button>
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
    let option = |one: &crate::rules::verdict::RuleId| {
        let id = one.0;
        html! { <option key={id} value={id} selected={*rule == id}>{ shop.text(&format!("rule.{id}")) }</option> }
    };
    html! {
        <Frame class="sheet walk-report" title={shop.text(&format!("walk.name.{}", walk.start().info.slug))} note={shop.text("walk.mode.inspect")} back={Some(Route::Walks)} cautions={shop.cautions_for(&[])} {action}>
            { props.strip.clone() }
            <p key="lead" class="lead">{ shop.say("walk.inspect-lead") }</p>
            <Scrub key="scrub" walk={walk.clone()} first=0 {on_turn} again={None::<Callback<Shared<Walk>>>} />
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
            <section key="named" hidden={props.named.is_empty()}>
                <h2>{ shop.say("walk.named") }</h2>
                <ul class="rows">{ for props.named.iter().enumerate().map(row) }</ul>
            </section>
        </Frame>
    }
}
