//! Sign-offs to look at again: answers that they rested on were found void since.

use crate::app::hooks::{theirs, use_book, use_crew, use_people, use_sets, use_signed};
use crate::app::pages::void_words;
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::exchange::crew::rests_on_void;
use crate::record::{Event, Voided};
use crate::signoff::Credential;
use std::borrow::Cow;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct AgainProps {
    /// The sign-off that is looked at; none for all of them.
    #[prop_or_default]
    pub(super) id: Option<String>,
}

#[component]
pub(super) fn Again(props: &AgainProps) -> Html {
    let shop = use_shop();
    let (books, crew, people, signed) = (use_book(), use_crew(), use_people(), use_signed());
    let sets = use_sets();
    use_effect_with(crew.load.clone(), |load| load.emit(()));
    let events = |one: &Credential| -> Vec<Cow<'_, Event>> {
        let number = one.subject.text();
        let person = crew.view.as_ref().and_then(|view| view.people.iter().find(|who| who.key == number));
        let gathered = crew.view.as_ref().and_then(|view| view.gathered.as_ref());
        if let (Some(gathered), Some(person)) = (gathered, person) {
            return theirs(gathered, person);
        }
        let journal = people.crew.member(number).map(|member| member.journal.as_str());
        let of = |event: &&Event| {
            matches!(event, Event::Voided(_)) || Some(event.stamp().person.as_str()) == journal
        };
        books.book.journal.events().iter().filter(of).map(Cow::Borrowed).collect()
    };
    let row = |one: &Credential| {
        let events = events(one);
        let events: Vec<&Event> = events.iter().map(|event| &**event).collect();
        let (answers, voids) =
            rests_on_void(shop.content(), &one.achievement.slug, one.from.date()?, &events);
        let voids: Vec<&Voided> = voids;
        let told = [("n", answers.to_string())];
        let title = format!("{} ({})", one.achievement.name, one.subject);
        (answers > 0).then(|| {
            html! {
                <li key={one.id.clone()} class="again">
                    { icon(Picture::Caution) }
                    <span class="words">
                        <b hidden={props.id.is_some()}><a class="text-link" href={Route::sign_off(&one.id).address()}>{ title }</a></b>
                        <span class="wrong">{ shop.say_with("crew.void.look-again", &told) }</span>
                        { for voids.iter().map(|void| void_words(&shop, &sets, void)) }
                    </span>
                </li>
            }
        })
    };
    let all = signed.book().map(|book| book.sign_offs()).unwrap_or_default();
    let stands = all.iter().filter(|entry| entry.withdrawn.is_none() && !entry.replaced);
    let asked = stands.filter(|entry| props.id.as_ref().is_none_or(|id| *id == entry.credential.id));
    let rows: Vec<Html> = asked.filter_map(|entry| row(&entry.credential)).collect();
    html! {
        <section class="look-again" hidden={rows.is_empty()}>
            <h2>{ shop.say("crew.void.again") }</h2>
            <ul class="rows">{ rows }</ul>
        </section>
    }
}
