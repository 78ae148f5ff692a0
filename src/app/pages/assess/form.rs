//! The observation that is being made. Every touch is kept; it is in the journal once it is written down.

use super::criterion::criterion_field;
use super::stopwatch::StopwatchField;
use super::writing::{Writing, use_writing};
use crate::app::hooks::use_watching;
use crate::app::parts::{Field, Picture, icon};
use crate::app::state::{Shop, WatchingChange, use_shop};
use crate::content::{Competency, Criterion};
use crate::people::Member;
use crate::record::{AssessorName, Begun, Judged, Stopwatch};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq, Clone)]
pub(super) struct FormProps {
    pub(super) member: Member,
    pub(super) competency: Competency,
    pub(super) begun: Begun,
    pub(super) by: AssessorName,
    /// Told once it is written down.
    pub(super) on_said: Callback<AttrValue>,
}

/// What was touched so far, and how it is changed.
struct Making {
    begun: Rc<Begun>,
    keep: Callback<Begun>,
}

impl Making {
    /// What an event changes in it.
    fn change<E: 'static>(&self, change: impl Fn(&mut Begun, E) + 'static) -> Callback<E> {
        let begun = Rc::clone(&self.begun);
        self.keep.reform(move |event: E| {
            let mut next = (*begun).clone();
            change(&mut next, event);
            next
        })
    }
}

#[component]
pub(super) fn Form(props: &FormProps) -> Html {
    let shop = use_shop();
    let keep = use_watching().change.reform(WatchingChange::Keep);
    let Writing { wrong, busy, write } = use_writing(props);
    let making = Making { begun: Rc::new(props.begun.clone()), keep };
    let begun = &*making.begun;
    let to_paper = making.change(|next, _: MouseEvent| next.paper = true);
    let counts = [
        ("n", begun.judged.values().filter(|one| **one != Judged::NotSeen).count().to_string()),
        ("of", props.competency.criteria.len().to_string()),
    ];
    html! {
        <section class="form watch-form">
            <h2 key="title">{ shop.say(if begun.joined { "assess.form-joined" } else if begun.paper { "assess.form-paper" } else { "assess.form" }) }</h2>
            <p key="code" class="note" hidden={begun.paper}>{ shop.say_with("assess.form-code", &[("code", begun.occasion.clone())]) }</p>
            <div key="what" class="pair">
                <Field id="watch-work" label={shop.say("assess.work")} hint={shop.say("assess.work-hint")} value={begun.work.clone()} on_input={making.change(|next, text| next.work = text)} wrong={wrong.work.clone()} />
                <div hidden={!begun.paper}>
                    <Field id="watch-day" kind="date" label={shop.say("assess.day")} hint={shop.say("assess.day-hint")} value={begun.on.clone()} on_input={making.change(|next, text| next.on = text)} wrong={wrong.day.clone()} />
                </div>
                <div hidden={begun.paper}><StopwatchField stopwatch={begun.stopwatch.clone()} on_press={making.change(|next, pressed: Stopwatch| next.stopwatch = pressed)} /></div>
            </div>
            { criteria(&shop, &making, &props.competency.criteria) }
            { alone(&shop, &making, &wrong.alone) }
            <Field key="note" id="watch-note" label={shop.say("assess.note")} hint={shop.say("assess.note-hint")} value={begun.note.clone()} on_input={making.change(|next, text| next.note = text)} wrong={wrong.note.clone()} />
            <div key="day" hidden={begun.paper || wrong.day.is_empty()}>
                <p class="wrong" role="alert">{ wrong.day.clone() }</p>
                <button type="button" class="control" onclick={to_paper}>{ shop.say("assess.to-paper") }</button>
            </div>
            <p key="other" class="wrong" role="alert" hidden={wrong.other.is_empty()}>{ wrong.other.clone() }</p>
            <div key="go" class="write">
                <p>{ shop.say_with("assess.judged-count", &counts) }</p>
                <button type="button" class="next-step" disabled={busy} onclick={write}>{ icon(Picture::Pencil) }{ shop.say("assess.write") }</button>
                <ThrowAway begun={begun.clone()} />
            </div>
        </section>
    }
}

/// What is watched, point by point.
fn criteria(shop: &Shop, making: &Making, all: &[Criterion]) -> Html {
    let on_judge = making.change(|next, (id, judged): (String, Judged)| {
        next.judged.insert(id, judged);
    });
    let row = |(nth, one): (usize, &Criterion)| {
        criterion_field(shop, nth + 1, one, making.begun.judged.get(&one.id).copied(), &on_judge)
    };
    html! { <div key="criteria" class="criteria">{ for all.iter().enumerate().map(row) }</div> }
}

/// Whether it was done without help.
fn alone(shop: &Shop, making: &Making, wrong: &AttrValue) -> Html {
    let choice = |alone: bool, key: &str| {
        let picked = making.begun.alone == Some(alone);
        let onchange = making.change(move |next, _: Event| next.alone = Some(alone));
        html! {
            <label key={key.to_owned()} class={classes!("judge", picked.then_some("picked"))}>
                <input type="radio" name="alone" checked={picked} {onchange} />{ icon(if alone { Picture::Tick } else { Picture::Dash }) }<span>{ shop.say(key) }</span>
            </label>
        }
    };
    html! {
        <fieldset key="alone" class="criterion">
            <legend>{ shop.say("assess.alone") }</legend>
            <div class="judges">{ choice(true, "assess.alone-yes") }{ choice(false, "assess.alone-no") }</div>
            <p class="wrong" role="alert" hidden={wrong.is_empty()}>{ wrong.clone() }</p>
        </fieldset>
    }
}

#[derive(Properties, PartialEq)]
struct ThrowAwayProps {
    begun: Begun,
}

/// Lets go of it, once it is asked for twice.
#[component]
fn ThrowAway(props: &ThrowAwayProps) -> Html {
    let shop = use_shop();
    let change = use_watching().change;
    let sure = use_state(|| false);
    let onclick = {
        let (begun, sure) = (props.begun.clone(), sure.clone());
        Callback::from(move |_: MouseEvent| {
            if *sure {
                change.emit(WatchingChange::LetGo(begun.clone()));
            }
            sure.set(!*sure);
        })
    };
    html! {
        <button type="button" class="control" {onclick}>{ shop.say(if *sure { "assess.throw-away-sure" } else { "assess.throw-away" }) }</button>
    }
}
