//! One answer of somebody, as the card that was seen.

use crate::app::hooks::{use_crew, use_sets};
use crate::app::pages::seen::seen;
use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::{ContentContext, use_shop};
use crate::exchange::crew::Person;
use crate::record::{Event, EventName};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct CrewAnswerProps {
    pub(in crate::app) device: String,
    pub(in crate::app) sequence: u64,
}

#[component]
pub(in crate::app) fn CrewAnswer(props: &CrewAnswerProps) -> Html {
    let shop = use_shop();
    let (crew, sets) = (use_crew(), use_sets());
    use_effect_with(crew.load.clone(), |load| load.emit(()));
    // Cards may stand on sheets that came with the results.
    let shop = shop.on(crew.content.clone());
    let name = EventName { device: props.device.clone(), sequence: props.sequence };
    let entry = crew.gathered.as_ref().and_then(|all| all.find(&name)).and_then(Event::answer);
    let title = shop.say("crew.answer");
    let Some(entry) = entry else {
        let said = if crew.gathered.is_none() || crew.busy { "crew.reading" } else { "crew.no-answer" };
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
    html! {
        <ContextProvider<ContentContext> context={crew.content.clone()}>
            { seen(&shop, &sets, entry, &title, Some(back), Html::default()) }
        </ContextProvider<ContentContext>>
    }
}
