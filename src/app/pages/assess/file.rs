//! What the employer has on file: what stands there, and what an assessor has seen of it.

use super::office::stamp;
use crate::app::hooks::use_book;
use crate::app::parts::{Field, Picture, icon, typed_into};
use crate::app::state::{Keep, Shop, use_shop};
use crate::content::{Competency, OnFile};
use crate::learn::observation::{Paper, on_file};
use crate::people::Member;
use crate::record::{AssessorName, Filed, Filing, LocalDate, Stamp, Unfit};
use crate::rules::term::Term;
use yew::prelude::*;

#[derive(Properties, PartialEq, Clone)]
pub(super) struct OnFileProps {
    pub(super) member: Member,
    pub(super) competency: Competency,
    pub(super) by: AssessorName,
    pub(super) today: LocalDate,
}

/// What is typed of a paper, and what came of it.
#[derive(Clone)]
struct Typed {
    what: UseStateHandle<Option<OnFile>>,
    on: UseStateHandle<String>,
    until: UseStateHandle<String>,
    wrong: UseStateHandle<WrongDays>,
    said: UseStateHandle<AttrValue>,
}

/// What is wrong with the first day of a paper and with its last; empty where nothing is.
type WrongDays = [AttrValue; 2];

#[component]
pub(super) fn OnFileForm(props: &OnFileProps) -> Html {
    let shop = use_shop();
    let books = use_book();
    let journal = books.book.journal.clone();
    let typed = use_typed(&props.competency);
    let OnFileProps { member, competency, today, .. } = props;
    let papers = on_file(journal.events(), member.number.text(), competency, *today);
    let onsubmit = {
        let (shop, typed, of) = (shop.clone(), typed.clone(), props.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let stamp = stamp(&shop, &books.book.journal, &of.member);
            match typed.filing(&shop, stamp, &of) {
                Err(wrong) => typed.wrong.set(wrong),
                Ok(filing) => {
                    typed.wrong.set(WrongDays::default());
                    books.write.emit(Keep { what: filing.into(), done: typed.told_stored(&shop) });
                }
            }
        })
    };
    let choice = |one: &OnFile| kind(&shop, *one, &typed.what);
    html! {
        <section class="on-file">
            <h2>{ shop.say("assess.file") }</h2>
            <p class="note">{ shop.say("assess.file-why") }</p>
            <ul class="rows" hidden={papers.is_empty()}>{ for papers.iter().map(|paper| row(&shop, paper)) }</ul>
            <details key="add">
                <summary>{ shop.say("assess.file-add") }</summary>
                <form class="form" {onsubmit}>
                    <fieldset class="setting"><legend>{ shop.say("assess.file-what") }</legend><div class="segments">{ for competency.on_file.iter().map(choice) }</div></fieldset>
                    <div class="pair">
                        <Field id="file-on" kind="date" label={shop.say("assess.file-on")} value={(*typed.on).clone()} on_input={typed_into(&typed.on)} wrong={typed.wrong[0].clone()} />
                        <Field id="file-until" kind="date" label={shop.say("assess.file-until")} hint={shop.say("assess.file-until-hint")} value={(*typed.until).clone()} on_input={typed_into(&typed.until)} wrong={typed.wrong[1].clone()} />
                    </div>
                    <button type="submit" class="control">{ icon(Picture::Pencil) }{ shop.say("assess.file-go") }</button>
                </form>
            </details>
            <p role="status">{ (*typed.said).clone() }</p>
        </section>
    }
}

#[hook]
fn use_typed(competency: &Competency) -> Typed {
    Typed {
        what: use_state(|| competency.on_file.first().copied()),
        on: use_state(String::new),
        until: use_state(String::new),
        wrong: use_state(WrongDays::default),
        said: use_state(AttrValue::default),
    }
}

impl Typed {
    /// The paper as an assessor has seen it.
    fn filing(&self, shop: &Shop, stamp: Stamp, of: &OnFileProps) -> Result<Filing, WrongDays> {
        let days = [&self.on, &self.until].map(|text| text.parse::<LocalDate>().ok());
        let (Some(what), [Some(on), Some(until)]) = (*self.what, days) else {
            let told = |unread| if unread { shop.say("assess.day-unfit") } else { AttrValue::default() };
            return Err(days.map(|day| told(day.is_none())));
        };
        let subject = of.member.number.to_string();
        let filing = Filing { stamp, subject, filed: Filed { what, on, until }, by: of.by.clone() };
        let unfit = filing.unfit();
        if unfit.is_empty() {
            return Ok(filing);
        }
        let told = |of_end: bool| {
            let one = unfit.iter().find(|one| (**one == Unfit::EndsBefore) == of_end);
            one.map_or_else(AttrValue::default, |one| shop.say(&format!("assess.unfit.{}", one.slug())))
        };
        Err([told(false), told(true)])
    }

    /// Says whether it was stored; then the days are empty for the next one.
    fn told_stored(&self, shop: &Shop) -> Callback<bool> {
        let (shop, said) = (shop.clone(), self.said.setter());
        let days = [self.on.setter(), self.until.setter()];
        Callback::from(move |stored: bool| {
            if stored {
                days.iter().for_each(|day| day.set(String::new()));
            }
            said.set(shop.say(if stored { "assess.filed" } else { "assess.not-stored" }));
        })
    }
}

/// A kind of paper, to be picked.
fn kind(shop: &Shop, one: OnFile, what: &UseStateHandle<Option<OnFile>>) -> Html {
    let picked = **what == Some(one);
    let onchange = {
        let what = what.setter();
        Callback::from(move |_: Event| what.set(Some(one)))
    };
    html! {
        <label key={one.slug()} class={classes!("unit", picked.then_some("picked"))}>
            <input type="radio" name="on-file" checked={picked} {onchange} /><span class="capital">{ shop.text(&format!("on-file.{}", one.slug())) }</span>
        </label>
    }
}

/// A paper that is on file.
fn row(shop: &Shop, paper: &Paper<'_>) -> Html {
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
}
