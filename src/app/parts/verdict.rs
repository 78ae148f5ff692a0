//! The verdict on one answer: sign and words, what was answered and what the work needs, what follows, why.

use super::diagnosed::{diagnosed, weighed};
use super::moments::moments;
use super::{SignKind, rules, sign, working};
use crate::app::state::{Shop, use_shop};
use crate::card::{Answer, Card, Diagnosis, Graded, Mark, Weighed};
use crate::device::page;
use crate::record::Certainty;
use crate::rules::term::Severity;
use std::rc::Rc;
use yew::prelude::*;

/// Id of the heading that takes the focus.
const HEADING: &str = "verdict";

#[derive(Properties, PartialEq)]
pub(in crate::app) struct VerdictProps {
    pub(in crate::app) card: Rc<Card>,
    pub(in crate::app) graded: Rc<Graded>,
    pub(in crate::app) answer: Answer,
    pub(in crate::app) certainty: Certainty,
    /// What the tests of a diagnosis were worth.
    #[prop_or_default]
    pub(in crate::app) tests: Vec<Weighed>,
    /// The panels of the card, as they are shown after the answer.
    #[prop_or_default]
    pub(in crate::app) panels: Html,
}

#[component]
pub(in crate::app) fn Verdict(props: &VerdictProps) -> Html {
    let shop = use_shop();
    use_effect_with((), |()| page::focus(HEADING));
    let (card, graded) = (&props.card, &props.graded);
    // Whoever says that not enough is told would not have gone ahead.
    let sure = props.certainty == Certainty::OnTheJob && props.answer != Answer::NotEnough;
    let cannot = graded.solution.right == Answer::NotEnough;
    let (kind, class, key) = match (graded.mark, sure, cannot) {
        (Mark::Right, _, true) => (SignKind::CannotJudge, "ok", "verdict.cannot"),
        (Mark::Right, ..) => (SignKind::Right, "ok", "verdict.right"),
        (Mark::Partly, true, _) => (SignKind::Partly, "wrong", "verdict.partly-sure"),
        (Mark::Partly, ..) => (SignKind::Partly, "wrong", "verdict.partly"),
        (Mark::Wrong, true, _) => (SignKind::Wrong, "wrong", "verdict.wrong-sure"),
        (Mark::Wrong, ..) => (SignKind::Wrong, "wrong", "verdict.wrong"),
    };
    let wrong = graded.mark != Mark::Right;
    let safety = shop.content().family(&card.family).is_some_and(|info| info.severity == Severity::Safety);
    let missing = missing(&shop, graded);
    let after = graded.after.and_then(|id| shop.content().consequence(id));
    let slip = graded.slip.map(|slip| shop.text(&format!("slip.{slip}"))).unwrap_or_default();
    html! {
        <article class={classes!("verdict", class)}>
            <header key="head">
                { sign(kind) }
                <h2 id={HEADING} tabindex="-1">{ shop.say(key) }</h2>
            </header>
            { said(&shop, card, graded, &props.answer) }
            <div key="panels" class="verdict-panels" hidden={props.panels == Html::default()}>{ props.panels.clone() }</div>
            { weighed(&shop, card, &props.tests) }
            <p key="missing" class="missing" hidden={!cannot}>{ missing }</p>
            <p key="slip" class="slip" hidden={slip.is_empty()}><strong>{ shop.say("verdict.slip") }</strong>{ " " }{ slip }</p>
            { signs(&shop, card, &graded.solution.right, &props.answer) }
            <p key="safety" class="instructor" hidden={!(wrong && sure && safety)}>{ shop.say("verdict.from-safety") }</p>
            <div key="after" hidden={after.is_none()}>
                { for after.map(|after| moments(&shop, after)) }
            </div>
            <div key="why" class="why">
                { rules(&shop, &graded.solution.rules) }
                { working(&shop, &graded.solution.working) }
            </div>
        </article>
    }
}

/// What was answered, and what the work needs where that is something else.
fn said(shop: &Shop, card: &Card, graded: &Graded, given: &Answer) -> Html {
    let right = &graded.solution.right;
    if let (Answer::Diagnosis(given), Answer::Diagnosis(right)) = (given, right) {
        return diagnosed(shop, card, given, right);
    }
    let wrong = graded.mark != Mark::Right;
    html! {
        <dl key="said" class="said">
            <div key="chose"><dt>{ shop.say("verdict.chose") }</dt><dd>{ told(shop, card, given) }</dd></div>
            <div key="needs" hidden={!wrong}><dt>{ shop.say(needs(right)) }</dt><dd>{ told(shop, card, right) }</dd></div>
        </dl>
    }
}

/// What the fault that it was looks like, and the one that was named: nothing where no fault was asked for.
fn signs(shop: &Shop, card: &Card, right: &Answer, given: &Answer) -> Html {
    let named = |answer: &Answer| match answer {
        Answer::Diagnosis(named) => vec![named.fault.clone()],
        Answer::Terms(slugs) => slugs.clone(),
        _ => Vec::new(),
    };
    let mut faults = named(right);
    faults.extend(named(given).into_iter().filter(|fault| !named(right).contains(fault)));
    let sign = |fault: &String| {
        let looks = shop.texts().find(&format!("fault.{fault}.looks"))?;
        let name = shop.voice().term(&card.family, fault);
        Some(html! { <p key={fault.clone()}><strong>{ name }{ ":" }</strong>{ " " }{ looks }</p> })
    };
    let signs: Vec<Html> = faults.iter().filter_map(sign).collect();
    html! { <div key="signs" class="slip" hidden={signs.is_empty()}>{ for signs }</div> }
}

const fn needs(right: &Answer) -> &'static str {
    match right {
        Answer::Order(_) => "verdict.needs-or",
        _ => "verdict.needs",
    }
}

fn missing(shop: &Shop, graded: &Graded) -> AttrValue {
    let voice = shop.voice();
    let names: Vec<&str> = graded.solution.missing.iter().map(|key| voice.fact_name(key)).collect();
    shop.say_with("verdict.missing", &[("facts", names.join(", "))])
}

/// An answer in words; several terms as a list, numbered where they stand in order.
pub(in crate::app) fn told(shop: &Shop, card: &Card, answer: &Answer) -> Html {
    let voice = shop.voice();
    let items = |slugs: &[String]| -> Html {
        slugs
            .iter()
            .map(|slug| html! { <li key={slug.clone()}>{ voice.term(&card.family, slug) }</li> })
            .collect()
    };
    match answer {
        Answer::Terms(slugs) => html! { <ul class="told">{ items(slugs) }</ul> },
        Answer::Order(slugs) => html! { <ol class="told">{ items(slugs) }</ol> },
        Answer::Diagnosis(named) => named_as(shop, card, named),
        other => html! { voice.answer(&card.family, other) },
    }
}

/// A diagnosis, part by part.
fn named_as(shop: &Shop, card: &Card, named: &Diagnosis) -> Html {
    let term = |slug: &String| shop.voice().term(&card.family, slug);
    let test = |slug: &String| html! { <li key={slug.clone()}>{ term(slug) }</li> };
    let tests = if named.tests.is_empty() {
        html! { shop.text("answer.no-test") }
    } else {
        html! { <ul>{ for named.tests.iter().map(test) }</ul> }
    };
    let part = |key: &'static str, told: Html| {
        html! { <div {key}><dt>{ shop.say(key) }</dt><dd>{ told }</dd></div> }
    };
    html! {
        <dl class="named">
            { part("card.fault", html! { term(&named.fault) }) }
            { part("card.cause", html! { term(&named.cause) }) }
            { part("card.remedy", html! { term(&named.remedy) }) }
            { part("card.tests", tests) }
        </dl>
    }
}
