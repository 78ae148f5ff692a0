//! What is missing before a competency can be signed for, as far as knowledge goes: one row each.

use crate::app::parts::{Picture, evidence_bar, hazard, icon, missing_line, outcome};
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::content::Competency;
use crate::learn::check::Now;
use crate::learn::evidence::{Evidence, Hazard, Outcome};
use yew::prelude::*;

pub(super) fn missing(shop: &Shop, found: &[(Competency, Evidence)], now: Now) -> Html {
    let (begun, rest): (Vec<_>, Vec<_>) =
        found.iter().partition(|(_, one)| one.outcome() != Outcome::NotBegun);
    let mut errors: Vec<&Hazard> = Vec::new();
    for one in found.iter().flat_map(|(_, one)| &one.hazards) {
        // A family may bear on several competencies.
        if errors.iter().all(|other| other.family != one.family) {
            errors.push(one);
        }
    }
    html! {
        <section key="missing" class="missing-part">
            <h2>{ shop.say("record.missing") }</h2>
            <div key="errors" hidden={errors.is_empty()}>
                <h3>{ shop.say("record.hazards") }</h3>
                <ul class="hazards">{ for errors.into_iter().map(|one| hazard(shop, one, now.at)) }</ul>
            </div>
            <p key="none" hidden={!begun.is_empty()}>{ shop.say("record.no-check") }</p>
            <ul key="begun" class="rows links">{ for begun.into_iter().map(|one| row(shop, one)) }</ul>
            <details key="rest" class="seen" hidden={rest.is_empty()}>
                <summary>{ shop.say_with("record.not-begun", &[("n", rest.len().to_string())]) }</summary>
                <ul class="rows links">{ for rest.into_iter().map(|one| row(shop, one)) }</ul>
            </details>
            <p key="check"><a href={Route::Check.address()} class="control">{ icon(Picture::Check) }{ shop.say("record.take-check") }</a></p>
        </section>
    }
}

/// A competency with its bar; the row leads to what it is about.
pub(in crate::app::pages) fn row(shop: &Shop, one: &(Competency, Evidence)) -> Html {
    row_with(shop, one, Html::default())
}

/// The same with more words under it.
pub(super) fn row_with(shop: &Shop, (competency, found): &(Competency, Evidence), more: Html) -> Html {
    let slug = competency.slug.clone();
    let to = Route::Competency { slug: slug.clone() };
    let line = missing_line(shop, found);
    let shown = found.outcome() != Outcome::NotBegun && !line.is_empty();
    let said =
        if shown { shop.say_with("evidence.still", &[("missing", line)]) } else { AttrValue::default() };
    html! {
        <li key={slug.clone()}>
            <a href={to.address()} class="row-link evidence-row">
                <span class="words"><b>{ shop.text(&format!("competency.{slug}")) }</b>
                    { evidence_bar(shop, found) }
                    <span key="said" class="note" hidden={!shown}>{ said }</span>{ more }</span>
                { outcome(shop, found) }
                { icon(Picture::Go) }
            </a>
        </li>
    }
}
