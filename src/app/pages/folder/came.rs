//! What came from the folder: results that were taken in, sets and sheets that can be taken, and what was set aside.

use super::named;
use crate::app::hooks::{use_folder, use_sets, use_sheets};
use crate::app::parts::{Picture, icon};
use crate::app::state::{FolderAct, Keep, Origin, SetFile, SetsContext, SheetsContext, Shop, use_shop};
use crate::exchange::folder::{Aside, Name, Sort};
use crate::exchange::set::{Set, Withdrawal};
use crate::exchange::{OwnSheet, SHEET, read};
use std::rc::Rc;
use yew::prelude::*;

#[component]
pub(super) fn Came() -> Html {
    let shop = use_shop();
    let folder = use_folder();
    let kept = (use_sets(), use_sheets());
    let view = &folder.view;
    let counts = [("n", view.results.to_string()), ("coming", view.coming.to_string())];
    let key = if view.takes_results { "folder.results-count" } else { "folder.results-not" };
    html! {
        <section>
            <h2>{ shop.say("folder.came") }</h2>
            <p class="note">{ shop.say_with(key, &counts) }</p>
            <p key="none" hidden={!view.offered.is_empty() || !view.aside.is_empty()}>{ shop.say("folder.came-none") }</p>
            <ul key="offered" class="rows" hidden={view.offered.is_empty()}>
                { for view.offered.iter().map(|(name, text)| offered(&shop, &folder.act, &kept, name, text)) }
            </ul>
            <ul key="aside" class="rows" hidden={view.aside.is_empty()}>
                { for view.aside.iter().map(|(name, why)| aside(&shop, &folder.act, name, why)) }
            </ul>
        </section>
    }
}

fn offered(
    shop: &Shop,
    act: &Callback<FolderAct>,
    kept: &(SetsContext, SheetsContext),
    name: &Name,
    text: &str,
) -> Html {
    let done = {
        let (act, name) = (act.clone(), name.clone());
        move || act.emit(FolderAct::Done(name.clone()))
    };
    let take = {
        let ((sets, sheets), name, text, done) = (kept.clone(), name.clone(), text.to_owned(), done.clone());
        let content = shop.content().clone();
        Callback::from(move |_: MouseEvent| {
            let bytes = text.as_bytes();
            let done = done.clone();
            let stored = Callback::from(move |stored: bool| {
                if stored {
                    done();
                }
            });
            // What cannot be read was set aside before it was offered.
            let set = match name.sort() {
                Sort::Set => {
                    Set::read(bytes, &content).ok().map(|set| SetFile::Set(Rc::new(set), Origin::Taken))
                }
                Sort::Withdrawal => Withdrawal::read(bytes).ok().map(|one| SetFile::Withdrawal(Rc::new(one))),
                Sort::Sheet => {
                    if let Ok(what) = read::<OwnSheet>(bytes, SHEET) {
                        sheets.put.emit(Keep { what, done: stored.clone() });
                    }
                    None
                }
                Sort::Mark | Sort::Results => None,
            };
            if let Some(what) = set {
                sets.keep.emit(Keep { what, done: stored });
            }
        })
    };
    let leave = Callback::from(move |_: MouseEvent| done());
    html! {
        <li key={name.as_str().to_owned()} class="filed">
            <span class="words">{ named(shop, name) }<span>{ called(shop, name, text) }</span></span>
            <button type="button" class="control" onclick={take}>{ shop.say("folder.take") }</button>
            <button type="button" class="control" onclick={leave}>{ shop.say("folder.leave") }</button>
        </li>
    }
}

/// What the file calls itself.
fn called(shop: &Shop, name: &Name, text: &str) -> String {
    let bytes = text.as_bytes();
    let told = match name.sort() {
        Sort::Set => Set::read(bytes, shop.content()).ok().map(|set| (set.title.clone(), set.by.clone())),
        Sort::Sheet => read::<OwnSheet>(bytes, SHEET).ok().map(|own| (own.name, own.by)),
        Sort::Mark | Sort::Results | Sort::Withdrawal => None,
    };
    told.map_or_else(String::new, |(title, by)| {
        shop.say_with("folder.called", &[("title", title), ("by", by)]).to_string()
    })
}

fn aside(shop: &Shop, act: &Callback<FolderAct>, name: &Name, why: &Aside) -> Html {
    let said = match why {
        Aside::Refused(slug, told) => {
            let told: Vec<(&str, String)> =
                told.iter().map(|(key, value)| (key.as_str(), value.clone())).collect();
            shop.say_with(&format!("folder.unread.{slug}"), &told)
        }
        Aside::NotGiven(status) => shop.say_with("folder.aside.not-given", &[("status", status.to_string())]),
        Aside::NotItsName | Aside::TooLarge => shop.say(&format!("folder.aside.{}", why.slug())),
    };
    let again = {
        let (act, name) = (act.clone(), name.clone());
        Callback::from(move |_: MouseEvent| act.emit(FolderAct::Again(name.clone())))
    };
    html! {
        <li key={name.as_str().to_owned()} class="filed wrong">
            { icon(Picture::Caution) }
            <span class="words">{ named(shop, name) }<span>{ said }</span></span>
            <button type="button" class="control" onclick={again}>{ shop.say("folder.fetch-again") }</button>
        </li>
    }
}
