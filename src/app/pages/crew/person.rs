//! One person of the crew: how they stand, what they are stuck on, how they judge themselves, their answers.

use super::chart::day_chart;
use super::done::{done_section, sets_done};
use super::grid::{name_of, picture};
use super::stuck::{kinds, reply, slip_row};
use super::void_of::void_of;
use super::walked::walked;
use crate::app::hooks::{theirs, use_crew, use_sets};
use crate::app::pages::record::{Whose, judging};
use crate::app::pages::sets::use_keeping;
use crate::app::parts::{Frame, answer_row, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::device::clock;
use crate::exchange::crew::{Cell, Glance, Slipped, Stands, days};
use crate::record::{Entry, Event, Voids};
use crate::rules::term::Term;
use std::collections::BTreeSet;
use yew::prelude::*;

/// Latest answers shown.
const LATEST: usize = 30;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct CrewPersonProps {
    pub(in crate::app) person: String,
}

#[component]
pub(in crate::app) fn CrewPerson(props: &CrewPersonProps) -> Html {
    let shop = use_shop();
    let (crew, sets, keeping) = (use_crew(), use_sets(), use_keeping());
    use_effect_with(crew.load.clone(), |load| load.emit(()));
    let view = crew.view.clone().unwrap_or_default();
    let found = view.person(&props.person).zip(view.glance(&props.person)).zip(view.gathered.clone());
    let Some(((person, glance), gathered)) = found else {
        let said = if crew.busy || view.glances.len() < view.people.len() || view.people.is_empty() {
            "crew.reading"
        } else {
            "crew.gone"
        };
        return html! {
            <Frame class="sheet crew" title={props.person.clone()} back={Some(Route::Crew)} cautions={shop.cautions_for(&[])}><p class="lead" role="status">{ shop.say(said) }</p></Frame>
        };
    };
    let events = theirs(&gathered, person);
    let events: Vec<&Event> = events.iter().map(|event| &**event).collect();
    let all: Vec<&Entry> = events.iter().filter_map(|event| event.answer()).collect();
    // Whoever is still to be asked the same reads no answer here; nor anybody before it is known which sets are here.
    let of_sets: BTreeSet<&str> = all.iter().filter_map(|entry| entry.within.set()).collect();
    let back = |set: &&str| !sets.loaded || keeping.of(sets.find(set)).are_kept_back();
    let back: BTreeSet<&str> = of_sets.into_iter().filter(back).collect();
    let told = |entry: &&Entry| entry.within.set().is_none_or(|set| !back.contains(set));
    let entries: Vec<&Entry> = all.iter().copied().filter(told).collect();
    let untold = all.len() - entries.len();
    let done = sets_done(&shop, &sets, &events);
    let voids = Voids::of(events.iter().copied());
    let row = |entry: &&Entry| {
        let to = Route::CrewAnswer { device: entry.stamp.device.clone(), sequence: entry.stamp.sequence };
        answer_row(&shop, entry, sets.own_card(entry), &to, voids.touches(entry).is_some())
    };
    let sure: Vec<&Entry> =
        entries.iter().rev().copied().filter(|entry| entry.sure_and_wrong()).take(LATEST).collect();
    let slips = view.stuck.iter().flatten().flat_map(|one| &one.people).filter(|one| one.key == person.key);
    let slips: Vec<&Slipped> = slips.collect();
    html! {
        <Frame class="sheet crew" title={name_of(&shop, &person.name)} note={person.number.clone().unwrap_or_default()} back={Some(Route::Crew)} cautions={shop.cautions_for(&[])}>
            { counts(&shop, glance) }
            { done_section(&shop, &sets, person, done) }
            { void_of(&shop, &sets, &entries, &voids, &row) }
            { stands(&shop, glance) }
            { walked(&shop, &events, &voids) }
            <section key="slips" hidden={slips.is_empty()}>
                <h2>{ shop.say("crew.stuck-on") }</h2>
                <ul class="rows links">{ for slips.iter().map(|one| slip_row(&shop, one, kinds(&shop, &sets, &one.kinds()), Some(reply(&shop, &one.misread)))) }</ul>
            </section>
            <section key="sure" hidden={sure.is_empty()}>
                <h2>{ shop.say("record.sure") }</h2>
                <ul class="rows links">{ for sure.iter().map(row) }</ul>
            </section>
            { day_chart(&shop, &days(all.iter().copied())) }
            { judging(&shop, Whose::Theirs, all.iter().copied()) }
            <p key="kept-back" class="kraft" hidden={untold == 0}>{ shop.say_with("crew.kept-back", &[("n", untold.to_string())]) }</p>
            <section key="latest" hidden={entries.is_empty()}>
                <h2>{ shop.say("record.latest") }</h2>
                <ul class="rows links">{ for entries.iter().rev().take(LATEST).map(row) }</ul>
            </section>
        </Frame>
    }
}

fn counts(shop: &Shop, one: &Glance) -> Html {
    let last = one.last.map(clock::local_day).unwrap_or_default();
    let told = [
        ("n", one.answers.to_string()),
        ("right", one.right.to_string()),
        ("sure", one.sure_and_wrong.to_string()),
        ("last", last),
    ];
    html! {
        <div key="counts">
            <p class="lead">{ shop.say_with("crew.person-counts", &told) }</p>
            <p class="kraft" hidden={one.void == 0}>{ shop.say_with("crew.person-void", &[("n", one.void.to_string())]) }</p>
        </div>
    }
}

/// Every competency in which there is anything.
fn stands(shop: &Shop, one: &Glance) -> Html {
    let some: Vec<&Cell> = one.cells.iter().filter(|cell| cell.stands != Stands::Nothing).collect();
    let nothing = one.cells.len() - some.len();
    let row = |cell: &&Cell| {
        let slug = cell.stands.slug();
        let until =
            cell.until.map(|until| shop.say_with("crew.until", &[("until", clock::local_day(until))]));
        let counted = [("right", cell.right.to_string()), ("of", cell.answers.to_string())];
        html! {
            <li key={cell.competency.clone()} class={slug}>
                { icon(picture(cell.stands)) }
                <span class="words"><b>{ shop.text(&format!("competency.{}", cell.competency)) }</b>
                    <span>{ shop.say(&format!("crew.stands.{slug}")) }{ ". " }{ until.unwrap_or_default() }</span>
                    <span class="note" hidden={cell.answers == 0}>{ shop.say_with("evidence.answers", &counted) }</span></span>
            </li>
        }
    };
    html! {
        <section key="stands">
            <h2>{ shop.say("crew.stands") }</h2>
            <ul class="rows glances-list" hidden={some.is_empty()}>{ for some.iter().map(row) }</ul>
            <p class="note" hidden={nothing == 0}>{ shop.say_with("crew.stands-nothing", &[("n", nothing.to_string())]) }</p>
        </section>
    }
}
