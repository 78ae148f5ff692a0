//! One answer of somebody, as the card that was seen, or a decision of a walk.

use super::grid::name_of;
use super::void::VoidForm;
use super::void_acts::void_mark;
use super::void_what::{known_voidings, of_answer, of_decision};
use crate::app::hooks::{use_book, use_crew, use_sets};
use crate::app::pages::decided_told;
use crate::app::pages::seen::{Beside, seen};
use crate::app::pages::sets::{kept_back, use_answers};
use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::{BookContext, ContentContext, CrewContext, SetsContext, Shop, use_shop};
use crate::device::clock;
use crate::exchange::crew::Person;
use crate::record::{Decided, Event, EventName, Voids, Walked};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct CrewAnswerProps {
    pub(in crate::app) device: String,
    pub(in crate::app) sequence: u64,
}

#[component]
pub(in crate::app) fn CrewAnswer(props: &CrewAnswerProps) -> Html {
    let shop = use_shop();
    let (books, crew, sets) = (use_book(), use_crew(), use_sets());
    use_effect_with(crew.load.clone(), |load| load.emit(()));
    // Cards may stand on sheets that came with the results.
    let shop = shop.on(crew.content.clone());
    let name = EventName { device: props.device.clone(), sequence: props.sequence };
    let event = crew.gathered.as_ref().and_then(|all| all.find(&name));
    let entry = event.and_then(Event::answer);
    let answers = use_answers(entry.and_then(|entry| sets.find(entry.within.set()?)));
    if let Some((walked, decided)) = event.and_then(Event::walked).and_then(|one| Some((one, one.decided()?)))
    {
        return decision(&shop, &books, &crew, &sets, (walked, decided));
    }
    let title = shop.say("crew.answer");
    // Which answers are kept back is known once the sets are.
    let Some(entry) = entry.filter(|_| sets.loaded) else {
        let reading = crew.gathered.is_none() || crew.busy || !sets.loaded;
        let said = if reading { "crew.reading" } else { "crew.no-answer" };
        return html! {
            <Frame class="sheet" {title} back={Some(Route::Crew)} cautions={shop.cautions_for(&[])}><p class="lead" role="status">{ shop.say(said) }</p></Frame>
        };
    };
    let (back, whose) = whose(&shop, &crew, &name, &entry.stamp.person);
    let title = shop.say_with("crew.answer-of", &[("person", whose)]);
    // Whoever is still to be asked the same does not read it here.
    if answers.are_kept_back() {
        return html! {
            <Frame class="sheet" {title} back={Some(back)} cautions={shop.cautions_for(&[])}>{ kept_back(&shop, answers) }</Frame>
        };
    }
    let known = known_voidings(&books, &crew);
    let voids = Voids::of(&known);
    let choices = of_answer(&shop, &sets, entry);
    let beside = Beside {
        back: Some(back),
        above: html! { <><p key="whose" class="lead">{ &title }</p>{ void_mark(&shop, &sets, voids.touches(entry)) }</> },
        below: html! { <section key="void-form" class="paper"><VoidForm id="void-answer" {choices} /></section> },
        ..Beside::default()
    };
    html! {
        <ContextProvider<ContentContext> context={crew.content.clone()}>
            { seen(&shop, &sets, entry, &title, beside) }
        </ContextProvider<ContentContext>>
    }
}

/// Where it is gone back to, and what the person is called; `written` is what their events stand under.
fn whose(shop: &Shop, crew: &CrewContext, name: &EventName, written: &str) -> (Route, String) {
    let view = crew.view.clone().unwrap_or_default();
    let of = |one: &&Person| view.gathered.as_ref().is_some_and(|all| one.has(all, name));
    let person = view.people.iter().find(of);
    let back = person.map_or(Route::Crew, |one| Route::CrewPerson { key: one.key.clone() });
    (back, name_of(shop, person.map_or(written, |one| one.name.as_str())).to_string())
}

/// A decision of a walk.
fn decision(
    shop: &Shop,
    books: &BookContext,
    crew: &CrewContext,
    sets: &SetsContext,
    (walked, decided): (&Walked, &Decided),
) -> Html {
    let (back, whose) = whose(shop, crew, &walked.stamp.name(), &walked.stamp.person);
    let title = shop.say_with("walked.title-of", &[("person", whose)]);
    let known = known_voidings(books, crew);
    let voids = Voids::of(&known);
    let choices = of_decision(shop, decided);
    html! {
        <Frame class="sheet" {title} note={clock::local(&walked.stamp.at)} back={Some(back)} cautions={shop.cautions_for(&[])}>
            { void_mark(shop, sets, voids.touches_decided(decided)) }
            { decided_told(shop, walked, decided) }
            <section key="void-form" class="paper" hidden={choices.is_empty()}><VoidForm id="void-decision" {choices} /></section>
        </Frame>
    }
}
