//! Who may sign, by the trust list in force, and what its root key changes about it.

use super::change::{Change, Doing};
use super::save_key;
use crate::app::hooks::use_keys_held;
use crate::app::parts::{Picture, icon};
use crate::app::state::{Shop, use_shop};
use crate::device::clock;
use crate::rules::term::Term;
use crate::signoff::{Book, Person, WrappedKey, grouped};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties)]
pub(super) struct ListProps {
    pub(super) book: Rc<Book>,
}

impl PartialEq for ListProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.book, &other.book)
    }
}

#[component]
pub(super) fn SignerList(props: &ListProps) -> Html {
    let shop = use_shop();
    let keys = use_keys_held();
    let doing = use_state(|| None::<Doing>);
    let list = props.book.list();
    let choose = {
        let doing = doing.setter();
        Callback::from(move |what: Doing| doing.set(Some(what)))
    };
    let on_end = {
        let doing = doing.setter();
        Callback::from(move |()| doing.set(None))
    };
    let add = choose.reform(|_: MouseEvent| Doing::Add);
    let root = keys.wrapped(&list.root).cloned();
    let save_root = root.clone().map(|key| Callback::from(move |_: MouseEvent| save_key(&key, "root")));
    html! {
        <section class="signers">
            <h2>{ shop.say_with("people.signers", &[("shop", list.shop.clone())]) }</h2>
            <p class="note">{ shop.say_with("people.list", &[("n", list.number.to_string()), ("on", clock::local(list.issued.text()))]) }</p>
            <p>{ shop.say("people.fingerprint") }{ " " }<b class="digits">{ grouped(&list.root.fingerprint()) }</b></p>
            <ul class="rows">{ for list.people.iter().map(|person| row(&shop, person, keys.wrapped(&person.key), &choose)) }</ul>
            <div class="people">
                <button type="button" class="control" onclick={add}>{ shop.say("people.add-signer") }</button>
                <button type="button" class="control" hidden={save_root.is_none()} onclick={save_root.unwrap_or_default()}>{ icon(Picture::Save) }{ shop.say("people.save-root") }</button>
            </div>
            { if let Some(doing) = &*doing {
                html! { <Change key={doing.name()} doing={doing.clone()} book={props.book.clone()} root={root} {on_end} /> }
            } else { Html::default() } }
            <details key="lost"><summary>{ shop.say("people.lost") }</summary><p>{ shop.text("locked.lost-key") }</p><p>{ shop.text("locked.lost-root") }</p></details>
        </section>
    }
}

fn row(shop: &Shop, person: &Person, wrapped: Option<&WrappedKey>, choose: &Callback<Doing>) -> Html {
    let replace = {
        let person = person.clone();
        choose.reform(move |_: MouseEvent| Doing::Replace(person.clone()))
    };
    let end = {
        let person = person.clone();
        choose.reform(move |_: MouseEvent| Doing::End(person.clone()))
    };
    let save = wrapped.cloned().map(|key| {
        let number = person.number.clone();
        Callback::from(move |_: MouseEvent| save_key(&key, number.text()))
    });
    let role = shop.say(&format!("people.role.{}", person.role.slug()));
    let dates = match &person.to {
        None => shop.say_with("people.since", &[("from", clock::local(person.from.text()))]),
        Some(to) => shop.say_with(
            "people.ended",
            &[("from", clock::local(person.from.text())), ("to", clock::local(to.text()))],
        ),
    };
    let ended = person.to.is_some();
    let here = if wrapped.is_some() { shop.say("people.key-here") } else { shop.say("people.key-elsewhere") };
    html! {
        <li key={person.key.did()} class="signer">
            <span class="words">
                <b>{ format!("{} ({})", person.name, person.number) }</b>
                <span>{ role }{ ". " }{ dates }</span>
                <span class="note">{ here }{ " " }<span class="digits">{ grouped(&person.key.fingerprint()) }</span></span>
            </span>
            <span class="people">
                <button type="button" class="control" hidden={save.is_none()} onclick={save.unwrap_or_default()}>{ shop.say("people.save-key") }</button>
                <button type="button" class="control" hidden={ended} onclick={replace}>{ shop.say("people.replace") }</button>
                <button type="button" class="control" hidden={ended} onclick={end}>{ shop.say("people.end") }</button>
            </span>
        </li>
    }
}
