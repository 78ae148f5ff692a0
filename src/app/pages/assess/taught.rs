//! An instructor has taught a hazard again, and puts their name to it.

use super::office::stamp;
use crate::app::hooks::use_book;
use crate::app::parts::{Picture, icon};
use crate::app::state::{Keep, use_shop};
use crate::people::Member;
use crate::record::{AssessorName, Taught as TaughtEvent};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct TaughtProps {
    pub(super) member: Member,
    pub(super) by: AssessorName,
    /// Card families of the errors.
    pub(super) hazards: Vec<String>,
}

#[component]
pub(super) fn Taught(props: &TaughtProps) -> Html {
    let shop = use_shop();
    let books = use_book();
    let sure = use_state(|| None::<String>);
    let said = use_state(AttrValue::default);
    let row = |family: &String| {
        let asked = sure.as_ref() == Some(family);
        let ask = {
            let (sure, family) = (sure.clone(), family.clone());
            Callback::from(move |_: MouseEvent| sure.set((!asked).then(|| family.clone())))
        };
        let write = {
            let (books, shop, said, sure) = (books.clone(), shop.clone(), said.clone(), sure.clone());
            let (member, by, family) = (props.member.clone(), props.by.clone(), family.clone());
            Callback::from(move |_: MouseEvent| {
                let stamp = stamp(&shop, &books.book.journal, &member);
                let by = format!("{} ({})", by.name, by.number);
                let what = TaughtEvent { stamp, family: family.clone(), by }.into();
                let (shop, said) = (shop.clone(), said.clone());
                let done = Callback::from(move |stored: bool| {
                    said.set(shop.say(if stored { "assess.taught.done" } else { "assess.not-stored" }));
                });
                sure.set(None);
                books.write.emit(Keep { what, done });
            })
        };
        let named = [("name", props.member.name.clone()), ("by", props.by.name.clone())];
        html! {
            <li key={family.clone()} class="taught">
                <span class="words"><b>{ shop.family_title(family) }</b><span class="note">{ shop.say("assess.taught.why") }</span></span>
                <button key="ask" type="button" class="control" aria-expanded={asked.to_string()} onclick={ask}>
                    { shop.say(if asked { "assess.give-up" } else { "assess.taught.ask" }) }
                </button>
                <span key="sure" class="sure" hidden={!asked}>
                    <span>{ shop.say_with("assess.taught.sure", &named) }</span>
                    <button type="button" class="next-step" onclick={write}>{ icon(Picture::Pencil) }{ shop.say("assess.taught.go") }</button>
                </span>
            </li>
        }
    };
    html! {
        <section key="taught" hidden={props.hazards.is_empty() && said.is_empty()}>
            <h2>{ shop.say("assess.taught.title") }</h2>
            <p role="status">{ (*said).clone() }</p>
            <ul class="rows">{ for props.hazards.iter().map(row) }</ul>
        </section>
    }
}
