//! Everybody, from the results of many tablets: who holds what, who is stuck on what, what runs out soon, and what the answers
//! say of the cards.

mod answer;
mod called;
mod came;
mod card_row;
mod card_title;
mod cards;
mod chart;
mod done;
mod export;
mod grid;
mod import;
mod person;
mod practised;
mod report;
mod set_figures;
mod stuck;
mod void;
mod void_acts;
mod void_of;
mod void_what;
mod void_written;
mod voidings;
mod walked;
mod who;

pub(in crate::app) use void_acts::{void_mark, void_words};
pub(in crate::app) use voidings::Voidings;

pub(in crate::app) use answer::CrewAnswer;
pub(in crate::app) use came::came;
pub(in crate::app) use cards::CrewCards;
use done::set_title;
pub(in crate::app) use done::{came_words, sets_done};
pub(in crate::app) use person::CrewPerson;
pub(in crate::app) use who::WhoDid;

use crate::app::hooks::{use_crew, use_sets};
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{CrewView, KeptSet, Origin, SetsContext, Shop, use_shop};
use crate::device::clock;
use crate::exchange::crew::runs_out;
use yew::prelude::*;

/// Sets that the page names; the rest stand under Scenario sets.
const SETS: usize = 6;

#[component]
pub(in crate::app) fn Crew() -> Html {
    let shop = use_shop();
    let (crew, sets) = (use_crew(), use_sets());
    use_effect_with(crew.load.clone(), |load| load.emit(()));
    let view = crew.view.clone().unwrap_or_default();
    let save = {
        let (shop, sets, view) = (shop.clone(), sets.clone(), view.clone());
        Callback::from(move |_: MouseEvent| export::save_grid(&shop, &sets, &view))
    };
    let nobody = view.people.is_empty();
    let working = crew.busy || crew.gathered.is_none() || view.stuck.is_none();
    let progress = [("n", view.glances.len().to_string()), ("of", view.people.len().to_string())];
    html! {
        <Frame class="sheet crew" title={shop.say("crew.title")} back={Some(Route::Menu)} cautions={shop.cautions_for(&[])}>
            <import::Import key="import" />
            <p key="progress" class="note" role="status">
                { if working && !nobody { shop.say_with("crew.working", &progress) } else { AttrValue::default() } }
            </p>
            <p key="nobody" class="lead" hidden={!nobody || working}>{ shop.say("crew.nobody") }</p>
            <section key="grid" hidden={nobody}>
                <h2>{ shop.say("crew.grid") }</h2>
                <grid::Grid view={view.clone()} />
                <p class="people"><button type="button" class="control" onclick={save}>{ icon(Picture::Save) }{ shop.say("crew.csv") }</button></p>
            </section>
            { soon(&shop, &view) }
            <stuck::StuckList key="stuck" view={view.clone()} />
            { sets_here(&shop, &sets, nobody) }
            <section key="cards" hidden={nobody}>
                <h2>{ shop.say("crew.cards") }</h2>
                <ul class="rows links"><li><a href={Route::CrewCards.address()} class="row-link">
                    <span class="words">{ shop.say("crew.cards-why") }</span>{ icon(Picture::Go) }
                </a></li></ul>
            </section>
        </Frame>
    }
}

/// Sets that were made or taken here, the last first: on the page of each stands who did it.
fn sets_here(shop: &Shop, sets: &SetsContext, nobody: bool) -> Html {
    let here = || sets.all.iter().filter(|one| one.origin != Origin::Ready);
    let row = |one: &KeptSet| {
        let to = Route::SetOf { id: one.id.clone() };
        html! {
            <li key={one.id.clone()}><a href={to.address()} class="row-link">
                <span class="words"><b>{ set_title(shop, sets, &one.id) }</b></span>{ icon(Picture::Go) }
            </a></li>
        }
    };
    html! {
        <section key="sets" hidden={nobody}>
            <h2>{ shop.say("crew.sets") }</h2>
            <p class="note">{ shop.say("crew.sets-why") }</p>
            <ul class="rows links" hidden={here().next().is_none()}>{ for here().take(SETS).map(row) }</ul>
            <ul class="rows links"><li><a href={Route::Sets.address()} class="row-link">
                <span class="words">{ shop.say("crew.sets-all") }</span>{ icon(Picture::Go) }
            </a></li></ul>
        </section>
    }
}

/// What runs out soon, the soonest first.
fn soon(shop: &Shop, view: &CrewView) -> Html {
    let all = runs_out(&view.glances);
    let row = |one: &crate::exchange::crew::RunsOut| {
        let to = Route::CrewPerson { key: one.key.clone() };
        let named = [("until", clock::local_day(one.until))];
        html! {
            <li key={format!("{}-{}", one.key, one.competency)}>
                <a href={to.address()} class="row-link">
                    { icon(Picture::Caution) }
                    <span class="words"><b>{ &one.name }</b><span>{ shop.text(&format!("competency.{}", one.competency)) }</span>
                        <span class="note">{ shop.say_with("crew.until", &named) }</span></span>
                    { icon(Picture::Go) }
                </a>
            </li>
        }
    };
    html! {
        <section key="soon" hidden={all.is_empty()}>
            <h2>{ shop.say("crew.soon") }</h2>
            <ul class="rows links">{ for all.iter().map(row) }</ul>
        </section>
    }
}
