//! Scenario sets: those of this tablet, one of them, taking it, building another.

mod answers;
mod at_once;
mod begin;
mod build;
mod done;
mod give;
mod hand;
mod items;
mod kept_back;
mod lost;
mod maker;
mod named;
mod one;
mod own;
mod take;
mod taken;
mod view;

pub(in crate::app) use build::NewSet;
pub(in crate::app::pages) use kept_back::{Answers, kept_back, use_answers, use_keeping};
pub(in crate::app::pages) use maker::use_maker;
pub(in crate::app) use one::SetPage;
pub(in crate::app::pages) use own::OwnVerdict;
pub(in crate::app) use take::TakeSet;

use crate::app::hooks::{use_book, use_sets};
use crate::app::parts::{Frame, Picture, asks, icon, unread, validity_told};
use crate::app::route::Route;
use crate::app::state::{KeptSet, Origin, SetsContext, Shop, use_shop};
use crate::device::clock;
use crate::exchange::set::Validity;
use crate::learn::check::Stand;
use crate::record::Journal;
use crate::rules::term::Term;
use taken::stand;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Sets() -> Html {
    let shop = use_shop();
    let sets = use_sets();
    let journal = use_book().book.journal.clone();
    let draft = sets.draft.as_ref().map(|draft| draft.title.clone());
    let title = draft.clone().filter(|title| !title.is_empty());
    let title = title.map_or_else(|| shop.say("sets.no-title"), AttrValue::from);
    let own = sets.all.iter().any(|one| one.origin != Origin::Ready);
    let group = |origin: &Origin| {
        let of: Vec<&KeptSet> = sets.all.iter().filter(|one| one.origin == *origin).collect();
        html! {
            <section key={origin.slug()} hidden={of.is_empty()}>
                <h2>{ shop.say(&format!("sets.origin.{}", origin.slug())) }</h2>
                <ul class="rows links">{ for of.into_iter().map(|one| row(&shop, one, &journal)) }</ul>
            </section>
        }
    };
    let build = if draft.is_some() { "sets.go-on-building" } else { "sets.build-one" };
    html! {
        <Frame class="sheet" title={shop.say("sets.title")} back={Some(Route::Menu)} cautions={shop.cautions_for(&[])}>
            <p key="lead" class="lead">{ shop.say("sets.lead") }</p>
            { unread(&shop, sets.unread) }
            <div key="build" class="people">
                <a href={Route::NewSet.address()} class="next-step">{ shop.say(build) }{ icon(Picture::Go) }</a>
            </div>
            <p key="draft" class="note" hidden={draft.is_none()}>{ shop.say_with("sets.building", &[("title", title.to_string())]) }</p>
            <p key="none" class="note" hidden={own || !sets.loaded}>{ shop.say("sets.none-of-own") }</p>
            <p key="loading" class="note" role="status" hidden={sets.loaded}>{ shop.say("sets.loading") }</p>
            { lost::lost(&shop, &sets, &journal, None) }
            { for Origin::ALL.iter().map(group) }
        </Frame>
    }
}

/// A set as a row that leads to it.
fn row(shop: &Shop, one: &KeptSet, journal: &Journal) -> Html {
    let to = Route::SetOf { id: one.id.clone() };
    let validity = one.validity(clock::today());
    let cards = shop.say_with("sets.cards", &[("n", one.set.count().to_string())]);
    let state = match (validity, stand(shop, journal, one)) {
        (Validity::Open, Stand::New) => AttrValue::default(),
        (Validity::Open, Stand::Under(at)) => {
            shop.say_with("sets.take.go-on", &[("n", (at + 1).to_string())])
        }
        (Validity::Open, Stand::Done) => shop.say("sets.take.done"),
        _ => validity_told(shop, &one.set, validity),
    };
    let purpose = shop.say(&format!("sets.purpose.{}", one.set.task.purpose.slug()));
    html! {
        <li key={one.id.clone()}>
            <a href={to.address()} class="row-link">
                <span class="words"><b>{ shop.set_title(&one.id, &one.set.title) }</b>
                    <span class="note">{ purpose }{ ". " }{ cards }{ ". " }{ asks(shop, &one.set) }</span></span>
                <span class="standing">{ state }</span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}

/// In place of a set that is not here, or not yet.
fn absent(shop: &Shop, sets: &SetsContext, journal: &Journal, id: &str) -> Html {
    let said = if sets.loaded { "sets.gone" } else { "sets.loading" };
    html! {
        <Frame class="sheet" title={shop.say("sets.title")} back={Some(Route::Sets)} cautions={shop.cautions_for(&[])}>
            <p key="said" class="lead" role="status">{ shop.say(said) }</p>
            { lost::lost(shop, sets, journal, Some(id)) }
        </Frame>
    }
}
