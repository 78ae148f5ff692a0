//! The results of a tablet: what the file says of itself, and taken in as on the crew page.

use super::Opened;
use super::shown::ShownProps;
use crate::app::hooks::use_crew;
use crate::app::pages::crew::{Voidings, came};
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::device::clock;
use crate::device::files::Picked;
use crate::exchange::{Named, Ours};
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
    html! {
        <section class="paper opened">
            <p class="over">{ shop.say("open.kind.results") }</p>
            { told(&shop, &props.opened) }
            <div key="said" role="status">
                <p key="busy" class="note">{ if crew.busy { shop.say("crew.reading") } else { AttrValue::default() } }</p>
                <ul key="came" class="rows came" hidden={what.is_none()}>{ for what.map(|one| came(&shop, 0, one)) }</ul>
            </div>
            <div key="acts" class="people">
                <button key="take" type="button" class="next-step" hidden={taken} disabled={!ready} onclick={take}>{ icon(Picture::Tick) }{ shop.say("open.results.take") }</button>
                <a key="crew" href={Route::Crew.address()} class="next-step" hidden={!taken}>{ shop.say("open.to-crew") }{ icon(Picture::Go) }</a>
                <a key="leave" href={Route::Home.address()} class="control" hidden={taken}>{ shop.say("open.leave") }</a>
            </div>
            if taken { <Voidings /> }
        </section>
    }
}

/// Whose results they are, how many, and when the file was made.
fn told(shop: &Shop, opened: &Opened) -> Html {
    let Ours::Results(reading) = &opened.ours else { return Html::default() };
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
