//! What a check says once it may: each answer with its verdict, sure and wrong first, and what the evidence comes to.

use super::close::Close;
use super::view::View;
use crate::app::hooks::{now, use_sets, use_told};
use crate::app::parts::{Frame, Picture, answer_row, evidence_bar, hazards, icon, missing, outcome};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::Competency;
use crate::device::{clock, page};
use crate::learn::check::{Now, answers_of, in_order};
use crate::learn::evidence::Evidence;
use crate::record::{Attempt, Attempts, Standing, Voids};
use std::rc::Rc;
use yew::prelude::*;

/// Id of the heading that takes the focus.
const HEADING: &str = "check-answers";

#[derive(Properties, PartialEq)]
pub(in crate::app) struct AnswersProps {
    pub(in crate::app) attempt: String,
    /// Told before the check is closed from here.
    #[prop_or_default]
    pub(in crate::app) closing: Callback<()>,
}

#[component]
pub(in crate::app) fn CheckAnswers(props: &AnswersProps) -> Html {
    let shop = use_shop();
    let (told, sets) = (use_told(), use_sets());
    use_effect_with((), |()| page::focus(HEADING));
    let found = use_memo((shop.clone(), Rc::clone(&told)), |(shop, told)| told.evidence(shop.content()));
    let view = use_memo((shop.clone(), Rc::clone(&told), props.attempt.clone()), |(shop, told, attempt)| {
        View::of(shop, &told.journal, attempt, now())
    });
    let back = Some(Route::Check);
    let (attempts, _) = Attempts::of(told.journal.events());
    let own = |one: &&Attempt<'_>| one.id == props.attempt && one.person == told.person;
    let Some(attempt) = attempts.all().iter().find(own) else {
        return html! {
            <Frame class="sheet" title={shop.say("check.title")} {back} cautions={shop.cautions_for(&[])}>
                <p class="lead">{ shop.say("check.no-such") }</p>
            </Frame>
        };
    };
    let closed = attempt.standing == Standing::Closed;
    let view = (*view).as_ref().filter(|_| !closed);
    let answers = in_order(answers_of(told.journal.events(), attempt.device, attempt.id));
    let (sealed, shown): (Vec<_>, Vec<_>) = answers.into_iter().partition(|entry| told.hides(entry));
    let voids = Voids::of(told.journal.events());
    let row = |entry: &&_| {
        let entry: &crate::record::Entry = entry;
        let to = Route::CheckAnswer { attempt: props.attempt.clone(), sequence: entry.stamp.sequence };
        answer_row(&shop, entry, sets.own_card(entry), &to, voids.touches(entry).is_some())
    };
    let head = match (closed, view.is_some_and(|view| view.done), view.is_some_and(|view| view.over)) {
        (true, ..) => "check.closed",
        (_, _, true) => "check.decided",
        (_, true, _) => "check.done",
        _ => "check.going-on",
    };
    let go = Route::Sitting { attempt: props.attempt.clone() };
    let action = html! {
        <div class="onward">
            <div key="close" hidden={view.is_none()}>
                <Close attempt={props.attempt.clone()} over={view.is_some_and(|view| view.over)} closing={props.closing.clone()} />
            </div>
            <a key="go" href={go.address()} class="next-step" hidden={view.is_none_or(|view| view.done)}>{ shop.say("check.go-on") }{ icon(Picture::Go) }</a>
            <a key="home" href={Route::Home.address()} class="next-step" hidden={view.is_some_and(|view| !view.done)}>{ shop.say("verdict.board") }</a>
        </div>
    };
    let of_it = found.iter().filter(|(one, _)| attempt.competencies.contains(&one.slug));
    html! {
        <Frame class="sheet check-answers" title={shop.say("check.title")} note={shop.competencies(attempt.competencies)} {back}
            cautions={shop.cautions_for(&[])} {action}>
            <h2 key="head" id={HEADING} tabindex="-1">{ shop.say(head) }</h2>
            <p key="sealed" class="kraft" hidden={sealed.is_empty()}>{ shop.say_with("check.sealed", &[("n", sealed.len().to_string())]) }</p>
            <section key="answers" hidden={shown.is_empty()}>
                <h2>{ shop.say("check.answers") }</h2>
                <ul class="rows links">{ for shown.iter().map(row) }</ul>
            </section>
            <section key="evidence" class="evidence">
                <h2>{ shop.say("evidence.head") }</h2>
                { for of_it.map(|one| now_at(&shop, one, told.now, view)) }
                <p class="note">{ shop.say("evidence.lead") }</p>
            </section>
        </Frame>
    }
}

/// What the evidence for one competency comes to now.
fn now_at(shop: &Shop, (competency, found): &(Competency, Evidence), now: Now, view: Option<&View>) -> Html {
    let to = Route::Competency { slug: competency.slug.clone() };
    let from = view.and_then(|view| view.from(&competency.slug)).map(clock::local_day).unwrap_or_default();
    html! {
        <div key={competency.slug.clone()} class="evidence-one">
            <h3 key="name"><a href={to.address()} class="text-link">{ shop.text(&format!("competency.{}", competency.slug)) }</a></h3>
            <div key="now" class="evidence-now">{ evidence_bar(shop, found) }{ outcome(shop, found) }</div>
            { hazards(shop, found, now.at) }
            { missing(shop, found) }
            <p key="from" hidden={from.is_empty()}>{ shop.say_with("check.from", &[("day", from.clone())]) }</p>
        </div>
    }
}
