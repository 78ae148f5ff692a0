//! One answer of somebody, as the card that was seen.

use super::void::VoidForm;
use super::void_acts::void_mark;
use super::void_what::{known_voidings, of_answer};
use crate::app::hooks::{use_book, use_crew, use_sets};
use crate::app::pages::seen::{Beside, seen};
use crate::app::pages::sets::{kept_back, use_answers};
use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::{ContentContext, use_shop};
use crate::exchange::crew::Person;
use crate::record::{Event, EventName, Voids};
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
    let entry = crew.gathered.as_ref().and_then(|all| all.find(&name)).and_then(Event::answer);
    let answers = use_answers(entry.and_then(|entry| sets.find(entry.within.set()?)));
    let title = shop.say("crew.answer");
    // Which answers are kept back is known once the sets are.
    let Some(entry) = entry.filter(|_| sets.loaded) else {
        let reading = crew.gathered.is_none() || crew.busy || !sets.loaded;
        let said = if reading { "crew.reading" } else { "crew.no-answer" };
        return html! {
            <Frame class="sheet" {title} back={Some(Route::Crew)} cautions={shop.cautions_for(&[])}><p class="lead" role="status">{ shop.say(said) }</p></Frame>
        };
    };
    let view = crew.view.clone().unwrap_or_default();
    let of = |one: &&Person| view.gathered.as_ref().is_some_and(|all| one.has(all, &name));
    let person = view.people.iter().find(of);
    let back = person.map_or(Route::Crew, |one| Route::CrewPerson { key: one.key.clone() });
    let whose = person.map_or(entry.stamp.person.as_str(), |one| one.name.as_str());
    let title = shop.say_with("crew.answer-of", &[("person", whose.to_owned())]);
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
