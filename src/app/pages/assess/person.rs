//! One apprentice as an assessor sees them: each competency and how far it is.

use super::office::assessor;
use super::taught::Taught;
use crate::app::hooks::{use_backing, use_book, use_keys_held, use_people, use_signed};
use crate::app::parts::{Frame, Picture, Unlock, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::Profile;
use crate::device::clock;
use crate::people::{Far, Member, Ready, Source};
use crate::record::Placed;
use crate::rules::term::{Stage, Term};
use crate::signoff::Role;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct AssessPersonProps {
    pub(in crate::app) number: String,
}

#[component]
pub(in crate::app) fn AssessPerson(props: &AssessPersonProps) -> Html {
    let shop = use_shop();
    let (people, keys, signed) = (use_people(), use_keys_held(), use_signed());
    let journal = use_book().book.journal.clone();
    let knowledge = use_backing(&props.number);
    let member = people.crew.member(&props.number);
    let by = assessor(&keys);
    // Whoever assesses watches and signs; to teach a hazard again is for an instructor.
    let teaches = keys.open.as_ref().is_some_and(|open| open.person.role == Role::Instructor);
    let now = clock::today().zip(clock::when());
    let title = member.map_or_else(|| props.number.clone(), |member| member.name.clone());
    let own = by.as_ref().is_some_and(|by| by.number == props.number);
    let body = match (member, &by, &now) {
        (None, ..) => html! { <p key="gone" class="lead">{ shop.say("people.nobody") }</p> },
        (_, None, _) => html! { <p key="locked" class="lead">{ shop.say("assess.locked") }</p> },
        (_, _, None) => {
            html! { <p key="clock" class="wrong" role="alert">{ shop.say("assess.unfit.no-day") }</p> }
        }
        _ if own => html! { <p key="own" class="kraft">{ shop.say("assess.unfit.own-work") }</p> },
        (Some(member), Some(by), Some((today, now))) => {
            let book = signed.book().map(|book| &**book);
            let elsewhere = knowledge.is_some();
            let knowledge = &Placed::of(knowledge.as_deref().unwrap_or(journal.events()));
            let source =
                Source { content: shop.content(), journal: &journal, knowledge, book, today: *today, now };
            let all: Vec<Ready<'_>> =
                shop.content().competencies.iter().map(|one| source.ready(member, one)).collect();
            html! {
                <div key="body" class="assess-person">
                    <p key="unreadable" class="kraft" role="alert" hidden={journal.unreadable() == 0}>
                        { shop.say_with("assess.unreadable", &[("n", journal.unreadable().to_string())]) }
                    </p>
                    <p key="elsewhere" class="kraft" hidden={!elsewhere}>{ shop.say("assess.elsewhere") }</p>
                    <p key="teaches" class="kraft" hidden={teaches || hazards(&all).is_empty()}>{ shop.say("assess.taught.instructor") }</p>
                    <div key="taught" hidden={!teaches}><Taught member={member.clone()} by={by.clone()} hazards={hazards(&all)} /></div>
                    { for Far::ALL.iter().map(|far| group(&shop, member, *far, &all)) }
                </div>
            }
        }
    };
    html! {
        <Frame class="sheet assess" {title} note={props.number.clone()} back={Some(Route::Assess)} cautions={shop.cautions_for(&[])}>
            <div key="unlock"><Unlock /></div>
            { body }
        </Frame>
    }
}

/// Errors about safety that an instructor must teach again, each family once.
fn hazards(all: &[Ready<'_>]) -> Vec<String> {
    let mut families: Vec<String> = Vec::new();
    let open = all.iter().flat_map(|one| &one.evidence.hazards);
    for hazard in open.filter(|hazard| hazard.wants_initials || hazard.must_be_taught()) {
        if !families.contains(&hazard.family) {
            families.push(hazard.family.clone());
        }
    }
    families
}

/// Those that are so far, by the bands of the board.
fn group(shop: &Shop, member: &Member, far: Far, all: &[Ready<'_>]) -> Html {
    let rows = Stage::ALL.iter().flat_map(|band| all.iter().filter(move |one| one.competency.band == *band));
    let rows: Vec<&Ready<'_>> = rows.filter(|one| one.far() == far).collect();
    html! {
        <section key={far.slug()} hidden={rows.is_empty()}>
            <h2>{ shop.say(&format!("assess.far.{}", far.slug())) }</h2>
            <ul class="rows links">{ for rows.iter().map(|one| row(shop, member, one)) }</ul>
        </section>
    }
}

fn row(shop: &Shop, member: &Member, one: &Ready<'_>) -> Html {
    let competency = one.competency;
    let slug = &competency.slug;
    let to = Route::Observe { number: member.number.to_string(), slug: slug.clone() };
    // The heading tells of the others how their cards stand.
    let cards = matches!(one.far(), Far::Watched | Far::Signed)
        .then(|| shop.say(if one.evidence.suffices() { "assess.cards-yes" } else { "assess.cards-no" }));
    let shown = [("n", one.shown.count.to_string()), ("of", competency.demonstrations.to_string())];
    html! {
        <li key={slug.clone()}>
            <a href={to.address()} class="row-link">
                <span class="words">
                    <b>{ shop.text(&format!("competency.{slug}")) }</b>
                    <span class="note">
                        { shop.stage(competency.band) }{ ". " }
                        { if competency.profile == Profile::Safety { shop.say("assess.safety") } else { AttrValue::default() } }{ " " }
                        { cards.unwrap_or_default() }{ " " }{ shop.say_with("assess.shown", &shown) }
                    </span>
                </span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}
