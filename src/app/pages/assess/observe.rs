//! The observation at the booth: one apprentice, one competency.

use super::agree::agreement_tables;
use super::begin::Begin;
use super::file::OnFileForm;
use super::form::Form;
use super::history::History;
use super::office::assessor;
use crate::app::hooks::{use_backing, use_book, use_keys_held, use_people, use_signed, use_watching};
use crate::app::parts::{Frame, Picture, Unlock, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::{Competency, OnFile};
use crate::device::clock;
use crate::learn::observation::Missing;
use crate::people::{Ready, Source};
use crate::record::Placed;
use crate::rules::term::Term;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct ObserveProps {
    pub(in crate::app) number: String,
    pub(in crate::app) slug: String,
}

#[component]
pub(in crate::app) fn Observe(props: &ObserveProps) -> Html {
    let shop = use_shop();
    let (people, keys, signed, watching) = (use_people(), use_keys_held(), use_signed(), use_watching());
    let journal = use_book().book.journal.clone();
    let knowledge = use_backing(&props.number);
    let said = use_state(AttrValue::default);
    let on_said = {
        let set = said.setter();
        Callback::from(move |text: AttrValue| set.set(text))
    };
    let member = people.crew.member(&props.number);
    let competency = shop.content().competency(&props.slug);
    let by = assessor(&keys);
    let own = by.as_ref().is_some_and(|by| by.number == props.number);
    let title =
        competency.map_or_else(AttrValue::default, |one| shop.text(&format!("competency.{}", one.slug)));
    let cautions = competency.map_or_else(|| shop.cautions_for(&[]), |one| shop.cautions_of_band(one.band));
    let now = clock::today().zip(clock::when());
    let body = match (member.zip(competency), by, now) {
        (None, ..) => html! { <p key="gone" class="lead">{ shop.say("assess.gone") }</p> },
        (_, None, _) => html! { <p key="locked" class="lead">{ shop.say("assess.locked") }</p> },
        (_, _, None) => {
            html! { <p key="clock" class="wrong" role="alert">{ shop.say("assess.unfit.no-day") }</p> }
        }
        _ if own => html! { <p key="own" class="kraft">{ shop.say("assess.unfit.own-work") }</p> },
        (Some((member, competency)), Some(by), Some((today, now))) => {
            let book = signed.book().map(|book| &**book);
            let knowledge = &Placed::of(knowledge.as_deref().unwrap_or(journal.events()));
            let source =
                Source { content: shop.content(), journal: &journal, knowledge, book, today, now: &now };
            let ready = source.ready(member, competency);
            let begun = watching.begun.iter().find(|one| one.is_of(&by.number, &props.number, &props.slug));
            // What the other one said is no news before one has judged oneself.
            let hidden = begun.is_some_and(|begun| begun.joined);
            let to_sign = Route::Sign { number: props.number.clone(), slug: props.slug.clone() };
            let competency = competency.clone();
            let who = format!("{} ({})", member.name, member.number);
            let (member, one) = (member.clone(), competency.clone());
            html! {
                <div key="body" class="observe">
                    { standing(&shop, &who, &ready, hidden) }
                    <p key="sign"><a href={to_sign.address()} class="control">{ icon(Picture::Pencil) }{ shop.say("sign-off.to-sign") }</a></p>
                    <p key="said" class="written" role="status">{ (*said).clone() }</p>
                    { match begun {
                        Some(begun) => html! { <Form key={format!("form-{}", begun.occasion)} member={member.clone()} {competency} begun={begun.clone()} by={by.clone()} {on_said} /> },
                        None => html! { <Begin key="begin" member={member.clone()} {competency} by={by.clone()} {today} {on_said} /> },
                    } }
                    <div key="file" hidden={one.on_file.is_empty()}><OnFileForm member={member.clone()} competency={one.clone()} by={by.clone()} {today} /></div>
                    <p key="hidden" class="note" hidden={!hidden}>{ shop.say("assess.hidden") }</p>
                    <div key="history" class="history" hidden={hidden}><History {member} competency={one.clone()} by={by.clone()} {today} /></div>
                    <div key="agree" hidden={begun.is_some()}>{ agreement_tables(&shop, &journal, &one) }</div>
                </div>
            }
        }
    };
    let back = Some(Route::AssessPerson { number: props.number.clone() });
    html! {
        <Frame class="sheet assess" {title} {back} {cautions}>
            <div key="unlock"><Unlock /></div>
            { body }
        </Frame>
    }
}

/// What it is about, and what is missing before it can be signed.
fn standing(shop: &Shop, who: &str, ready: &Ready<'_>, hidden: bool) -> Html {
    let competency = ready.competency;
    let slug = &competency.slug;
    let note = format!("competency-note.{slug}");
    let note = shop.texts().find(&note).unwrap_or_default().to_owned();
    let line = |key: &str, ok: bool, words: AttrValue| {
        let picture = if ok { Picture::Tick } else { Picture::Dash };
        html! { <li key={key.to_owned()} class={if ok { "ok" } else { "open" }}>{ icon(picture) }<span class="words">{ words }</span></li> }
    };
    let names = |slugs: &[&str]| {
        let names: Vec<String> =
            slugs.iter().map(|slug| shop.text(&format!("competency.{slug}")).to_string()).collect();
        names.join(", ")
    };
    let cards = if ready.evidence.suffices() { "assess.cards-yes" } else { "assess.cards-no" };
    let counted = ready.shown.count > 0;
    let missing = |missing: &Missing| match missing {
        // How many are missing stands in the line before; which points, says nothing before there is one.
        Missing::Demonstrations | Missing::Days => None,
        Missing::Criteria if !counted => None,
        other => Some(line(other.slug(), false, missing_words(shop, ready, *other))),
    };
    let short =
        [Missing::Demonstrations, Missing::Days].into_iter().find(|one| ready.shown.missing.contains(one));
    let more = short.map(|one| shop.say(&format!("assess.missing.{}", one.slug()))).unwrap_or_default();
    let shown = format!("{} {more}", shop.say_with("assess.shown-days", &counts(ready)));
    html! {
        <section key="standing" class="paper standing-list">
            <h2>{ who }</h2>
            <p class="lead">{ shop.say_with("assess.may", &[("may", shop.text(&format!("may.{slug}")).to_string())]) }</p>
            <p class="note" hidden={note.is_empty()}>{ note }</p>
            <ul hidden={hidden}>
                { if ready.signed { line("signed", true, shop.say("assess.signed")) } else { Html::default() } }
                { line("cards", ready.evidence.suffices(), shop.say(cards)) }
                { if ready.needs.is_empty() { Html::default() } else {
                    line("needs", false, shop.say_with("assess.needs", &[("names", names(&ready.needs))])) } }
                { if ready.needs_knowledge.is_empty() { Html::default() } else {
                    line("needs-knowledge", false, shop.say_with("assess.needs-knowledge", &[("names", names(&ready.needs_knowledge))])) } }
                { line("shown", short.is_none(), shown.into()) }
                { for ready.shown.missing.iter().filter_map(missing) }
            </ul>
        </section>
    }
}

fn counts(ready: &Ready<'_>) -> [(&'static str, String); 4] {
    let Competency { demonstrations, days, .. } = ready.competency;
    let told =
        [("n", ready.shown.count), ("of", *demonstrations), ("days", ready.shown.days), ("of-days", *days)];
    told.map(|(name, value)| (name, value.to_string()))
}

/// What is missing, with what it is of criteria and papers.
fn missing_words(shop: &Shop, ready: &Ready<'_>, missing: Missing) -> AttrValue {
    let words = shop.say(&format!("assess.missing.{}", missing.slug()));
    let more: Vec<String> = match missing {
        Missing::Criteria => {
            let word = |id: &str| shop.text(&format!("criterion.{id}")).to_string();
            ready.shown.to_see.iter().map(|one| word(&one.id)).collect()
        }
        Missing::OnFile => {
            let filed =
                |what| ready.shown.papers.iter().any(|it| it.in_force && it.filing.filed.what == what);
            let word = |what: &OnFile| shop.text(&format!("on-file.{}", what.slug())).to_string();
            ready.competency.on_file.iter().filter(|what| !filed(**what)).map(word).collect()
        }
        Missing::Settling | Missing::Demonstrations | Missing::Days => Vec::new(),
    };
    if more.is_empty() { words } else { format!("{words} {}.", more.join("; ")).into() }
}
