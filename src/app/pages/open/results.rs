//! The results of a tablet, or what was found wrong on one: what the file says of itself, and taken in as on the crew page.

use super::shown::ShownProps;
use crate::app::hooks::use_crew;
use crate::app::pages::crew::{Voidings, came};
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::device::clock;
use crate::device::files::Picked;
use crate::exchange::{Named, Ours, Reading};
use std::rc::Rc;
use yew::prelude::*;

/// People who are named; more are counted.
const NAMED: usize = 5;

#[component]
pub(super) fn TakeResults(props: &ShownProps) -> Html {
    let shop = use_shop();
    let crew = use_crew();
    let asked = use_state(|| false);
    // What is kept here is joined with what comes, so it is read first.
    use_effect_with(crew.load.clone(), |load| load.emit(()));
    let ready = crew.gathered.is_some() && !crew.busy;
    let take = {
        let (opened, take, asked) = (Rc::clone(&props.opened), crew.take.clone(), asked.setter());
        Callback::from(move |_: MouseEvent| {
            asked.set(true);
            let (name, bytes) = (opened.name.clone(), opened.text.clone().into_bytes());
            take.emit(vec![Picked { name, bytes: Ok(bytes) }]);
        })
    };
    let over = *asked && ready;
    let what = crew.came.first().filter(|_| over);
    let taken = what.is_some_and(|one| one.what.is_ok());
    let Ours::Results(reading) = &props.opened.ours else { return Html::default() };
    let (kind, told, word) = if reading.is_finding() {
        ("open.kind.finding", finding_told(&shop, reading), "open.finding.take")
    } else {
        ("open.kind.results", told(&shop, reading), "open.results.take")
    };
    html! {
        <section class="paper opened">
            <p class="over">{ shop.say(kind) }</p>
            { told }
            <div key="said" role="status">
                <p key="busy" class="note">{ if crew.busy { shop.say("crew.reading") } else { AttrValue::default() } }</p>
                <ul key="came" class="rows came" hidden={what.is_none()}>{ for what.map(|one| came(&shop, 0, one)) }</ul>
            </div>
            <div key="acts" class="people">
                <button key="take" type="button" class="next-step" hidden={taken} disabled={!ready} onclick={take}>{ icon(Picture::Tick) }{ shop.say(word) }</button>
                <a key="crew" href={Route::Crew.address()} class="next-step" hidden={!taken}>{ shop.say("open.to-crew") }{ icon(Picture::Go) }</a>
                <a key="leave" href={Route::Home.address()} class="control" hidden={taken}>{ shop.say("open.leave") }</a>
            </div>
            if taken { <Voidings /> }
        </section>
    }
}

/// Whose results they are, how many, and when the file was made.
fn told(shop: &Shop, reading: &Reading) -> Html {
    let head = reading.head();
    let named = |one: &Named| format!("{} ({})", one.name, one.number);
    let mut names: Vec<String> = head.people.iter().take(NAMED).map(named).collect();
    if let Some(more @ 1..) = head.people.len().checked_sub(NAMED) {
        names.push(shop.say_with("open.results.more", &[("n", more.to_string())]).to_string());
    }
    let whose = match head.people.len() {
        0 => shop.say("open.results.nobody"),
        n => shop.say_with("open.results.of", &[("n", n.to_string()), ("names", names.join(", "))]),
    };
    let n = ("n", reading.events().to_string());
    // A bare list of events, as it was saved before there was such a file, does not say when.
    let holds = match head.at.as_str() {
        "" => shop.say_with("open.results.holds", &[n]),
        at => shop.say_with("open.results.holds-at", &[n, ("at", clock::local(at))]),
    };
    html! {
        <>
            <h2>{ whose }</h2>
            <p>{ holds }</p>
            <p class="note">{ shop.say("open.results.why") }</p>
        </>
    }
}

/// That it is what was found wrong, when that was written down, and what taking it does.
fn finding_told(shop: &Shop, reading: &Reading) -> Html {
    let at = &reading.head().at;
    html! {
        <>
            <h2>{ shop.say("open.finding.head") }</h2>
            <p hidden={at.is_empty()}>{ shop.say_with("open.finding.at", &[("at", clock::local(at))]) }</p>
            <p class="note">{ shop.say("open.finding.why") }</p>
        </>
    }
}
