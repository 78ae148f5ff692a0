//! Groups of screens that the menu leads to, each with what it is for.

use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::Shop;
use yew::prelude::*;

/// A screen: the key of its name, the key of what it is for, its address.
pub(super) type Link = (&'static str, &'static str, Route);

/// What whoever works does with their own answers.
pub(super) const WORK: [Link; 6] = [
    ("walk.title", "walk", Route::Walks),
    ("spray.title", "spray", Route::Sprays),
    ("home.check", "check", Route::Check),
    ("home.record", "record", Route::Record),
    ("home.bench", "bench", Route::Bench),
    ("open.title", "open", Route::Open),
];
/// What an instructor sets, hands out and looks at.
pub(super) const INSTRUCTOR: [Link; 6] = [
    ("sets.title", "sets", Route::Sets),
    ("own.title", "sheet", Route::Sheet),
    ("air.title", "air", Route::Air),
    ("crew.title", "crew", Route::Crew),
    ("folder.title", "folder", Route::Folder),
    ("programs.title", "programs", Route::Programs),
];
/// Who there is, and what they are signed off for.
pub(super) const PEOPLE: [Link; 5] = [
    ("assess.title", "assess", Route::Assess),
    ("people.title", "people", Route::People),
    ("asked.title", "asked", Route::Asked),
    ("book.title", "book", Route::Book),
    ("verify.title", "verify", Route::Verify),
];

pub(super) fn links(shop: &Shop, group: &'static str, all: &[Link]) -> Html {
    let row = |(name, slug, to): &Link| {
        html! {
            <li key={*slug}>
                <a href={to.address()} class="row-link">
                    <span class="words"><b>{ shop.say(name) }</b><span class="note">{ shop.say(&format!("menu.for.{slug}")) }</span></span>
                    { icon(Picture::Go) }
                </a>
            </li>
        }
    };
    html! {
        <section key={group}>
            <h2>{ shop.say(&format!("menu.{group}")) }</h2>
            <ul class="rows links">{ for all.iter().map(row) }</ul>
        </section>
    }
}
