//! The rules that decided, and the working.

use crate::app::state::Shop;
use crate::rules::term::Term;
use crate::rules::verdict::{RuleId, Step};
use yew::prelude::*;

pub(in crate::app) fn rules(shop: &Shop, ids: &[RuleId]) -> Html {
    let rule = |id: &RuleId| {
        let told = shop.content().rule(id.0).map(|info| {
            let (kind, source) =
                (shop.say(&format!("verdict.kind.{}", info.kind.slug())), shop.source(&info.source));
            // A source that itself says "common practice" need not be told twice.
            if starts_with(&source, &kind) { source } else { format!("{kind}: {source}") }
        });
        html! {
            <li key={id.0}>
                <p>{ shop.text(&format!("rule.{}", id.0)) }</p>
                <p class="source">{ told.unwrap_or_default() }</p>
            </li>
        }
    };
    html! {
        <section key="rules" class="paper">
            <h2>{ shop.say("verdict.rule") }</h2>
            <ul class="rules">{ for ids.iter().map(rule) }</ul>
        </section>
    }
}

pub(in crate::app) fn working(shop: &Shop, steps: &[Step]) -> Html {
    let voice = shop.voice();
    let line = |(index, step): (usize, &Step)| {
        html! {
            <tr key={index}>
                <th scope="row">{ shop.text(&format!("working.{}", step.label)) }<small>{ voice.formula(step).to_owned() }</small><small class="put-in">{ voice.put_in(step) }</small></th>
                <td>{ voice.measure(step.result) }</td>
            </tr>
        }
    };
    html! {
        <section key="working" class="kraft" hidden={steps.is_empty()}>
            <h2>{ shop.say("verdict.working") }</h2>
            <table class="working">
                <tbody>{ for steps.iter().enumerate().map(line) }</tbody>
            </table>
        </section>
    }
}

/// Whether a text starts with another, capitals aside.
fn starts_with(text: &str, start: &str) -> bool {
    text.get(..start.len()).is_some_and(|head| head.eq_ignore_ascii_case(start))
}
