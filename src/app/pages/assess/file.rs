//! What the employer has on file: what stands there, and what an assessor has seen of it.

use super::office::stamp;
use crate::app::hooks::use_book;
use crate::app::parts::{Field, Picture, icon, typed_into};
use crate::app::state::{Keep, use_shop};
use crate::content::{Competency, OnFile};
use crate::learn::observation::{Paper, on_file};
use crate::people::Member;
use crate::record::{AssessorName, Filed, Filing, LocalDate, Unfit};
use crate::rules::term::Term;
use yew::prelude::*;

#[derive(Properties, PartialEq, Clone)]
pub(super) struct OnFileProps {
    pub(super) member: Member,
    pub(super) competency: Competency,
    pub(super) by: AssessorName,
    pub(super) today: LocalDate,
}

#[component]
pub(super) fn OnFileForm(props: &OnFileProps) -> Html {
    let shop = use_shop();
    let books = use_book();
    let journal = books.book.journal.clone();
    let what = use_state(|| props.competency.on_file.first().copied());
    let (on, until) = (use_state(String::new), use_state(String::new));
    let wrong = use_state(<[AttrValue; 2]>::default);
    let said = use_state(AttrValue::default);
    let OnFileProps { member, competency, by, today } = props.clone();
    let papers = on_file(journal.events(), member.number.text(), &competency, today);
    let onsubmit = {
        let (shop, what, on, until) = (shop.clone(), what.clone(), on.clone(), until.clone());
        let (wrong, said, member) = (wrong.clone(), said.clone(), member.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let days = [&on, &until].map(|text| text.parse::<LocalDate>().ok());
            let unread = days.map(|day| day.is_none());
            if unread.contains(&true) {
                let told = |unread| if unread { shop.say("assess.day-unfit") } else { AttrValue::default() };
                return wrong.set(unread.map(told));
            }
            let (Some(what), [Some(from), Some(to)]) = (*what, days) else { return };
            let filing = Filing {
                stamp: stamp(&shop, &books.book.journal, &member),
                subject: member.number.to_string(),
                filed: Filed { what, on: from, until: to },
                by: by.clone(),
            };
            let unfit = filing.unfit();
            let told = |of_end: bool| {
                let one = unfit.iter().find(|one| (**one == Unfit::EndsBefore) == of_end);
                one.map_or_else(AttrValue::default, |one| shop.say(&format!("assess.unfit.{}", one.slug())))
            };
            wrong.set([told(false), told(true)]);
            if !unfit.is_empty() {
                return;
            }
            let (shop, said, on, until) = (shop.clone(), said.clone(), on.clone(), until.clone());
            let done = Callback::from(move |stored: bool| {
                if stored {
                    on.set(String::new());
                    until.set(String::new());
                }
                said.set(shop.say(if stored { "assess.filed" } else { "assess.not-stored" }));
            });
            books.write.emit(Keep { what: filing.into(), done });
        })
    };
    let choice = |one: &OnFile| {
        let (one, picked) = (*one, *what == Some(*one));
        let onchange = {
            let what = what.setter();
            Callback::from(move |_: Event| what.set(Some(one)))
        };
        html! {
            <label key={one.slug()} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name="on-file" checked={picked} {onchange} /><span class="capital">{ shop.text(&format!("on-file.{}", one.slug())) }</span>
            </label>
        }
    };
    let row = |paper: &Paper<'_>| {
        let filed = paper.filing.filed;
        let (picture, key) = if paper.in_force {
            (Picture::Tick, "assess.in-force")
        } else {
            (Picture::Cross, "assess.not-in-force")
        };
        let days = [("on", filed.on.to_string()), ("until", filed.until.to_string())];
        html! {
            <li key={format!("{}-{}", paper.filing.stamp.device, paper.filing.stamp.sequence)}>
                { icon(picture) }
                <span class="words"><b class="capital">{ shop.text(&format!("on-file.{}", filed.what.slug())) }</b><span>{ shop.say(key) }{ " " }{ shop.say_with("assess.file-days", &days) }</span></span>
            </li>
        }
    };
    html! {
        <section class="on-file">
            <h2>{ shop.say("assess.file") }</h2>
            <p class="note">{ shop.say("assess.file-why") }</p>
            <ul class="rows" hidden={papers.is_empty()}>{ for papers.iter().map(row) }</ul>
            <details key="add">
                <summary>{ shop.say("assess.file-add") }</summary>
                <form class="form" {onsubmit}>
                    <fieldset class="setting"><legend>{ shop.say("assess.file-what") }</legend><div class="segments">{ for competency.on_file.iter().map(choice) }</div></fieldset>
                    <div class="pair">
                        <Field id="file-on" kind="date" label={shop.say("assess.file-on")} value={(*on).clone()} on_input={typed_into(&on)} wrong={wrong[0].clone()} />
                        <Field id="file-until" kind="date" label={shop.say("assess.file-until")} hint={shop.say("assess.file-until-hint")} value={(*until).clone()} on_input={typed_into(&until)} wrong={wrong[1].clone()} />
                    </div>
                    <button type="submit" class="control">{ icon(Picture::Pencil) }{ shop.say("assess.file-go") }</button>
                </form>
            </details>
            <p role="status">{ (*said).clone() }</p>
        </section>
    }
}
