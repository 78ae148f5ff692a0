//! My record: what was answered, sure and wrong first, by band, latest first.

use super::copy::save_copy;
use crate::app::hooks::use_book;
use crate::app::parts::{Frame, Picture, SignKind, icon, sign};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::device::clock;
use crate::record::Entry;
use crate::rules::term::{Stage, Term};
use yew::prelude::*;

/// Latest answers shown.
const LATEST: usize = 30;

#[component]
pub(in crate::app) fn Record() -> Html {
    let shop = use_shop();
    let book = use_book().book;
    let person = shop.settings.person.clone();
    let export = use_callback(book.clone(), |_: MouseEvent, book| save_copy(&book.journal));
    let entries: Vec<&Entry> = book.journal.of(&person).rev().collect();
    let sure: Vec<&Entry> = entries.iter().copied().filter(|entry| entry.sure_and_wrong()).collect();
    let stage_row = |stage: &Stage| {
        let count = book.journal.of_stage(shop.content(), &person, *stage).len();
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
    let cautions = shop.cautions_for(&[]);
    let action = html! {
        <button type="button" class="control" hidden={entries.is_empty()} onclick={export}>{ icon(Picture::Save) }{ shop.say("record.export") }</button>
    };
    html! {
        <Frame class="sheet record" title={shop.say("record.title")} note={person.clone()} back={Some(Route::Home)} {cautions} {action}>
            <p key="empty" class="lead" hidden={!entries.is_empty()}>{ shop.say("record.empty") }</p>
            <section key="sure" hidden={sure.is_empty()}>
                <h2>{ shop.say("record.sure") }</h2>
                <ul class="rows links">{ for sure.iter().map(|entry| row(&shop, entry)) }</ul>
            </section>
            <section key="stages">
                <h2>{ shop.say("record.stages") }</h2>
                <ul class="rows links">{ for Stage::ALL.iter().map(stage_row) }</ul>
            </section>
            <section key="latest" hidden={entries.is_empty()}>
                <h2>{ shop.say("record.latest") }</h2>
                <ul class="rows links">{ for entries.iter().take(LATEST).map(|entry| row(&shop, entry)) }</ul>
            </section>
        </Frame>
    }
}

fn row(shop: &Shop, entry: &Entry) -> Html {
    let stage =
        shop.content().family(&entry.family).map(|family| shop.stage(family.stage)).unwrap_or_default();
    let title = shop.family_title(&entry.family);
    let mark = shop.say(&format!("record.mark.{}", mark_slug(entry)));
    let certainty = shop.say(&format!("card.certainty.{}", entry.certainty.slug()));
    let to = Route::Entry { sequence: entry.stamp.sequence };
    html! {
        <li key={entry.stamp.sequence}>
            <a href={to.address()} class="row-link">
                { sign(SignKind::from(entry.mark)) }
                <span class="words"><b>{ title }</b><span>{ stage }{ ". " }{ mark }{ ". " }{ certainty }{ "." }</span>
                    <span class="note">{ clock::local(&entry.stamp.at) }</span></span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}

const fn mark_slug(entry: &Entry) -> &'static str {
    use crate::card::Mark;
    match entry.mark {
        Mark::Right => "right",
        Mark::Partly => "partly",
        Mark::Wrong => "wrong",
    }
}
