//! The rules that decided, and the working.

use crate::app::state::use_shop;
use crate::rules::term::Term;
use crate::rules::verdict::{RuleId, Step};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct RulesProps {
    pub(in crate::app) rules: Vec<RuleId>,
}

#[component]
pub(in crate::app) fn Rules(props: &RulesProps) -> Html {
    let shop = use_shop();
    let rule = |id: &RuleId| {
        let info = shop.content().rule(id.0);
        let kind = info.map(|info| shop.say(&format!("verdict.kind.{}", info.kind.slug())));
        let source = info.map(|info| info.source.clone());
        html! {
            <li key={id.0}>
                <p>{ shop.text(&format!("rule.{}", id.0)) }</p>
                <p class="source">{ kind.unwrap_or_default() }{ source.map(|source| format!(". {source}")) }</p>
            </li>
        }
    };
    html! {
        <section class="paper">
            <h2>{ shop.say("verdict.rule") }</h2>
            <ul class="rules">{ for props.rules.iter().map(rule) }</ul>
        </section>
    }
}

#[derive(Properties, PartialEq)]
pub(in crate::app) struct WorkingProps {
    pub(in crate::app) steps: Vec<Step>,
}

#[component]
pub(in crate::app) fn Working(props: &WorkingProps) -> Html {
    let shop = use_shop();
    let voice = shop.voice();
    let line = |(index, step): (usize, &Step)| {
        html! {
            <tr key={index}>
                <th scope="row">{ shop.text(&format!("working.{}", step.label)) }<small>{ step.formula }</small></th>
                <td>{ voice.measure(step.result) }</td>
            </tr>
        }
    };
    html! {
        <section class="kraft" hidden={props.steps.is_empty()}>
            <h2>{ shop.say("verdict.working") }</h2>
            <table class="working">
                <tbody>{ for props.steps.iter().enumerate().map(line) }</tbody>
            </table>
        </section>
    }
}
