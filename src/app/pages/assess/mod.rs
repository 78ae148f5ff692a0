//! What assessors see: the apprentices and how far they are, and the observation at the booth.

mod agree;
mod begin;
mod criterion;
mod file;
mod form;
mod history;
mod observe;
mod office;
mod person;
mod stopwatch;
mod strike;
mod taught;
mod writing;

use crate::app::hooks::{use_book, use_keys_held, use_people, use_signed};
use crate::app::parts::{Frame, Picture, Unlock, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::device::clock;
use crate::people::{Far, Member, Source};
use crate::record::Placed;
use crate::rules::term::Term;
use yew::prelude::*;

pub(in crate::app) use observe::Observe;
pub(in crate::app) use person::AssessPerson;

#[component]
pub(in crate::app) fn Assess() -> Html {
    let shop = use_shop();
    let (people, keys, signed) = (use_people(), use_keys_held(), use_signed());
    let journal = use_book().book.journal.clone();
    let open = office::assessor(&keys);
    let book = signed.book();
    let source = clock::today().zip(clock::when());
    let members = people.crew.members();
    let rows = source.as_ref().filter(|_| open.is_some()).map(|(today, now)| {
        let knowledge = Placed::of(journal.events());
        let source = Source {
            content: shop.content(),
            journal: &journal,
            knowledge: &knowledge,
            book: book.map(|book| &**book),
            today: *today,
            now,
        };
        members.iter().map(|member| row(&shop, &source, member)).collect::<Html>()
    });
    let locked = rows.is_none();
    html! {
        <Frame class="sheet assess" title={shop.say("assess.title")} back={Some(Route::Home)} cautions={shop.cautions_for(&[])}>
            <div key="unlock"><Unlock /></div>
            <p key="clock" class="wrong" role="alert" hidden={source.is_some()}>{ shop.say("assess.unfit.no-day") }</p>
            <p key="locked" class="lead" hidden={!locked}>{ shop.say("assess.locked") }</p>
            <section key="crew" hidden={locked}>
                <h2>{ shop.say("assess.crew") }</h2>
                <ul class="rows links" hidden={members.is_empty()}>{ rows.unwrap_or_default() }</ul>
                <p class="lead" hidden={!members.is_empty()}>{ shop.say("assess.nobody") }</p>
            </section>
            <p key="people"><a class="text-link" href={Route::People.address()}>{ shop.say("assess.people") }</a></p>
        </Frame>
    }
}

/// An apprentice, and how many competencies are how far.
fn row<'a>(shop: &Shop, source: &Source<'a>, member: &'a Member) -> Html {
    let all: Vec<Far> =
        source.content.competencies.iter().map(|one| source.ready(member, one).far()).collect();
    let told = |far: &Far| {
        let n = all.iter().filter(|one| *one == far).count();
        (n > 0).then(|| shop.say_with(&format!("assess.count.{}", far.slug()), &[("n", n.to_string())]))
    };
    let counts: Vec<String> = Far::ALL.iter().filter_map(told).map(|told| told.to_string()).collect();
    let to = Route::AssessPerson { number: member.number.to_string() };
    html! {
        <li key={member.number.to_string()}>
            <a href={to.address()} class="row-link">
                <span class="words"><b>{ format!("{} ({})", member.name, member.number) }</b><span class="note">{ counts.join(" ") }</span></span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}
