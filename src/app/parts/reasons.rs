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
        let told = shop.content().rule(id.0).map(|info| {
            let kind = shop.say(&format!("verdict.kind.{}", info.kind.slug()));
            // A source that itself says "common practice" need not be told twice.
            let again = info.source.to_lowercase().starts_with(&kind.to_lowercase());
            if again { info.source.clone() } else { format!("{kind}. {}", info.source) }
        });
        html! {
            <li key={id.0}>
                <p>{ shop.text(&format!("rule.{}", id.0)) }</p>
                <p class="source">{ told.unwrap_or_default() }</p>
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
