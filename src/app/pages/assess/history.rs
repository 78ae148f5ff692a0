//! Everything that was written down of an apprentice at a competency, newest first.

use super::stopwatch::shown as minutes;
use super::strike::Strike;
use crate::app::hooks::{use_book, use_signed, use_watching};
use crate::app::parts::{Picture, icon};
use crate::app::state::{Shop, WatchingChange, use_shop};
use crate::content::Competency;
use crate::learn::observation::{Asked, Demonstration, Line, Shown, Worth, history, shown};
use crate::people::{Member, last_signed};
use crate::record::{AssessorName, Begun, Event, Judged, LocalDate, MIDNIGHT_DAYS, Observed, Stopwatch};
use crate::rules::term::Term;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct HistoryProps {
    pub(super) member: Member,
    pub(super) competency: Competency,
    pub(super) by: AssessorName,
    pub(super) today: LocalDate,
}

#[component]
pub(super) fn History(props: &HistoryProps) -> Html {
    let shop = use_shop();
    let (watching, signed) = (use_watching(), use_signed());
    let journal = use_book().book.journal.clone();
    let subject = props.member.number.text();
    let after = signed.book().and_then(|book| last_signed(book, &props.member, &props.competency.slug));
    let asked = Asked { subject, competency: &props.competency, after, today: props.today };
    let told = shown(journal.events(), &asked);
    let lines = history(journal.events(), subject, &props.competency, &props.by.number);
    // One that is begun already is not pushed off the desk.
    let busy =
        watching.begun.iter().any(|begun| begun.is_of(&props.by.number, subject, &props.competency.slug));
    let again = |one: &Demonstration<'_>| {
        let said = one.said.iter().find(|said| said.first.by.number == props.by.number)?;
        let begun = again(said.last, props.today);
        let onclick = watching.change.reform(move |_: MouseEvent| WatchingChange::Keep(begun.clone()));
        Some(html! {
            <>
                <p key="busy" class="note" hidden={!busy}>{ shop.say("assess.again-busy") }</p>
                <button key="again" type="button" class="control" disabled={busy} {onclick}>{ icon(Picture::Pencil) }{ shop.say("assess.again") }</button>
            </>
        })
    };
    let disputes = told.unsettled().map(|one| {
        let words = one.disputed(&props.competency).into_iter();
        let words: Vec<String> =
            words.map(|it| shop.text(&format!("criterion.{}", it.id)).to_string()).collect();
        let named = [("on", one.on.to_string()), ("points", words.join("; "))];
        html! { <div key={one.first().map(|first| first.occasion.clone()).unwrap_or_default()} class="kraft dispute"><p>{ shop.say_with("assess.dispute", &named) }</p>{ for again(one) }</div> }
    });
    let row = |line: &Line<'_>| line_row(&shop, line, &told, props);
    html! {
        <section>
            <h2>{ shop.say("assess.history") }</h2>
            { for disputes }
            <p class="note" hidden={!lines.is_empty()}>{ shop.say("assess.history-none") }</p>
            <ul class="rows">{ for lines.iter().map(row) }</ul>
        </section>
    }
}

/// The same demonstration judged again, from what was said last.
fn again(one: &Observed, today: LocalDate) -> Begun {
    Begun {
        by: one.by.number.clone(),
        subject: one.subject.clone(),
        competency: one.competency.clone(),
        occasion: one.occasion.clone(),
        joined: true,
        on: one.on.to_string(),
        paper: one.paper || today.number() - one.on.number() > MIDNIGHT_DAYS,
        work: one.work.clone(),
        alone: Some(one.alone),
        judged: one.judged.clone(),
        note: one.note.clone(),
        stopwatch: Stopwatch { seconds: one.seconds.unwrap_or(0), since: None },
    }
}

fn line_row(shop: &Shop, line: &Line<'_>, told: &Shown<'_>, props: &HistoryProps) -> Html {
    let stamp = line.event.stamp();
    let (title, words, worth) = match line.event {
        Event::Observed(one) => {
            let title = format!("{}: {}", one.on, one.work);
            (title, observed_words(shop, one), line.struck.is_none().then(|| worth_of(told, one)).flatten())
        }
        Event::Filed(one) => {
            let filed = one.filed;
            let days = [("on", filed.on.to_string()), ("until", filed.until.to_string())];
            let named = [("name", one.by.name.clone()), ("number", one.by.number.clone())];
            let words = format!(
                "{} {}",
                shop.say_with("assess.file-days", &days),
                shop.say_with("assess.paper-seen-by", &named)
            );
            (shop.text(&format!("on-file.{}", filed.what.slug())).to_string(), words, None)
        }
        Event::Answered(_)
        | Event::Attempt(_)
        | Event::Taught(_)
        | Event::Struck(_)
        | Event::Erased(_)
        | Event::Voided(_)
        | Event::Walked(_) => {
            return Html::default();
        }
    };
    let struck = line.struck.map(|struck| {
        let named = [("reason", struck.reason.clone()), ("name", struck.by.name.clone())];
        html! { <span key="why" class="struck-why">{ icon(Picture::Cross) }{ shop.say_with("assess.struck", &named) }</span> }
    });
    html! {
        <li key={format!("{}-{}", stamp.device, stamp.sequence)} class={classes!("written", struck.is_some().then_some("struck"))}>
            <span class="words">
                <b class="capital">{ title }</b>
                { for struck }
                { for worth.map(|worth| html! { <span key="worth" class={classes!("worth", worth.slug())}>{ icon(worth_picture(worth)) }{ shop.say(&format!("assess.worth.{}", worth.slug())) }</span> }) }
                <span class="note">{ words }</span>
            </span>
            { if line.may_strike {
                html! { <Strike key="strike" member={props.member.clone()} by={props.by.clone()} strikes={stamp.name()} /> }
            } else { Html::default() } }
        </li>
    }
}

/// What the demonstration is worth that an observation is of.
fn worth_of(told: &Shown<'_>, one: &Observed) -> Option<Worth> {
    let of = |demonstration: &Demonstration<'_>| {
        demonstration.first().is_some_and(|first| first.occasion == one.occasion)
    };
    told.demonstrations.iter().find(|(demonstration, _)| of(demonstration)).map(|(_, worth)| *worth)
}

const fn worth_picture(worth: Worth) -> Picture {
    match worth {
        Worth::Counts => Picture::Tick,
        Worth::Failed => Picture::Cross,
        Worth::Unsettled => Picture::Caution,
        Worth::Helped | Worth::Lapsed => Picture::Dash,
    }
}

fn observed_words(shop: &Shop, one: &Observed) -> String {
    let count = |judged: Judged| one.judged.values().filter(|other| **other == judged).count().to_string();
    let counts = [
        ("met", count(Judged::Met)),
        ("not-yet", count(Judged::NotYet)),
        ("not-seen", count(Judged::NotSeen)),
    ];
    let named = [("name", one.by.name.clone()), ("number", one.by.number.clone())];
    let mut words =
        vec![shop.say_with("assess.seen-counts", &counts), shop.say_with("assess.seen-by", &named)];
    let not_yet = one.judged.iter().filter(|(_, judged)| **judged == Judged::NotYet);
    let not_yet: Vec<String> =
        not_yet.map(|(id, _)| shop.text(&format!("criterion.{id}")).to_string()).collect();
    if !not_yet.is_empty() {
        words.push(shop.say_with("assess.seen-not-yet", &[("points", not_yet.join("; "))]));
    }
    // Such as one from another tablet whose clock was wrong.
    if let Some(unfit) = one.unfit().first() {
        words.push(shop.say(&format!("assess.unfit.{}", unfit.slug())));
    }
    if !one.alone {
        words.push(shop.say("assess.seen-helped"));
    }
    if one.paper {
        words.push(shop.say("assess.seen-paper"));
    }
    if let Some(seconds) = one.seconds {
        words.push(shop.say_with("assess.seen-time", &[("time", minutes(seconds))]));
    }
    if !one.note.is_empty() {
        words.push(one.note.clone().into());
    }
    words.iter().map(ToString::to_string).collect::<Vec<_>>().join(" ")
}
