//! What a new check is about: competencies one by one, or a set that ships.

use super::super::events::turn;
use crate::app::hooks::{use_book, use_keys_held, use_people, use_told};
use crate::app::parts::{Picture, icon, outcome};
use crate::app::route::Route;
use crate::app::state::{OnDesk, Shop, Unlocked, use_shop};
use crate::content::Competency;
use crate::device::page;
use crate::learn::check::{Ahead, COMPETENCIES_MOST, Ready, open_of, ready_sets};
use crate::learn::evidence::Evidence;
use crate::record::{AssessorName, Step};
use crate::rules::term::{Stage, Term};
use std::collections::BTreeSet;
use std::rc::Rc;
use yew::prelude::*;

/// Name of the set of whoever chooses competencies one by one.
const CHOSEN: &str = "chosen";

#[derive(Properties, PartialEq)]
pub(super) struct ChooseProps {
    pub(super) competency: String,
}

/// What is chosen, and the set that it came from.
#[derive(Debug, Clone, PartialEq, Default)]
struct Chosen {
    slugs: BTreeSet<String>,
    set: Option<String>,
}

#[component]
pub(super) fn Choose(props: &ChooseProps) -> Html {
    let shop = use_shop();
    let books = use_book();
    let told = use_told();
    let found = use_memo((shop.clone(), Rc::clone(&told)), |(shop, told)| told.evidence(shop.content()));
    let taken: BTreeSet<String> = open_of(told.journal.events(), &told.person)
        .iter()
        .flat_map(|one| one.competencies.iter().cloned())
        .collect();
    let first = || props.competency.clone();
    let chosen = use_state(|| {
        let slugs = Some(first()).filter(|slug| !slug.is_empty() && !taken.contains(slug)).into_iter();
        Chosen { slugs: slugs.collect(), set: None }
    });
    let picked: Vec<(&Competency, &Evidence)> = found
        .iter()
        .filter(|(one, _)| chosen.slugs.contains(&one.slug) && !taken.contains(&one.slug))
        .map(|(one, evidence)| (one, evidence))
        .collect();
    let count = picked.len();
    let ready = (1..=COMPETENCIES_MOST).contains(&count);
    let ahead = Ahead::of_new(shop.content(), &picked, told.now);
    let slugs: Vec<String> = picked.iter().map(|(one, _)| one.slug.clone()).collect();
    // Nobody sits beside themselves.
    let own = use_people().crew.of_journal(&told.person).map(|member| member.number.clone());
    let open = use_keys_held().open.filter(|open| Some(&open.person.number) != own.as_ref());
    let sits = use_state(|| false);
    let beside = open
        .as_ref()
        .filter(|_| *sits)
        .map(|open| AssessorName { number: open.person.number.to_string(), name: open.person.name.clone() });
    let begin = use_callback(
        (shop.clone(), books.hand_in, slugs, chosen.set.clone(), ready, beside),
        |_: MouseEvent, (shop, hand_in, slugs, set, ready, beside)| {
            if *ready {
                let attempt = page::random_name();
                let set = set.clone().unwrap_or_else(|| CHOSEN.to_owned());
                let step = Step::Opened { set, competencies: slugs.clone(), taking: None };
                hand_in.emit((turn(shop, &attempt, step), OnDesk::NextOfCheck));
                if let Some(by) = beside.clone() {
                    let step = Step::Supervised { by };
                    hand_in.emit((turn(shop, &attempt, step), OnDesk::Same));
                }
                Route::Sitting { attempt }.go();
            }
        },
    );
    let toggle = {
        let chosen = chosen.clone();
        Callback::from(move |slug: String| {
            let mut slugs = chosen.slugs.clone();
            if !slugs.remove(&slug) {
                slugs.insert(slug);
            }
            chosen.set(Chosen { slugs, set: None });
        })
    };
    let said = match (count, ready) {
        (0, _) => shop.say("check.none-chosen"),
        (_, false) => shop.say_with("check.too-many", &[("most", COMPETENCIES_MOST.to_string())]),
        (_, true) => shop.say_with(
            "check.outlook",
            &[("cards", ahead.cards.to_string()), ("minutes", ahead.minutes.to_string())],
        ),
    };
    let band = |stage: &Stage| {
        let of_band: Vec<_> = found.iter().filter(|(one, _)| one.band == *stage).collect();
        let row = |one: &&(Competency, Evidence)| choice(&shop, one, &chosen.slugs, &taken, &toggle);
        html! {
            <div key={stage.slug()} role="group" aria-label={shop.stage(*stage)} hidden={of_band.is_empty()}>
                <h3>{ shop.stage(*stage) }</h3>
                <div class="choices">{ for of_band.iter().map(row) }</div>
            </div>
        }
    };
    let sets = ready_sets(shop.content());
    let set = |ready: &Ready<'_>| {
        let leads = Chosen {
            slugs: ready.competencies.iter().map(|one| one.slug.clone()).collect(),
            set: Some(ready.set.slug.clone()),
        };
        let pressed = chosen.set.as_ref() == Some(&ready.set.slug);
        let chosen = chosen.clone();
        let onclick = move |_: MouseEvent| chosen.set(leads.clone());
        html! {
            <button key={ready.set.slug.clone()} type="button" class={classes!("control", pressed.then_some("picked"))}
                aria-pressed={pressed.to_string()} {onclick}>{ shop.text(&format!("set.{}", ready.set.slug)) }</button>
        }
    };
    html! {
        <section class="choose">
            <h2>{ shop.say("check.new") }</h2>
            <p key="how">{ shop.say("check.how") }</p>
            <div key="sets" class="people" hidden={sets.is_empty()}>
                <span class="note">{ shop.say("check.sets") }</span>{ for sets.iter().map(set) }
            </div>
            { for Stage::ALL.iter().map(band) }
            <div key="begin" class="begin">
                { beside_choice(&shop, open.as_ref(), &sits) }
                <p role="status">{ said }</p>
                <button type="button" class={if ready { "next-step" } else { "next-step not-yet" }}
                    aria-disabled={(!ready).to_string()} onclick={begin}>{ shop.say("check.begin") }{ icon(Picture::Go) }</button>
            </div>
        </section>
    }
}

/// Whoever has opened their key may say that they sit beside.
fn beside_choice(shop: &Shop, open: Option<&Unlocked>, sits: &UseStateHandle<bool>) -> Html {
    let name = open.map(|open| open.person.name.clone()).unwrap_or_default();
    let onchange = {
        let sits = sits.clone();
        Callback::from(move |_: Event| sits.set(!*sits))
    };
    html! {
        <label key="beside" hidden={open.is_none()} class={classes!("unit", sits.then_some("picked"))}>
            <input type="checkbox" checked={**sits} {onchange} /><span>{ shop.say_with("check.beside", &[("name", name)]) }</span>
        </label>
    }
}

/// A competency to choose; one that is in an open check cannot be.
fn choice(
    shop: &Shop,
    (competency, found): &(Competency, Evidence),
    chosen: &BTreeSet<String>,
    taken: &BTreeSet<String>,
    toggle: &Callback<String>,
) -> Html {
    let slug = competency.slug.clone();
    let is_taken = taken.contains(&slug);
    let picked = chosen.contains(&slug) && !is_taken;
    let onchange = {
        let slug = slug.clone();
        toggle.reform(move |_: Event| slug.clone())
    };
    html! {
        <label key={slug.clone()} class={classes!("choice", "many", picked.then_some("picked"), is_taken.then_some("taken"))}>
            <input type="checkbox" checked={picked} disabled={is_taken} {onchange} />
            <span class="letter" aria-hidden="true"><span hidden={!picked}>{ icon(Picture::Tick) }</span></span>
            <span class="words">{ shop.text(&format!("competency.{slug}")) }
                <small key="taken" hidden={!is_taken}>{ shop.say("check.taken") }</small></span>
            { outcome(shop, found) }
        </label>
    }
}
