//! A decision of a walk as the record has it: what was decided, what could be known then, the rules that it broke and the
//! families that it exercises.

use super::detail::detail;
use super::words;
use crate::app::parts::{Picture, SignKind, icon, sign};
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::device::clock;
use crate::quantity::{Measure, Unit};
use crate::record::{AirKnown, Decided, Exercised, Known, Walked};
use crate::rules::term::Term;
use crate::walk::{Decision, Start};
use yew::prelude::*;

/// The job of a walk and the decision, where both are known here.
fn known_here(shop: &Shop, walked: &Walked, decided: &Decided) -> Option<(Start, Decision)> {
    let content = shop.content();
    let start = Start::of(content.walk(&walked.job)?, content.sheet(&decided.sheet.slug)?, content).ok()?;
    Some((start, serde_json::from_value(decided.decision.clone()).ok()?))
}

/// Name of the job, how it was walked, and which decision it was.
fn of_walk(shop: &Shop, walked: &Walked, decided: &Decided) -> AttrValue {
    let mode = shop.text(&format!("walk.mode.{}", decided.way.slug())).to_string();
    let named = [("name", job(shop, walked).to_string()), ("mode", mode), ("n", decided.nth.to_string())];
    shop.say_with(if decided.again { "walked.of-again" } else { "walked.of" }, &named)
}

/// What a job is called; its slug where it is not known here.
pub(in crate::app::pages) fn job(shop: &Shop, walked: &Walked) -> AttrValue {
    let known = shop.content().walk(&walked.job);
    known.map_or_else(|| walked.job.clone().into(), |_| shop.text(&format!("walk.name.{}", walked.job)))
}

/// What was decided, in one line.
fn decided_title(shop: &Shop, walked: &Walked, decided: &Decided) -> AttrValue {
    let known = known_here(shop, walked, decided);
    known
        .map_or_else(|| shop.say("walked.unknown"), |(start, one)| words::decision(shop, &start, &one).into())
}

/// A decision as a row that leads to all that is written down of it.
pub(in crate::app::pages) fn decided_row(
    shop: &Shop,
    walked: &Walked,
    decided: &Decided,
    to: &Route,
    void: bool,
) -> Html {
    let kind = if decided.broke.is_empty() { SignKind::Right } else { SignKind::Wrong };
    let rule =
        |rule: &String| html! { <span key={rule.clone()}>{ shop.text(&format!("rule.{rule}")) }</span> };
    html! {
        <li key={format!("{}-{}", walked.stamp.device, walked.stamp.sequence)}>
            <a href={to.address()} class="row-link">
                { sign(kind) }
                <span class="words"><b>{ decided_title(shop, walked, decided) }</b>
                    { for decided.broke.iter().map(rule) }
                    <span key="void" class="struck-out" hidden={!void}>{ shop.say("record.void") }</span>
                    <span key="of" class="note">{ of_walk(shop, walked, decided) }{ " " }{ clock::local(&walked.stamp.at) }</span></span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}

/// All that is written down of a decision.
pub(in crate::app::pages) fn decided_told(shop: &Shop, walked: &Walked, decided: &Decided) -> Html {
    let known = known_here(shop, walked, decided);
    let values = known.as_ref().map(|(start, one)| detail(shop, start, one)).unwrap_or_default();
    let rule = |rule: &String| html! { <li key={rule.clone()}>{ shop.text(&format!("rule.{rule}")) }</li> };
    let family = |one: &Exercised| {
        let kind = if one.is_right() { SignKind::Right } else { SignKind::Wrong };
        let mark = shop.say(if one.is_right() { "record.mark.right" } else { "record.mark.wrong" });
        html! { <li key={one.family.clone()}>{ sign(kind) }<span class="words"><b>{ shop.family_title(&one.family) }</b><span>{ mark }</span></span></li> }
    };
    html! {
        <>
            <p key="of" class="note">{ of_walk(shop, walked, decided) }</p>
            <p key="what" class="lead"><b>{ decided_title(shop, walked, decided) }</b></p>
            <p key="values" hidden={values.is_empty()}>{ values }</p>
            <section key="broke">
                <h2>{ shop.say("walked.broke") }</h2>
                <p hidden={!decided.broke.is_empty()}>{ shop.say("walked.broke-none") }</p>
                <ul class="dashes" hidden={decided.broke.is_empty()}>{ for decided.broke.iter().map(rule) }</ul>
            </section>
            <section key="known">
                <h2>{ shop.say("walked.known") }</h2>
                <ul class="dashes">{ for facts(shop, &decided.known, known.as_ref().map(|(start, _)| start)).into_iter().map(|fact| html! { <li>{ fact }</li> }) }</ul>
            </section>
            <section key="families" hidden={decided.exercised.is_empty()}>
                <h2>{ shop.say("walked.families") }</h2>
                <ul class="rows">{ for decided.exercised.iter().map(family) }</ul>
            </section>
        </>
    }
}

/// What could be known, a sentence each.
fn facts(shop: &Shop, known: &Known, start: Option<&Start>) -> Vec<String> {
    let at = [("day", known.day.to_string()), ("time", words::time(known.hour))];
    let mut told = vec![shop.say_with("walk.at", &at).to_string()];
    told.push(known.air.map_or_else(|| shop.say("walked.air-unread").to_string(), |air| measured(shop, air)));
    told.extend(
        known.filters_past.map(|past| {
            shop.say(if past { "walked.filters-past" } else { "walked.filters-under" }).to_string()
        }),
    );
    let mask = known.respirator.as_deref().unwrap_or("nothing");
    told.push(format!("{}: {}", shop.say("walk.respirator"), shop.say(&format!("walk.respirator.{mask}"))));
    told.extend(known.ready.iter().map(|one| shop.text(&format!("walk.ready.{}", one.slug())).to_string()));
    told.extend(known.parts.iter().map(|(part, done)| {
        let place = usize::try_from(*part).unwrap_or(usize::MAX);
        let part = start.map(|start| words::part(shop, &start.info, place).to_string()).unwrap_or_default();
        let done = shop.text(&format!("term.{done}")).to_string();
        shop.say_with("walked.last-done", &[("part", part), ("what", done)]).to_string()
    }));
    told.extend(known.shown.iter().map(|rule| {
        let rule = shop.text(&format!("rule.{rule}")).to_string();
        shop.say_with("walked.showed", &[("rule", rule)]).to_string()
    }));
    let day = known.offered.map(|day| [("day", day.to_string())]);
    told.extend(day.map(|day| shop.say_with("walk.offered", &day).to_string()));
    told
}

fn measured(shop: &Shop, air: AirKnown) -> String {
    let voice = shop.voice();
    let degrees = |value: f64| voice.measure(Measure::new(value, Unit::Celsius, 0));
    let named = [
        ("air", degrees(air.air_c)),
        ("work", degrees(air.work_c)),
        ("rh", voice.measure(Measure::new(air.rh, Unit::Percent, 0))),
        ("hours", words::hours(shop, air.hours_ago)),
    ];
    shop.say_with("walked.air", &named).to_string()
}
