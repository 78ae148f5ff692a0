//! The verdict on a diagnosis: fault, cause and remedy one by one, then what each test was worth.

use super::{Picture, icon};
use crate::app::state::Shop;
use crate::card::{Card, Diagnosis, Weighed, Worth};
use yew::prelude::*;

/// What was named, each with its sign, and what the work needs where that is something else.
pub(super) fn diagnosed(shop: &Shop, card: &Card, given: &Diagnosis, right: &Diagnosis) -> Html {
    let term = |slug: &str| shop.voice().term(&card.family, slug);
    let part = |(key, given, right): (&'static str, &str, &str)| {
        let agrees = given == right;
        let (picture, class, said) = if agrees {
            (Picture::Tick, "ok", "verdict.right")
        } else {
            (Picture::Cross, "wrong", "verdict.wrong")
        };
        html! {
            <div {key}>
                <dt>{ shop.say(key) }</dt>
                <dd class={classes!("standing", class)}>
                    { icon(picture) }<span class="spoken">{ shop.say(said) }{ ": " }</span>{ term(given) }
                </dd>
                <dd hidden={agrees}><small>{ shop.say("verdict.needs") }{ ": " }</small>{ term(right) }</dd>
            </div>
        }
    };
    let parts = [
        ("card.fault", &given.fault, &right.fault),
        ("card.cause", &given.cause, &right.cause),
        ("card.remedy", &given.remedy, &right.remedy),
    ];
    html! {
        <dl key="said" class="said diagnosed">
            { for parts.into_iter().map(|(key, given, right)| part((key, given, right))) }
        </dl>
    }
}

/// The tests, each with what it was worth; nothing where none was weighed.
pub(super) fn weighed(shop: &Shop, card: &Card, tests: &[Weighed]) -> Html {
    let one = |weighed: &Weighed| {
        let (picture, class, word) = match weighed.worth {
            Worth::Needed => (Picture::Tick, "ok", "verdict.test.needed"),
            Worth::Needless => (Picture::Cross, "wrong", "verdict.test.needless"),
            Worth::Silent => (Picture::Dash, "", "verdict.test.silent"),
            Worth::Missing => (Picture::NotEnough, "wrong", "verdict.test.missing"),
        };
        html! {
            <li key={weighed.test.clone()} class={class}>
                { icon(picture) }
                <span class="words">{ shop.voice().term(&card.family, &weighed.test) }</span>
                <strong>{ shop.say(word) }</strong>
            </li>
        }
    };
    html! {
        <section key="weighed" class="weighed" hidden={tests.is_empty()}>
            <h3>{ shop.say("card.tests") }</h3>
            <ul>{ for tests.iter().map(one) }</ul>
        </section>
    }
}
