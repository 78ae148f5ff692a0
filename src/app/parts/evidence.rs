//! Evidence for a competency: a bar that right answers fill, what it comes to in a word, and what is missing in sentences.

use super::{Picture, icon};
use crate::app::state::Shop;
use crate::device::clock;
use crate::learn::evidence::{Evidence, Hazard, Outcome};
use crate::learn::mastery::{Guess, Missing};
use crate::quantity::PERCENT_A_WHOLE;
use crate::record::Moment;
use crate::rules::term::Term;
use yew::prelude::*;

/// The bar, with its share as text for those who do not see it.
pub(in crate::app) fn evidence_bar(shop: &Shop, found: &Evidence) -> Html {
    let share = (found.state.share.get() * PERCENT_A_WHOLE).floor().to_string();
    let said = shop.say_with("evidence.bar", &[("share", share.clone())]);
    html! {
        <svg key="bar" class="evidence-bar" viewBox="0 0 100 10" preserveAspectRatio="none" role="img" aria-label={said}>
            <rect class="ground" width="100" height="10" />
            <rect class="filled" width={share} height="10" />
        </svg>
    }
}

/// What it comes to, with a sign.
pub(in crate::app) fn outcome(shop: &Shop, found: &Evidence) -> Html {
    let outcome = found.outcome();
    let (class, picture) = match outcome {
        Outcome::Suffices => ("ok", Some(Picture::Tick)),
        Outcome::Blocked => ("wrong", Some(Picture::Caution)),
        Outcome::BackToStudy | Outcome::NotYet | Outcome::ClosedEarly => ("", Some(Picture::Dash)),
        Outcome::GoingOn => ("", Some(Picture::Pencil)),
        Outcome::NotBegun => ("", None),
    };
    html! {
        <span key="outcome" class={classes!("standing", class)}>
            { for picture.map(icon) }
            <span key="word">{ shop.say(&format!("evidence.outcome.{}", outcome.slug())) }</span>
        </span>
    }
}

/// What is missing, one thing a row, or that a new check is needed; nothing where the evidence suffices.
pub(in crate::app) fn missing(shop: &Shop, found: &Evidence) -> Html {
    let suffices = found.suffices();
    if suffices || !found.goes_on() {
        return html! { <p key="missing" hidden={suffices}>{ shop.say("evidence.ended") }</p> };
    }
    // Errors about safety are told one by one.
    let told = found.state.missing.iter().filter(|one| !matches!(one, Missing::CriticalErrors(_)));
    let row = |one: &Missing| {
        let slug = one.slug();
        let words = shop.say_with(&format!("evidence.missing.{slug}"), &[("n", one.count().to_string())]);
        html! { <li key={slug}>{ words }</li> }
    };
    html! {
        <div key="missing" hidden={found.state.missing.is_empty()}>
            <h4>{ shop.say("evidence.missing") }</h4><ul class="dashes">{ for told.map(row) }</ul>
        </div>
    }
}

/// The same in one line; empty where a new check is needed.
pub(in crate::app) fn missing_line(shop: &Shop, found: &Evidence) -> String {
    if !found.goes_on() {
        return String::new();
    }
    let words = |one: &Missing| {
        let key = format!("evidence.missing.{}", one.slug());
        shop.say_with(&key, &[("n", one.count().to_string())]).to_string()
    };
    found.state.missing.iter().map(words).collect::<Vec<_>>().join(", ")
}

/// An error about safety that is open, and how it is passed again.
pub(in crate::app) fn hazard(shop: &Shop, hazard: &Hazard, at: Option<Moment>) -> Html {
    let title = shop.family_title(&hazard.family);
    let since = match hazard.since {
        Some(day) => shop.say_with("evidence.hazard.since", &[("day", clock::local_day(day))]),
        None => shop.say("evidence.hazard.open"),
    };
    let rest = hazard.rests_until(at).map(|from| clock::local(&from.to_string()));
    let next = match rest {
        _ if hazard.must_be_taught() => shop.say("evidence.hazard.teach"),
        Some(from) => shop.say_with("evidence.hazard.from", &[("from", from)]),
        None => {
            let named = [
                ("answers", hazard.answers_missing(Guess::USUAL).max(1).to_string()),
                ("days", hazard.days_missing().to_string()),
            ];
            let key = if hazard.days_missing() > 0 { "evidence.hazard.now" } else { "evidence.hazard.row" };
            shop.say_with(key, &named)
        }
    };
    html! {
        <li key={hazard.family.clone()} class="hazard">
            { icon(Picture::Caution) }
            <div class="words">
                <b key="title">{ title }</b>
                <p key="since">{ since }{ " " }{ next }</p>
                <p key="initials" hidden={!hazard.wants_initials}><strong>{ shop.say("evidence.hazard.initials") }</strong></p>
            </div>
        </li>
    }
}

/// The errors about safety that are open for a competency.
pub(in crate::app) fn hazards(shop: &Shop, found: &Evidence, at: Option<Moment>) -> Html {
    html! {
        <ul key="hazards" class="hazards" hidden={found.hazards.is_empty()}>
            { for found.hazards.iter().map(|one| hazard(shop, one, at)) }
        </ul>
    }
}
