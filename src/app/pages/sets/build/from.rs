//! What a set asks about: stages, competencies, single kinds of card, tickets, pictures.

use super::Building;
use super::choice::{Choice, choices, toggle};
use crate::app::state::Shop;
use crate::content::FamilyInfo;
use crate::rules::term::{Stage, Term};
use yew::prelude::*;

/// Id of its heading, which takes the focus where nothing is chosen.
pub(super) const HEADING: &str = "set-what";

/// `tried`: whether saving was tried, so that what is missing is said.
pub(super) fn from(shop: &Shop, building: &Building, tried: bool) -> Html {
    let task = &building.set.task;
    let content = shop.content();
    let of_stage = |stage: Stage| content.families.iter().filter(|family| family.stage == stage).count();
    let stage = |stage: &Stage| {
        let stage = *stage;
        Choice {
            name: shop.stage(stage),
            note: shop.say_with("sets.build.stage-cards", &[("n", of_stage(stage).to_string())]),
            chosen: task.stages.contains(&stage),
            on_pick: building.task(move |task, _: Event| toggle(&mut task.stages, stage)),
        }
    };
    let stages = Stage::ALL.iter().filter(|one| of_stage(**one) > 0).map(stage).collect();
    let competency = |one: &crate::content::Competency| {
        let slug = one.slug.clone();
        Choice {
            name: shop.text(&format!("competency.{slug}")),
            note: shop.stage(one.band),
            chosen: task.competencies.contains(&slug),
            on_pick: building.task(move |task, _: Event| toggle(&mut task.competencies, slug.clone())),
        }
    };
    let family = |one: &&FamilyInfo| {
        let id = one.id.clone();
        Choice {
            name: shop.family_title(&id),
            note: AttrValue::default(),
            chosen: task.families.contains(&id),
            on_pick: building.task(move |task, _: Event| toggle(&mut task.families, id.clone())),
        }
    };
    // Those of chosen stages are in already.
    let single = |stage: &Stage| {
        let of: Vec<&FamilyInfo> = content.families.iter().filter(|one| one.stage == *stage).collect();
        (!task.stages.contains(stage) && !of.is_empty())
            .then(|| choices(shop.stage(*stage), None, of.iter().map(family).collect()))
    };
    let sheet = building.set.sheet_of(content).ok();
    let done = sheet.as_ref().map(|sheet| crate::content::World { content, sheet });
    let tickets = content.tickets.iter().filter(|one| done.is_none_or(|world| world.does(one)));
    let ticket = |one: &crate::content::Ticket| {
        let slug = one.slug.clone();
        Choice {
            name: shop.text(&format!("ticket.{slug}")),
            note: AttrValue::default(),
            chosen: task.tickets.contains(&slug),
            on_pick: building.task(move |task, _: Event| toggle(&mut task.tickets, slug.clone())),
        }
    };
    let pictures = Choice {
        name: shop.say("sets.build.pictures"),
        note: AttrValue::default(),
        chosen: !task.no_pictures,
        on_pick: building.task(|task, _: Event| task.no_pictures = !task.no_pictures),
    };
    let missing = tried && task.families_of(content).is_empty();
    let named = |key: &str, n: usize| {
        let name = shop.say(&format!("sets.build.{key}"));
        if n == 0 { name.to_string() } else { format!("{name} ({n})") }
    };
    html! {
        <section key="from" class="build-part">
            <h2 id={HEADING} tabindex="-1">{ shop.say("sets.build.what") }</h2>
            <p class="wrong" hidden={!missing}>{ shop.say("sets.build.saving-not") }</p>
            { choices(shop.say("sets.build.stages"), None, stages) }
            <details key="competencies"><summary>{ named("competencies", task.competencies.len()) }</summary>
                { choices(shop.say("sets.build.competencies"), None, content.competencies.iter().map(competency).collect()) }
            </details>
            <details key="families"><summary>{ named("families", task.families.len()) }</summary>
                <p class="note">{ shop.say("sets.build.families-hint") }</p>
                { for Stage::ALL.iter().filter_map(single) }
            </details>
            <details key="tickets"><summary>{ named("tickets", task.tickets.len()) }</summary>
                <p class="note">{ shop.say("sets.build.tickets-hint") }</p>
                { choices(shop.say("sets.build.tickets"), None, tickets.map(ticket).collect()) }
            </details>
            { choices(shop.say("sets.build.pictures-head"), None, vec![pictures]) }
        </section>
    }
}
