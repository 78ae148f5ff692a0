//! One competency explained: what its holder may do, what comes before, what must be seen, and the evidence so far.

use super::missing::{row, row_with};
use crate::app::hooks::{use_standings, use_told};
use crate::app::parts::{Frame, Picture, evidence_bar, hazards, icon, missing, outcome, standing};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::{Competency as Info, Criterion};
use crate::device::clock;
use crate::learn::evidence::{Evidence, Uncounted};
use crate::learn::mastery::Call;
use crate::quantity::PERCENT_A_WHOLE;
use crate::record::LocalDate;
use crate::rules::term::Term;
use crate::signoff::Standing;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct CompetencyProps {
    pub(in crate::app) slug: String,
}

#[component]
pub(in crate::app) fn Competency(props: &CompetencyProps) -> Html {
    let shop = use_shop();
    let told = use_told();
    let standings = use_standings();
    let found = use_memo((shop.clone(), Rc::clone(&told)), |(shop, told)| told.evidence(shop.content()));
    let back = Some(Route::Record);
    let Some((info, evidence)) = found.iter().find(|(info, _)| info.slug == props.slug) else {
        return html! {
            <Frame class="sheet" title={shop.say("record.title")} {back} cautions={shop.cautions_for(&[])}>
                <p class="lead">{ shop.say("record.no-competency") }</p>
            </Frame>
        };
    };
    let slug = info.slug.as_str();
    let of = |slugs: &[String]| {
        let slugs = slugs.to_vec();
        found.iter().filter(move |(other, _)| slugs.contains(&other.slug))
    };
    let signed_row = |one: &(Info, Evidence)| {
        let stands = standings.of(shop.content(), &one.0.slug).filter(|stands| *stands != Standing::Never);
        let said = match stands.zip(standings.now.as_ref()) {
            Some((stands, now)) => standing(&shop, &stands, now),
            None => html! { <span class="note">{ shop.say("record.not-signed") }</span> },
        };
        row_with(&shop, one, said)
    };
    let note = shop.texts().find(&format!("competency-note.{slug}")).map(str::to_owned);
    let to = Route::CheckFor { competency: slug.to_owned() };
    let action = html! {
        <a href={to.address()} class="next-step">{ shop.say("record.take-check") }{ icon(Picture::Go) }</a>
    };
    html! {
        <Frame class="sheet competency" title={shop.text(&format!("competency.{slug}"))} note={shop.stage(info.band)} {back}
            cautions={shop.cautions_of_band(info.band)} {action}>
            <p key="may" class="lead">{ shop.say_with("record.may", &[("may", shop.text(&format!("may.{slug}")).to_string())]) }</p>
            <p key="note" class="kraft" hidden={note.is_none()}>{ note.unwrap_or_default() }</p>
            <section key="evidence" class="evidence">
                <h2>{ shop.say("evidence.head") }</h2>
                <p class="note">{ shop.say("evidence.lead") }</p>
                <div key="now" class="evidence-now">{ evidence_bar(&shop, evidence) }{ outcome(&shop, evidence) }</div>
                { hazards(&shop, evidence, told.now.at) }
                { so_far(&shop, evidence) }
            </section>
            <section key="needs" hidden={info.needs.is_empty()}>
                <h2>{ shop.say("record.needs") }</h2><ul class="rows links">{ for of(&info.needs).map(signed_row) }</ul>
            </section>
            <section key="knowledge" hidden={info.needs_knowledge.is_empty()}>
                <h2>{ shop.say("record.needs-knowledge") }</h2><ul class="rows links">{ for of(&info.needs_knowledge).map(|one| row(&shop, one)) }</ul>
            </section>
            { seen(&shop, info) }
        </Frame>
    }
}

/// What was counted and what is missing.
fn so_far(shop: &Shop, found: &Evidence) -> Html {
    let state = &found.state;
    let day = |(day, answers): (&i32, &u32)| {
        let named = [
            ("day", LocalDate::of_number(*day).map(clock::local_day).unwrap_or_default()),
            ("n", answers.to_string()),
        ];
        html! { <li key={*day}>{ shop.say_with("evidence.day", &named) }</li> }
    };
    let left_out = |(why, count): (&Uncounted, &u32)| {
        let key = format!("evidence.uncounted.{}", why.slug());
        html! { <li key={why.slug()}>{ shop.say_with(&key, &[("n", count.to_string())]) }</li> }
    };
    let families = |seen: u32, of: u32| [("seen", seen.to_string()), ("of", of.to_string())];
    let (all, safety) = (state.gates.families, state.gates.safety_families);
    let lower = state.lower.map(|lower| {
        let share = (lower.get() * PERCENT_A_WHOLE).floor().to_string();
        let named = [("right", state.right.to_string()), ("of", state.answers.to_string()), ("share", share)];
        shop.say_with("evidence.lower", &named)
    });
    let since = found.sufficient_since.map(clock::local_day).unwrap_or_default();
    let earlier = found.earlier.len().to_string();
    let sufficed = found.earlier.iter().filter(|call| **call == Call::Sufficient).count().to_string();
    html! {
        <>
            <p key="since" hidden={since.is_empty()}>{ shop.say_with("evidence.since", &[("day", since.clone())]) }</p>
            { missing(shop, found) }
            <div key="counted">
                <h3>{ shop.say("evidence.counted") }</h3>
                <ul class="dashes">
                    <li key="answers">{ shop.say_with("evidence.answers", &[("right", state.right.to_string()), ("of", state.answers.to_string())]) }</li>
                    <li key="families">{ shop.say_with("evidence.families", &families(all.seen, all.of)) }</li>
                    <li key="safety" hidden={safety.of == 0}>{ shop.say_with("evidence.safety-families", &families(safety.seen, safety.of)) }</li>
                    { for state.days.iter().map(day) }
                    <li key="earlier" hidden={found.earlier.is_empty()}>{ shop.say_with("evidence.earlier", &[("n", earlier), ("sufficed", sufficed)]) }</li>
                </ul>
            </div>
            <p key="lower" hidden={lower.is_none()}>{ lower.unwrap_or_default() }</p>
            <div key="uncounted" hidden={found.uncounted.is_empty()}>
                <h3>{ shop.say("evidence.uncounted") }</h3>
                <ul class="dashes">{ for found.uncounted.iter().map(left_out) }</ul>
            </div>
            <p key="unreadable" class="kraft" hidden={found.unreadable == 0}>
                { shop.say_with("record.unreadable", &[("n", found.unreadable.to_string())]) }
            </p>
        </>
    }
}

/// What an instructor wants to see before it is signed for.
fn seen(shop: &Shop, info: &Info) -> Html {
    let criterion = |one: &Criterion| {
        html! {
            <li key={one.id.clone()}>{ shop.text(&format!("criterion.{}", one.id)) }
                <span key="critical" hidden={!one.critical}>{ " " }<strong>{ shop.say("record.critical") }</strong></span></li>
        }
    };
    let named = [
        ("n", info.demonstrations.to_string()),
        ("days", info.days.to_string()),
        ("months", info.expires_months.to_string()),
    ];
    let papers = info.on_file.iter().map(|paper| {
        html! { <li key={paper.slug()}>{ shop.text(&format!("on-file.{}", paper.slug())) }</li> }
    });
    html! {
        <section key="seen">
            <h2>{ shop.say("record.demonstrations") }</h2>
            <p>{ shop.say_with("record.demonstrations-wanted", &named) }</p>
            <ul class="dashes">{ for info.criteria.iter().map(criterion) }</ul>
            <div key="papers" hidden={info.on_file.is_empty()}>
                <h3>{ shop.say("record.on-file") }</h3><ul class="dashes">{ for papers }</ul>
            </div>
        </section>
    }
}
