//! Sets that people did, as rows: when, how, how many right, passed or not, or why that is not said.

use super::export::save_done;
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::{SetsContext, Shop};
use crate::device::clock;
use crate::exchange::crew::{Came, KnownSet, Person, SetDone, Way};
use crate::record::Event;
use crate::rules::term::Term;
use yew::prelude::*;

/// What a set is called; the name that checks have for it where it is not on this tablet.
pub(super) fn set_title(shop: &Shop, known: &SetsContext, set: &str) -> AttrValue {
    let title = known.find(set).map_or(set, |kept| &kept.set.title);
    shop.set_title(set, title)
}

/// Sets that somebody did, the latest first; `events` are theirs, and those that void something.
pub(in crate::app) fn sets_done(shop: &Shop, sets: &SetsContext, events: &[&Event]) -> Vec<SetDone> {
    let known = |id: &str| {
        let kept = sets.find(id)?;
        Some(KnownSet { set: &kept.set, withdrawn: kept.withdrawn.as_deref() })
    };
    crate::exchange::crew::sets_done(shop.content(), events, known)
}

/// All sets that somebody did; nothing is said before the shelf of sets was read.
pub(super) fn done_section(shop: &Shop, sets: &SetsContext, person: &Person, all: Vec<SetDone>) -> Html {
    let row = |one: &SetDone| {
        let to = sets.find(&one.set).map(|kept| Route::SetOf { id: kept.id.clone() });
        let title = match to {
            Some(_) => set_title(shop, sets, &one.set),
            None => shop.say("crew.done.unknown"),
        };
        html! {
            <li key={format!("{}-{}", one.set, one.name)}>
                { match to {
                    Some(to) => html! { <a href={to.address()} class="row-link">{ told(shop, title, one, Html::default()) }{ icon(Picture::Go) }</a> },
                    None => told(shop, title, one, Html::default()),
                } }
            </li>
        }
    };
    let (rows, hidden): (Html, bool) = (all.iter().map(row).collect(), all.is_empty() || !sets.loaded);
    let (number, name) = (person.number.clone(), person.name.clone());
    let save = {
        let (shop, sets) = (shop.clone(), sets.clone());
        Callback::from(move |_: MouseEvent| {
            save_done(&shop, &sets, std::iter::once((number.as_deref(), name.as_str(), all.as_slice())));
        })
    };
    html! {
        <section key="sets-done" {hidden}>
            <h2>{ shop.say("crew.done") }</h2>
            <ul class="rows links done-rows">{ rows }</ul>
            <p class="people"><button type="button" class="control" onclick={save}>{ icon(Picture::Save) }{ shop.say("crew.csv") }</button></p>
        </section>
    }
}

/// A sign, what it came to in words, and what more there is to say.
pub(super) fn told(shop: &Shop, title: AttrValue, one: &SetDone, more: Html) -> Html {
    let day = one.day.map(clock::local_day).unwrap_or_default();
    let way = shop.say(&format!("crew.done.way.{}", one.way.slug()));
    let figures = [("right", one.right.to_string()), ("of", one.of.to_string())];
    // Of a check that is under way nothing is told before its end.
    let untold = one.came == Came::UnderWay && one.way != Way::Practise;
    let figures = (!untold).then(|| format!(" {}.", shop.say_with("crew.done.right", &figures)));
    let void = [("n", one.void.to_string())];
    html! {
        <>
            { icon(picture(one.came)) }
            <span class="words"><b>{ title }</b>
                <span>{ format!("{day}. {way}.{}", figures.unwrap_or_default()) }</span>
                <span class={classes!("came-to", one.came.slug())}>{ came_words(shop, one) }</span>
                <span class="note" hidden={one.void == 0}>{ shop.say_with("crew.done.void", &void) }</span>
                { more }
            </span>
        </>
    }
}

/// What came of it, and why where it is not judged.
pub(in crate::app) fn came_words(shop: &Shop, one: &SetDone) -> AttrValue {
    let key = format!("crew.done.{}", one.came.slug());
    let left = one.of.saturating_sub(one.answered);
    shop.say_with(&key, &[("left", left.to_string())])
}

/// The sign of it; its outline alone tells it from the others.
const fn picture(came: Came) -> Picture {
    match came {
        Came::Passed => Picture::Tick,
        Came::NotPassed => Picture::Cross,
        Came::Done => Picture::Check,
        Came::UnderWay => Picture::Pencil,
        _ => Picture::NotEnough,
    }
}
