//! Whether the run passes, why not, and the one thing to do better.

use super::HEADING;
use crate::app::pages::spray::words;
use crate::app::parts::{SignKind, sign};
use crate::app::state::Shop;
use crate::rules::term::Term;
use crate::rules::verdict::RuleId;
use crate::spraying::{Advice, Finding, Outcome};
use yew::prelude::*;

pub(super) fn verdict(shop: &Shop, run: &Outcome) -> Html {
    let (kind, class, key) = if run.passes() {
        (SignKind::Right, "ok", "spray.passes")
    } else {
        (SignKind::Wrong, "wrong", "spray.fails")
    };
    html! {
        <article key="verdict" class={classes!("verdict", class)}>
            <header key="head">{ sign(kind) }<h2 id={HEADING} tabindex="-1">{ shop.say(key) }</h2></header>
            { reasons(shop, run) }
        </article>
    }
}

/// Why it does not pass, and the one thing to do better.
pub(super) fn reasons(shop: &Shop, run: &Outcome) -> Html {
    html! {
        <>
            <ul key="findings" class="rows spray-findings" hidden={run.passes()}>{ for run.findings.iter().map(|one| finding(shop, one)) }</ul>
            { advice(shop, run.advice) }
        </>
    }
}

fn why(shop: &Shop, rule: RuleId) -> AttrValue {
    shop.text(&format!("rule.{}", rule.0))
}

fn finding(shop: &Shop, one: &Finding) -> Html {
    let named = [
        ("found", words::counted(shop, one.counted, one.found)),
        ("limit", words::counted(shop, one.counted, one.limit)),
    ];
    html! {
        <li key={one.fault.slug()}>
            <span class="words"><b>{ shop.text(&format!("spray.fault.{}", one.fault.slug())) }</b>
                <span>{ shop.say_with(&format!("spray.found.{}", one.counted.slug()), &named) }</span>
                <span class="note">{ why(shop, one.rule) }</span></span>
        </li>
    }
}

fn advice(shop: &Shop, advice: Option<Advice>) -> Html {
    let Some(advice) = advice else {
        return html! { <div key="advice" class="paper"><p>{ shop.say("spray.nothing-better") }</p></div> };
    };
    let measured = advice.from_to.map(|(told, was, wanted)| {
        let named = [("was", words::told(shop, told, was)), ("wanted", words::told(shop, told, wanted))];
        shop.say_with("spray.was-wanted", &named)
    });
    html! {
        <section key="advice" class="paper spray-advice">
            <p class="note">{ shop.say("spray.one-thing") }</p>
            <h3>{ shop.text(&format!("spray.better.{}", advice.better.slug())) }</h3>
            <p hidden={measured.is_none()}>{ measured.unwrap_or_default() }</p>
            <p class="note">{ why(shop, advice.rule) }</p>
        </section>
    }
}
