//! The observation that is being made. Every touch is kept; it is in the journal once it is written down.

use super::criterion::criterion_field;
use super::office::stamp;
use super::stopwatch::{StopwatchField, ran};
use crate::app::hooks::{use_book, use_watching};
use crate::app::parts::{Field, Picture, icon};
use crate::app::state::{Keep, Shop, WatchingChange, use_shop};
use crate::content::{Competency, Criterion};
use crate::people::Member;
use crate::record::{AssessorName, Begun, Judged, Observed, Stopwatch, Unfit, WORK_MOST, is_plain, plain};
use crate::rules::term::Term;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct FormProps {
    pub(super) member: Member,
    pub(super) competency: Competency,
    pub(super) begun: Begun,
    pub(super) by: AssessorName,
    /// Told once it is written down.
    pub(super) on_said: Callback<AttrValue>,
}

/// What is wrong, field by field; empty where nothing is.
#[derive(Clone, Default, PartialEq)]
struct Wrong {
    day: AttrValue,
    work: AttrValue,
    alone: AttrValue,
    note: AttrValue,
    other: AttrValue,
}

#[component]
pub(super) fn Form(props: &FormProps) -> Html {
    let shop = use_shop();
    let (books, watching) = (use_book(), use_watching());
    let wrong = use_state(Wrong::default);
    let busy = use_state(|| false);
    let begun = Rc::new(props.begun.clone());
    let keep = watching.change.reform(WatchingChange::Keep);
    let on_judge = {
        let begun = Rc::clone(&begun);
        keep.reform(move |(id, judged): (String, Judged)| {
            let mut next = (*begun).clone();
            next.judged.insert(id, judged);
            next
        })
    };
    let with = |change: fn(&mut Begun, String)| {
        let begun = Rc::clone(&begun);
        keep.reform(move |text: String| {
            let mut next = (*begun).clone();
            change(&mut next, text);
            next
        })
    };
    let on_press = {
        let begun = Rc::clone(&begun);
        keep.reform(move |stopwatch: Stopwatch| Begun { stopwatch, ..(*begun).clone() })
    };
    let alone_choice = |alone: bool, key: &str| {
        let (begun, picked) = (Rc::clone(&begun), begun.alone == Some(alone));
        let onchange = keep.reform(move |_: Event| Begun { alone: Some(alone), ..(*begun).clone() });
        html! {
            <label key={key.to_owned()} class={classes!("judge", picked.then_some("picked"))}>
                <input type="radio" name="alone" checked={picked} {onchange} />{ icon(if alone { Picture::Tick } else { Picture::Dash }) }<span>{ shop.say(key) }</span>
            </label>
        }
    };
    let sure = use_state(|| false);
    let give_up = {
        let (begun, sure, change) = (Rc::clone(&begun), sure.clone(), watching.change.clone());
        Callback::from(move |_: MouseEvent| {
            if *sure {
                change.emit(WatchingChange::LetGo((*begun).clone()));
            }
            sure.set(!*sure);
        })
    };
    let to_paper = {
        let begun = Rc::clone(&begun);
        keep.reform(move |_: MouseEvent| Begun { paper: true, ..(*begun).clone() })
    };
    let write = {
        let (shop, begun, wrong, busy) = (shop.clone(), Rc::clone(&begun), wrong.clone(), busy.clone());
        let (change, on_said) = (watching.change.clone(), props.on_said.clone());
        let (member, by, competency) = (props.member.clone(), props.by.clone(), props.competency.clone());
        Callback::from(move |_: MouseEvent| {
            if *busy {
                return;
            }
            let criteria = competency.criteria.iter().map(|one| one.id.as_str());
            let stamp = stamp(&shop, &books.book.journal, &member);
            let observed = begun.observed(stamp, criteria, ran(&begun.stopwatch), by.clone());
            let unfit = observed.as_ref().map(Observed::unfit).unwrap_or_default();
            let found = Wrong::of(&shop, &begun, &unfit);
            let fine = found == Wrong::default();
            wrong.set(found);
            let (true, Some(observed)) = (fine, observed) else { return };
            busy.set(true);
            let (shop, begun, busy, wrong) = (shop.clone(), Rc::clone(&begun), busy.clone(), wrong.clone());
            let (change, on_said) = (change.clone(), on_said.clone());
            let done = Callback::from(move |stored: bool| {
                busy.set(false);
                if stored {
                    on_said.emit(shop.say("assess.written"));
                    change.emit(WatchingChange::LetGo((*begun).clone()));
                } else {
                    wrong.set(Wrong { other: shop.say("assess.not-stored"), ..Wrong::default() });
                }
            });
            books.write.emit(Keep { what: observed.into(), done });
        })
    };
    let judged = begun.judged.values().filter(|one| **one != Judged::NotSeen).count();
    let counts = [("n", judged.to_string()), ("of", props.competency.criteria.len().to_string())];
    let row = |(nth, one): (usize, &Criterion)| {
        criterion_field(&shop, nth + 1, one, begun.judged.get(&one.id).copied(), &on_judge)
    };
    html! {
        <section class="form watch-form">
            <h2 key="title">{ shop.say(if begun.joined { "assess.form-joined" } else if begun.paper { "assess.form-paper" } else { "assess.form" }) }</h2>
            <p key="code" class="note" hidden={begun.paper}>{ shop.say_with("assess.form-code", &[("code", begun.occasion.clone())]) }</p>
            <div key="what" class="pair">
                <Field id="watch-work" label={shop.say("assess.work")} hint={shop.say("assess.work-hint")} value={begun.work.clone()} on_input={with(|next, text| next.work = text)} wrong={wrong.work.clone()} />
                <div hidden={!begun.paper}>
                    <Field id="watch-day" kind="date" label={shop.say("assess.day")} hint={shop.say("assess.day-hint")} value={begun.on.clone()} on_input={with(|next, text| next.on = text)} wrong={wrong.day.clone()} />
                </div>
                <div hidden={begun.paper}><StopwatchField stopwatch={begun.stopwatch.clone()} {on_press} /></div>
            </div>
            <div key="criteria" class="criteria">{ for props.competency.criteria.iter().enumerate().map(row) }</div>
            <fieldset key="alone" class="criterion">
                <legend>{ shop.say("assess.alone") }</legend>
                <div class="judges">{ alone_choice(true, "assess.alone-yes") }{ alone_choice(false, "assess.alone-no") }</div>
                <p class="wrong" role="alert" hidden={wrong.alone.is_empty()}>{ wrong.alone.clone() }</p>
            </fieldset>
            <Field key="note" id="watch-note" label={shop.say("assess.note")} hint={shop.say("assess.note-hint")} value={begun.note.clone()} on_input={with(|next, text| next.note = text)} wrong={wrong.note.clone()} />
            <div key="day" hidden={begun.paper || wrong.day.is_empty()}>
                <p class="wrong" role="alert">{ wrong.day.clone() }</p>
                <button type="button" class="control" onclick={to_paper}>{ shop.say("assess.to-paper") }</button>
            </div>
            <p key="other" class="wrong" role="alert" hidden={wrong.other.is_empty()}>{ wrong.other.clone() }</p>
            <div key="go" class="write">
                <p>{ shop.say_with("assess.judged-count", &counts) }</p>
                <button type="button" class="next-step" disabled={*busy} onclick={write}>{ icon(Picture::Pencil) }{ shop.say("assess.write") }</button>
                <button type="button" class="control" onclick={give_up}>{ shop.say(if *sure { "assess.throw-away-sure" } else { "assess.throw-away" }) }</button>
            </div>
        </section>
    }
}

impl Wrong {
    fn of(shop: &Shop, begun: &Begun, unfit: &[Unfit]) -> Self {
        let say = |one: Unfit| shop.say(&format!("assess.unfit.{}", one.slug()));
        let mut wrong = Self::default();
        if begun.day().is_none() {
            wrong.day = shop.say("assess.day-unfit");
        }
        if begun.alone.is_none() {
            wrong.alone = shop.say("assess.alone-missing");
        }
        // Said at once with the others, though nothing is made of it without them.
        if plain(&begun.work).is_empty() {
            wrong.work = say(Unfit::WorkMissing);
        }
        for one in unfit {
            match one {
                Unfit::DayToCome | Unfit::EarlierDay | Unfit::TooOld => wrong.day = say(*one),
                Unfit::WorkMissing => {}
                Unfit::WordsUnfit if !is_plain(&plain(&begun.work), WORK_MOST) => wrong.work = say(*one),
                Unfit::WordsUnfit => wrong.note = say(*one),
                _ => wrong.other = say(*one),
            }
        }
        // The fields may be scrolled out of sight.
        if wrong != Self::default() && wrong.other.is_empty() {
            wrong.other = shop.say("assess.missing-above");
        }
        wrong
    }
}
