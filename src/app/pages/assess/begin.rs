//! Begins an observation: a new one, one that another assessor watched too, or one from paper.

use crate::app::hooks::{use_book, use_watching};
use crate::app::parts::{Field, Picture, icon, typed_into};
use crate::app::state::{WatchingChange, use_shop};
use crate::content::Competency;
use crate::device::page;
use crate::learn::observation::{Demonstration, seconded};
use crate::people::Member;
use crate::record::{AssessorName, Begun, LocalDate, MIDNIGHT_DAYS, Stopwatch};
use std::collections::BTreeMap;
use yew::prelude::*;

/// Digits of the name of a demonstration: short enough to be told across the room.
const CODE_DIGITS: usize = 6;
/// Days within which one that another assessor watched is offered.
const JOIN_DAYS: i32 = 31;

#[derive(Properties, PartialEq, Clone)]
pub(super) struct BeginProps {
    pub(super) member: Member,
    pub(super) competency: Competency,
    pub(super) by: AssessorName,
    pub(super) today: LocalDate,
    pub(super) on_said: Callback<AttrValue>,
}

impl BeginProps {
    /// An observation with nothing in it.
    fn blank(&self, occasion: String) -> Begun {
        Begun {
            by: self.by.number.clone(),
            subject: self.member.number.to_string(),
            competency: self.competency.slug.clone(),
            occasion,
            joined: false,
            on: self.today.to_string(),
            paper: false,
            work: String::new(),
            alone: None,
            judged: BTreeMap::new(),
            note: String::new(),
            stopwatch: Stopwatch::default(),
        }
    }

    /// The same demonstration as another assessor watched.
    fn joined(&self, one: &Demonstration<'_>) -> Option<Begun> {
        let first = one.first()?;
        let paper = self.today.number() - one.on.number() > MIDNIGHT_DAYS;
        let blank = self.blank(first.occasion.clone());
        Some(Begun { joined: true, on: one.on.to_string(), paper, work: first.work.clone(), ..blank })
    }
}

#[component]
pub(super) fn Begin(props: &BeginProps) -> Html {
    let shop = use_shop();
    let watching = use_watching();
    let journal = use_book().book.journal.clone();
    let code = use_state(String::new);
    let wrong = use_state(AttrValue::default);
    let begin = {
        let (change, on_said) = (watching.change, props.on_said.clone());
        Callback::from(move |begun: Begun| {
            on_said.emit(AttrValue::default());
            change.emit(WatchingChange::Keep(begun));
        })
    };
    let new = {
        let props = props.clone();
        begin.reform(move |_: MouseEvent| props.blank(new_code()))
    };
    let paper = {
        let props = props.clone();
        begin.reform(move |_: MouseEvent| Begun { paper: true, on: String::new(), ..props.blank(new_code()) })
    };
    let theirs = Demonstration::of(journal.events(), |one| {
        one.subject == props.member.number.text() && one.competency == props.competency.slug
    });
    let offered: Vec<&Demonstration<'_>> = theirs
        .iter()
        .filter(|one| one.said.iter().all(|said| said.first.by.number != props.by.number))
        .filter(|one| props.today.number() - one.on.number() <= JOIN_DAYS)
        .collect();
    let offer = |one: &&Demonstration<'_>| {
        let (first, begun) = (one.first()?, props.joined(one)?);
        let told =
            [("on", one.on.to_string()), ("work", first.work.clone()), ("name", first.by.name.clone())];
        let onclick = begin.reform(move |_: MouseEvent| begun.clone());
        Some(html! {
            <button key={first.occasion.clone()} type="button" class="control" {onclick}>{ icon(Picture::Go) }{ shop.say_with("assess.join-one", &told) }</button>
        })
    };
    let join = {
        let (props, code, wrong, begin, shop) =
            (props.clone(), code.clone(), wrong.clone(), begin.clone(), shop.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let typed = code.trim().to_lowercase();
            let fits = typed.len() == CODE_DIGITS && typed.bytes().all(|byte| byte.is_ascii_hexdigit());
            if !fits {
                return wrong.set(shop.say("assess.code-unfit"));
            }
            begin.emit(Begun { joined: true, ..props.blank(typed) });
        })
    };
    let due = seconded(journal.events(), &props.by.number);
    let told = [("n", due.watched.to_string()), ("two", due.with_another.to_string())];
    html! {
        <section class="begin">
            <h2>{ shop.say("assess.begin") }</h2>
            <p class="kraft" hidden={!due.wants_another()}>{ shop.say_with("assess.second-due", &told) }</p>
            <div class="people">
                <button type="button" class="next-step" onclick={new}>{ shop.say("assess.begin-new") }{ icon(Picture::Go) }</button>
                <button type="button" class="control" onclick={paper}>{ icon(Picture::Record) }{ shop.say("assess.begin-paper") }</button>
            </div>
            <details key="join">
                <summary>{ shop.say("assess.join") }</summary>
                <p class="note">{ shop.say("assess.join-why") }</p>
                <div class="people">{ for offered.iter().filter_map(offer) }</div>
                <form class="form" onsubmit={join}>
                    <Field id="join-code" label={shop.say("assess.code")} hint={shop.say("assess.code-hint")} value={(*code).clone()} on_input={typed_into(&code)} wrong={(*wrong).clone()} />
                    <button type="submit" class="control">{ shop.say("assess.code-go") }</button>
                </form>
            </details>
        </section>
    }
}

/// A new name for a demonstration.
fn new_code() -> String {
    page::random_name().chars().take(CODE_DIGITS).collect()
}
