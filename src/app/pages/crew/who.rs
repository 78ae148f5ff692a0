//! Who did a set: a row a person, on the page of the set. Nothing is read or worked out before it is opened.

use super::called::{Called, use_called};
use super::done::{sets_done, told};
use super::export::save_done;
use super::grid::name_of;
use crate::app::hooks::{theirs, use_crew, use_sets};
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::{SetsContext, Shop, use_shop};
use crate::device::Slices;
use crate::exchange::crew::{DidSet, did_set};
use crate::record::Event;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Rows that are shown before more are asked for, and people who are named of those who did not begin it.
const FIRST: usize = 12;

/// Who did a set, and who of the results did not.
#[derive(Debug, Default, PartialEq)]
struct Who {
    did: Vec<DidSet>,
    not: Vec<String>,
}

#[derive(Properties, PartialEq)]
pub(in crate::app) struct WhoDidProps {
    /// Id of the set.
    pub(in crate::app) id: String,
    /// Whether it is open from the beginning.
    pub(in crate::app) open: bool,
}

#[component]
pub(in crate::app) fn WhoDid(props: &WhoDidProps) -> Html {
    let shop = use_shop();
    let crew = use_crew();
    let asked = use_state(|| props.open);
    let all = use_state(|| false);
    use_effect_with((crew.load.clone(), *asked), |(load, asked)| {
        if *asked {
            load.emit(());
        }
    });
    let called = use_called(crew.view.clone());
    let who = use_who(&shop, *asked, &props.id, called);
    let ontoggle = {
        let asked = asked.setter();
        Callback::from(move |_: web_sys::Event| asked.set(true))
    };
    let more = {
        let all = all.clone();
        Callback::from(move |_: MouseEvent| all.set(!*all))
    };
    let sets = use_sets();
    let save = {
        let (shop, sets, who) = (shop.clone(), sets.clone(), who.clone());
        Callback::from(move |_: MouseEvent| {
            let rows = who.iter().flat_map(|who| &who.did);
            save_done(
                &shop,
                &sets,
                rows.map(|one| (one.number.as_deref(), one.name.as_str(), one.times.as_slice())),
            );
        })
    };
    let ready = who.is_some() && !crew.busy;
    let who = who.unwrap_or_default();
    let shown = if *all { who.did.len() } else { FIRST };
    let nobody = ready && who.did.is_empty();
    html! {
        <details class="paper who-did" open={props.open} {ontoggle}>
            <summary><h2>{ shop.say("crew.did") }</h2></summary>
            <p key="said" class="note" role="status">{ if ready { AttrValue::default() } else { shop.say("crew.reading") } }</p>
            <p key="nobody" hidden={!nobody}>{ shop.say("crew.did.nobody") }</p>
            <ul key="rows" class="rows links done-rows" hidden={who.did.is_empty()}>{ for who.did.iter().take(shown).map(|one| row(&shop, one)) }</ul>
            <p key="not" class="note" hidden={who.not.is_empty()}>{ not_begun(&shop, &who.not) }</p>
            <p key="from" class="note">{ shop.say("crew.did.from") }</p>
            <div key="acts" class="people" hidden={who.did.is_empty()}>
                <button type="button" class="control" hidden={who.did.len() <= FIRST} aria-expanded={(*all).to_string()} onclick={more}>
                    { if *all { shop.say("crew.fewer") } else { shop.say_with("crew.all", &[("n", who.did.len().to_string())]) } }
                </button>
                <button type="button" class="control" onclick={save}>{ icon(Picture::Save) }{ shop.say("crew.csv") }</button>
            </div>
        </details>
    }
}

/// What a person did of it last; how often they did it, where that was more than once.
fn row(shop: &Shop, one: &DidSet) -> Html {
    let Some(last) = one.times.first() else { return Html::default() };
    let to = Route::CrewPerson { key: one.key.clone() };
    let times = [("n", one.times.len().to_string()), ("passed", one.passed().to_string())];
    let more = html! { <span class="note" hidden={one.times.len() < 2}>{ shop.say_with("crew.did.times", &times) }</span> };
    let number = one.number.as_ref().map(|number| format!(" ({number})")).unwrap_or_default();
    let name = AttrValue::from(format!("{}{number}", name_of(shop, &one.name)));
    html! {
        <li key={one.key.clone()}><a href={to.address()} class="row-link">{ told(shop, name, last, more) }{ icon(Picture::Go) }</a></li>
    }
}

fn not_begun(shop: &Shop, not: &[String]) -> AttrValue {
    let names: Vec<String> = not.iter().take(FIRST).map(|name| name_of(shop, name).to_string()).collect();
    let more = not.len() - names.len();
    let told = [("n", not.len().to_string()), ("names", names.join(", ")), ("more", more.to_string())];
    shop.say_with(if more > 0 { "crew.did.not-many" } else { "crew.did.not" }, &told)
}

/// Works it out, a person at a time, once it is asked for.
#[hook]
fn use_who(shop: &Shop, asked: bool, id: &str, called: Called) -> Option<Rc<Who>> {
    let found = use_state(|| None::<Rc<Who>>);
    let set = found.setter();
    let sets = use_sets();
    let known = (asked, called, sets.loaded, Rc::clone(&sets.all), id.to_owned());
    let shop = shop.clone();
    use_effect_with(known, move |(asked, called, loaded, _, id)| {
        let over = Rc::new(Cell::new(false));
        let ended = Rc::clone(&over);
        if *asked && *loaded && called.is_some() {
            let (called, id) = (Rc::clone(called), id.clone());
            spawn_local(async move {
                let who = work_out(&shop, &sets, &called, &id, &over).await;
                if !over.get() {
                    set.set(Some(Rc::new(who)));
                }
            });
        }
        move || ended.set(true)
    });
    (*found).clone()
}

async fn work_out(shop: &Shop, sets: &SetsContext, called: &Called, id: &str, over: &Cell<bool>) -> Who {
    let (mut who, mut slices) = (Who::default(), Slices::begin());
    for (gathered, person) in
        called.iter().flat_map(|(gathered, people)| people.iter().map(move |one| (gathered, one)))
    {
        let events = theirs(gathered, person);
        let events: Vec<&Event> = events.iter().map(|event| &**event).collect();
        match did_set(person, sets_done(shop, sets, &events), id) {
            Some(did) => who.did.push(did),
            None => who.not.push(person.name.clone()),
        }
        slices.rest().await;
        if over.get() {
            break;
        }
    }
    who
}
