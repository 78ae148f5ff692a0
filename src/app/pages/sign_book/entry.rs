//! One sign-off of the book: how it stands, what it says, its file and papers, withdrawing it, assessing again.

use super::again::Again;
use super::save_entry;
use super::withdraw::Withdraw;
use crate::app::hooks::{use_people, use_signed};
use crate::app::parts::{Frame, Picture, SignKind, icon, paper, refusals, says, sign};
use crate::app::route::{CREDENTIAL, Paper, Route};
use crate::app::state::{Shop, use_shop};
use crate::device::clock;
use crate::rules::term::Term;
use crate::signoff::{Book, Entry, Verdict, When, canonical, verify};
use serde_json::Value;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct SignOffProps {
    /// Its name without what all names begin with.
    pub(in crate::app) id: String,
    /// What of it is to be printed; none for the sign-off itself.
    pub(in crate::app) paper: Option<Paper>,
}

#[component]
pub(in crate::app) fn SignOff(props: &SignOffProps) -> Html {
    let shop = use_shop();
    let (people, signed) = (use_people(), use_signed());
    let name = format!("{CREDENTIAL}{}", props.id);
    let book = signed.book().cloned();
    let now = clock::when();
    let entry =
        book.as_ref().and_then(|book| book.sign_offs().iter().find(|entry| entry.credential.id == name));
    let found = book.as_deref().zip(entry).zip(now);
    let body = match &found {
        None => html! { <p key="gone" class="kraft">{ shop.say("book-entry.gone") }</p> },
        Some(((book, entry), now)) => {
            let verdict = verdict(&shop, book, entry, now);
            match props.paper {
                Some(which) => printed(&shop, which, book, &verdict, now),
                None => {
                    let here = people.crew.member(entry.credential.subject.text()).is_some();
                    shown(&shop, book, entry, &verdict, here)
                }
            }
        }
    };
    let title = match (props.paper, entry) {
        (Some(paper), _) => shop.say(&format!("paper.{}", paper.slug())),
        (None, Some(entry)) => AttrValue::from(entry.credential.achievement.name.clone()),
        (None, None) => shop.say("book.title"),
    };
    let back = if props.paper.is_some() { Route::SignOff { id: props.id.clone() } } else { Route::Book };
    let action = props.paper.map_or_else(Html::default, |_| paper::print_button(&shop));
    let key = props.paper.map_or("sign-off", Term::slug);
    html! {
        <Frame {key} class="sheet book" {title} back={Some(back)} cautions={shop.cautions_for(&[])} {action}>{ body }</Frame>
    }
}

/// What anybody would be told who is handed the file today, by the trust list in force and all that the book withdrew.
fn verdict(shop: &Shop, book: &Book, entry: &Entry, now: &When) -> Verdict {
    let file = book.file(entry).and_then(|file| canonical(&Value::Object(file.clone())).ok());
    verify(file.unwrap_or_default().as_bytes(), &book.list_now(), shop.content().shipped(), now)
}

fn printed(shop: &Shop, which: Paper, book: &Book, verdict: &Verdict, now: &When) -> Html {
    match (&verdict.credential, verdict.hash) {
        (Some(one), Some(hash)) if verdict.accepted() => {
            let checked = paper::Checked { one, hash, list: book.list(), on: now };
            paper::paper(shop, which, &checked)
        }
        _ => html! { <p class="kraft">{ shop.say("paper.not-accepted") }</p> },
    }
}

fn shown(shop: &Shop, book: &Book, entry: &Entry, verdict: &Verdict, here: bool) -> Html {
    let one = &entry.credential;
    let accepted = verdict.accepted() && !entry.replaced;
    let (class, kind, word) =
        if accepted { ("ok", SignKind::Right, "accepted") } else { ("wrong", SignKind::Wrong, "refused") };
    let id = one.id.strip_prefix(CREDENTIAL).unwrap_or(&one.id).to_owned();
    let door = |which: &Paper| {
        let to = Route::SignOffPaper { id: id.clone(), paper: *which };
        html! { <a key={which.slug()} class="control" href={to.address()}>{ icon(Picture::Print) }{ shop.say(&format!("paper.{}", which.slug())) }</a> }
    };
    let again = Route::Sign { number: one.subject.to_string(), slug: one.achievement.slug.clone() };
    html! {
        <div class="outcome">
            <section key="stands" class={classes!("verdict", class)}>
                <header>{ sign(kind) }<h2 id="stands" tabindex="-1">{ shop.text(&format!("verify.{word}")) }</h2></header>
                { refusals(shop, &verdict.reasons) }
                <p hidden={!entry.replaced}>{ shop.say("book-entry.replaced") }</p>
                <p class="note">{ shop.say_with("book-entry.record", &[("n", entry.record.to_string())]) }</p>
            </section>
            <Again key="again" id={one.id.clone()} />
            <div key="doors" class="people">
                <button type="button" class="control" onclick={save_entry(book, entry)}>{ icon(Picture::Save) }{ shop.say("book.save-file") }</button>
                <span class="people" hidden={!accepted}>{ for Paper::ALL.iter().map(door) }</span>
                <a class="control" href={again.address()} hidden={entry.replaced || !here}>{ icon(Picture::Pencil) }{ shop.say("book-entry.again") }</a>
            </div>
            { verdict.hash.map(|hash| says(shop, one, hash)).unwrap_or_default() }
            <div key="withdraw" hidden={entry.withdrawn.is_some()}><Withdraw id={one.id.clone()} /></div>
        </div>
    }
}
