//! My record: sure and wrong first, what is missing, how well one judges oneself, the answers.

mod competency;
mod judging;
mod missing;
mod void;
mod walked;

pub(in crate::app) use competency::Competency;
pub(super) use judging::{Whose, judging};
pub(super) use missing::row as competency_row;

use super::walk_row;
use crate::app::hooks::{use_crew, use_people, use_sets, use_told, use_walks};
use crate::app::parts::{Frame, Holding, Picture, answer_row, icon};
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::record::{Entry, Voids};
use crate::rules::term::{Stage, Term};
use std::rc::Rc;
use yew::prelude::*;

/// Latest answers shown.
const LATEST: usize = 30;

#[component]
pub(in crate::app) fn Record() -> Html {
    let shop = use_shop();
    let told = use_told();
    let crew = use_people().crew;
    let export = use_crew().save.reform(|_: MouseEvent| ());
    let found = use_memo((shop.clone(), Rc::clone(&told)), |(shop, told)| told.evidence(shop.content()));
    let entries: Vec<&Entry> = told.entries().rev().collect();
    let voids = Voids::of(told.journal.events());
    let counts = |entry: &&Entry| voids.touches(entry).is_none();
    let sure = entries.iter().copied().filter(|entry| entry.sure_and_wrong());
    let sure: Vec<&Entry> = sure.filter(counts).collect();
    let sets = use_sets();
    let walked = use_walks().of(&told.person, true);
    let row = |entry: &&Entry| {
        let to = Route::Entry { sequence: entry.stamp.sequence };
        answer_row(&shop, entry, sets.own_card(entry), &to, !counts(entry))
    };
    let stage_row = |stage: &Stage| {
        let in_stage =
            |entry: &&&Entry| shop.content().family(&entry.family).is_some_and(|one| one.stage == *stage);
        let count = entries.iter().filter(in_stage).count();
        let to = Route::Band { stage: stage.slug().to_owned() };
        html! {
            <li key={stage.slug()}>
                <a href={to.address()} class="row-link">
                    <span class="words">{ shop.stage(*stage) }</span>
                    <span class="note">{ shop.say_with("record.count", &[("n", count.to_string())]) }</span>
                    { icon(Picture::Go) }
                </a>
            </li>
        }
    };
    let empty = entries.is_empty() && told.decisions().next().is_none();
    let unreadable = told.journal.unreadable();
    let cautions = shop.cautions_for(&[]);
    let action = html! {
        <button type="button" class="control" hidden={empty} onclick={export}>{ icon(Picture::Save) }{ shop.say("record.export") }</button>
    };
    html! {
        <Frame class="sheet record" title={shop.say("record.title")} note={crew.shown(&told.person).to_owned()} back={Some(Route::Home)} {cautions} {action}>
            <p key="empty" class="lead" hidden={!empty}>{ shop.say("record.empty") }</p>
            <p key="unreadable" class="kraft" hidden={unreadable == 0}>
                { shop.say_with("record.unreadable", &[("n", unreadable.to_string())]) }
            </p>
            <Holding key="holding" />
            <section key="sure" hidden={sure.is_empty()}>
                <h2>{ shop.say("record.sure") }</h2>
                <ul class="rows links">{ for sure.iter().map(row) }</ul>
            </section>
            { walked::walked(&shop, &told, &voids) }
            { missing::missing(&shop, &found, told.now) }
            { void::void(&shop, &sets, &told, &voids) }
            { judging(&shop, Whose::Own, entries.iter().copied().filter(counts).rev()) }
            <section key="stages">
                <h2>{ shop.say("record.stages") }</h2>
                <ul class="rows links">{ for Stage::ALL.iter().map(stage_row) }</ul>
            </section>
            <section key="walks" hidden={walked.is_empty()}>
                <h2>{ shop.say("record.walks") }</h2>
                <ul class="rows links">{ for walked.iter().map(|one| walk_row(&shop, one)) }</ul>
            </section>
            <section key="latest" hidden={entries.is_empty()}>
                <h2>{ shop.say("record.latest") }</h2>
                <ul class="rows links">{ for entries.iter().take(LATEST).map(row) }</ul>
            </section>
        </Frame>
    }
}
