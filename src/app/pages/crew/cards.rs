//! What the answers say of the cards: which to look at first, and what was found wrong.

use super::card_row::card_row;
use super::export::save_cards;
use super::void::{VoidForm, VoidWhat};
use super::voidings::Voidings;
use crate::app::hooks::{Slices, use_crew, use_sets};
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{ContentContext, CrewView, SetsContext, Shared, Shop, use_shop};
use crate::learn::items::{Plan, Report, SetReport};
use crate::record::Event;
use std::borrow::Cow;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Rows that are shown before more are asked for.
const FIRST: usize = 20;

#[component]
pub(in crate::app) fn CrewCards() -> Html {
    let shop = use_shop();
    let (crew, known_sets) = (use_crew(), use_sets());
    use_effect_with(crew.load.clone(), |load| load.emit(()));
    let report = use_report(crew.view.clone(), crew.content.clone());
    let all = use_state(|| false);
    let more = {
        let all = all.clone();
        Callback::from(move |_: MouseEvent| all.set(!*all))
    };
    let save = {
        let (shop, report) = (shop.clone(), report.clone());
        Callback::from(move |_: MouseEvent| {
            if let Some(report) = &report {
                save_cards(&shop, report);
            }
        })
    };
    let known = shop.on(crew.content.clone());
    let body = match (&report, &crew.gathered) {
        (Some(report), Some(gathered)) => {
            let shown = if *all { report.families.len() } else { FIRST };
            let told = [
                ("counted", report.counted.to_string()),
                ("answers", report.answers.to_string()),
                ("people", report.people.len().to_string()),
            ];
            html! {
                <div key="report" class="contents">
                    <p key="counts" class="lead">{ shop.say_with("crew.items.counts", &told) }</p>
                    <p key="few" class="note">{ shop.say("crew.items.few") }</p>
                    <section key="families" hidden={report.families.is_empty()}>
                        <h2>{ shop.say("crew.items.families") }</h2>
                        <ul class="rows item-rows">{ for report.families.iter().take(shown).map(|one| card_row(&known, gathered, one)) }</ul>
                        <p class="people">
                            <button type="button" class="control" hidden={report.families.len() <= FIRST} aria-expanded={(*all).to_string()} onclick={more}>
                                { if *all { shop.say("crew.fewer") } else { shop.say_with("crew.all", &[("n", report.families.len().to_string())]) } }
                            </button>
                            <button type="button" class="control" onclick={save}>{ icon(Picture::Save) }{ shop.say("crew.csv") }</button>
                        </p>
                    </section>
                    { sets(&shop, &known_sets, &report.sets) }
                    <Voidings key="voidings" />
                </div>
            }
        }
        _ => html! { <p key="working" class="lead" role="status">{ shop.say("crew.items.working") }</p> },
    };
    html! {
        <Frame class="sheet crew" title={shop.say("crew.cards")} back={Some(Route::Crew)} cautions={shop.cautions_for(&[])}>
            <ContextProvider<ContentContext> context={crew.content.clone()}>{ body }</ContextProvider<ContentContext>>
        </Frame>
    }
}

/// Works the report out, a family at a time.
#[hook]
fn use_report(view: Option<Shared<CrewView>>, content: ContentContext) -> Option<Rc<Report>> {
    let report = use_state(|| None::<Rc<Report>>);
    let set = report.setter();
    // The roll is called before anything else is known; what follows does not change it.
    let called = use_memo(view, |view| {
        let view = view.as_ref()?;
        Some((view.gathered.clone()?, view.people.clone()))
    });
    use_effect_with((called, content), move |(called, content)| {
        if called.is_some() {
            let (called, content) = (Rc::clone(called), content.clone());
            spawn_local(async move {
                let Some((gathered, people)) = &*called else { return };
                let mut slices = Slices::begin();
                let mut events: Vec<Cow<'_, Event>> = gathered.voided().map(Cow::Borrowed).collect();
                for person in people {
                    events.extend(person.events(gathered, &person.key));
                    slices.rest().await;
                }
                let plan = Plan::of(events.iter().map(|event| &**event));
                slices.rest().await;
                let mut families = Vec::new();
                for nth in 0..plan.families() {
                    families.extend(plan.family(&content.0, nth));
                    slices.rest().await;
                }
                set.set(Some(Rc::new(plan.report(families))));
            });
        }
    });
    (*report).clone()
}

/// What a set is called; the name that checks have for it where it is not on this tablet.
fn title(shop: &Shop, known: &SetsContext, set: &str) -> AttrValue {
    let ships = shop.content().sets.iter().any(|one| one.slug == set);
    match known.find(set) {
        Some(kept) if !ships => kept.set.title.clone().into(),
        _ if ships => shop.text(&format!("set.{set}")),
        _ => AttrValue::from(set.to_owned()),
    }
}

/// How far sets agree with themselves.
fn sets(shop: &Shop, known: &SetsContext, all: &[SetReport]) -> Html {
    let figure = |value: Option<f64>| {
        value.map_or_else(|| shop.say("crew.items.none"), |value| AttrValue::from(format!("{value:.2}")))
    };
    let row = |one: &SetReport| {
        let found = one.reliability.as_ref();
        let count = |of: fn(&crate::learn::items::Reliability) -> usize| {
            found.map_or_else(AttrValue::default, |found| AttrValue::from(of(found).to_string()))
        };
        html! {
            <tr key={one.set.clone()}>
                <th scope="row">{ title(shop, known, &one.set) }</th>
                <td>{ count(|found| found.people) }</td>
                <td>{ count(|found| found.items) }</td>
                <td>{ figure(found.and_then(|found| found.kr20)) }</td>
                <td>{ figure(found.and_then(|found| found.standard_error)) }</td>
            </tr>
        }
    };
    let head = ["set", "people", "kinds", "kr20", "error"]
        .map(|key| html! { <th key={key} scope="col">{ shop.say(&format!("crew.items.sets.{key}")) }</th> });
    html! {
        <section key="sets" hidden={all.is_empty()}>
            <h2>{ shop.say("crew.items.sets") }</h2>
            <p class="note">{ shop.say("crew.items.sets-why") }</p>
            <div class="paper scroll" tabindex="0" role="region" aria-label={shop.say("crew.items.sets")}><table class="working counts"><thead><tr>{ for head }</tr></thead><tbody>{ for all.iter().map(row) }</tbody></table></div>
            <VoidForm id="void-set" choices={all.iter().map(|one| (VoidWhat::Set(one.set.clone()), title(shop, known, &one.set))).collect::<Vec<_>>()} />
        </section>
    }
}
