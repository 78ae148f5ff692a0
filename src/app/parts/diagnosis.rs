//! Tests that are done on a panel one by one, then the fault, its cause and its remedy.

use super::choices::{Choices, choices};
use crate::app::state::Shop;
use crate::card::{Card, Named, Slate};
use crate::quantity::{Measure, Unit};
use yew::prelude::*;

/// What is named; nothing on a card that offers nothing to name.
pub(super) fn diagnosis_field(
    shop: &Shop,
    card: &Card,
    slate: &Slate,
    on_slate: &Callback<Slate>,
    group: &'static str,
) -> Html {
    let Some(offered) = &card.offered else { return Html::default() };
    let on_named = naming(slate, on_slate);
    let named = &slate.named;
    type Set = fn(&mut Named, String);
    let parts: [(&str, &[String], &Option<String>, Set); 3] = [
        ("fault", &offered.faults, &named.fault, |named, slug| named.fault = Some(slug)),
        ("cause", &offered.causes, &named.cause, |named, slug| named.cause = Some(slug)),
        ("remedy", &offered.remedies, &named.remedy, |named, slug| named.remedy = Some(slug)),
    ];
    let part = |(key, slugs, picked, set): (&'static str, &[String], &Option<String>, Set)| {
        let label = shop.say(&format!("card.{key}"));
        let words = |slug: &String| AttrValue::from(shop.voice().term(&card.family, slug));
        let picked = slugs.iter().position(|slug| !slate.not_enough && Some(slug) == picked.as_ref());
        let on_pick = on_named.reform({
            let (named, slugs) = (named.clone(), slugs.to_vec());
            move |option: usize| {
                let mut named = named.clone();
                if let Some(slug) = slugs.get(option) {
                    set(&mut named, slug.clone());
                }
                named
            }
        });
        let rows = Choices {
            labels: slugs.iter().map(words).collect(),
            label: label.to_string(),
            group: format!("{group}-{key}").into(),
            picked: picked.into_iter().collect(),
            many: false,
            on_pick,
        };
        html! { <section {key} class="to-name"><h3>{ label }</h3>{ choices(shop, &rows) }</section> }
    };
    html! { <>{ for parts.into_iter().map(part) }</> }
}

/// The tests at hand: each tells what it costs, and once it is done what it shows; nothing on a card that offers none.
pub(in crate::app) fn tests_field(
    shop: &Shop,
    card: &Card,
    slate: &Slate,
    on_slate: &Callback<Slate>,
) -> Html {
    let Some(offered) = &card.offered else { return Html::default() };
    let on_named = naming(slate, on_slate);
    let named = &slate.named;
    let effort = |test: &String| shop.content().fact(test).and_then(|fact| fact.probe);
    let cost = |test: &String| effort(test).map(|effort| cost(shop, effort.minutes, effort.mend_minutes));
    let one = |test: &String| {
        let done = named.tests.contains(test);
        let shown = named.shown.as_ref() == Some(test);
        let onclick = on_named.reform({
            let (named, test) = (named.clone(), test.clone());
            move |_: MouseEvent| named.clone().tested(&test)
        });
        let result = if done { shop.voice().shown_by(card, test) } else { String::new() };
        html! {
            <li key={test.clone()} class={classes!("test", done.then_some("done"), shown.then_some("picked"))}>
                <button type="button" aria-pressed={shown.to_string()} {onclick}>
                    <span class="words">{ shop.voice().term(&card.family, test) }</span>
                    <span class="takes">{ for cost(test) }</span>
                </button>
                <p class="shows" aria-live="polite" hidden={!done}>{ result }</p>
            </li>
        }
    };
    let spent: f64 = named.tests.iter().filter_map(effort).map(|effort| effort.all_minutes()).sum();
    let spent = shop.say_with("card.spent", &[("minutes", minutes(shop, spent))]);
    html! {
        <section key="tests" class="to-name tests">
            <h3>{ shop.say("card.tests") }<span class="note">{ spent }</span></h3>
            <ul>{ for offered.tests.iter().map(one) }</ul>
        </section>
    }
}

fn naming(slate: &Slate, on_slate: &Callback<Slate>) -> Callback<Named> {
    let slate = slate.clone();
    on_slate.reform(move |named| slate.clone().naming(named))
}

fn minutes(shop: &Shop, minutes: f64) -> String {
    shop.voice().measure(Measure::new(minutes, Unit::Minute, 0))
}

/// What a test costs: its minutes, and those of mending its mark.
fn cost(shop: &Shop, takes: f64, mending: f64) -> AttrValue {
    let took = ("minutes", minutes(shop, takes));
    if mending > 0.0 {
        shop.say_with("card.cost-mend", &[took, ("mend", minutes(shop, mending))])
    } else {
        shop.say_with("card.cost", &[took])
    }
}
