//! What the holder of the root key changes about the trust list: somebody more, a new key for somebody, the end of a key.

mod store;
mod typed;

use super::passphrase::{PassphraseFields, use_passphrase};
use super::relist::{Wanted, next};
use crate::app::hooks::{use_keys_held, use_signed};
use crate::app::parts::opened;
use crate::app::state::use_shop;
use crate::device::{clock, page};
use crate::signoff::{Book, Person, WrappedKey};
use std::rc::Rc;
use store::store;
use typed::{under_all, use_typed};
use yew::prelude::*;

/// What is changed.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Doing {
    /// Somebody more.
    Add,
    /// A new key for somebody, whose old one ends.
    Replace(Person),
    /// The end of a key.
    End(Person),
}

impl Doing {
    /// Tells one from another.
    pub(super) fn name(&self) -> String {
        match self {
            Self::Add => "add".to_owned(),
            Self::Replace(person) => format!("replace-{}", person.key),
            Self::End(person) => format!("end-{}", person.key),
        }
    }

    const fn slug(&self) -> &'static str {
        match self {
            Self::Add => "add",
            Self::Replace(_) => "replace",
            Self::End(_) => "end",
        }
    }

    fn person(&self) -> Option<&Person> {
        match self {
            Self::Add => None,
            Self::Replace(person) | Self::End(person) => Some(person),
        }
    }
}

#[derive(Properties)]
pub(super) struct ChangeProps {
    pub(super) doing: Doing,
    pub(super) book: Rc<Book>,
    /// The root key, where it is on this tablet.
    pub(super) root: Option<WrappedKey>,
    /// Called when it is done or given up.
    pub(super) on_end: Callback<()>,
}

impl PartialEq for ChangeProps {
    fn eq(&self, other: &Self) -> bool {
        self.doing == other.doing && Rc::ptr_eq(&self.book, &other.book) && self.root == other.root
    }
}

#[component]
pub(super) fn Change(props: &ChangeProps) -> Html {
    let shop = use_shop();
    let (keys, signed) = (use_keys_held(), use_signed());
    let (typed, own, busy) = (use_typed(), use_passphrase(), use_state(|| false));
    let ChangeProps { doing, book, root, on_end } = props;
    let makes_key = !matches!(doing, Doing::End(_));
    let onsubmit = {
        let (shop, doing, book, root) = (shop.clone(), doing.clone(), Rc::clone(book), root.clone());
        let (typed, own, busy, on_end) = (typed.clone(), own.clone(), busy.clone(), on_end.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let (false, Some(wrapped)) = (*busy, root.clone()) else { return };
            let Some(now) = clock::when() else {
                return typed.wrong.set(under_all(shop.say("people.no-clock")));
            };
            let read = typed.read(&shop, &doing, &now);
            let passphrase = if makes_key { own.checked(&shop) } else { Some(String::new()) };
            let (Some((end, new)), Some(passphrase)) = (read, passphrase) else { return };
            busy.set(true);
            let (shop, doing, book) = (shop.clone(), doing.clone(), Rc::clone(&book));
            let (keys, signed, on_end) = (keys.clone(), signed.clone(), on_end.clone());
            let (typed, own, busy) = (typed.clone(), own.clone(), busy.setter());
            page::once_drawn(move || {
                let wrong = typed.wrong.setter();
                let told = move |said: AttrValue| {
                    busy.set(false);
                    wrong.set(under_all(said));
                };
                let opened = opened(&shop, &wrapped, &typed.root);
                typed.root.set(String::new());
                own.clear();
                let wanted = Wanted { ends: doing.person(), end, new, passphrase };
                match opened.and_then(|key| next(&shop, &book, &wanted, &key, &now)) {
                    Err(said) => told(said),
                    Ok(next) => {
                        let done = Callback::from(move |stored: bool| {
                            if stored { on_end.emit(()) } else { told(shop.say("people.not-stored")) }
                        });
                        store(next, &keys, &signed, done);
                    }
                }
            });
        })
    };
    let give_up = on_end.reform(|_: MouseEvent| ());
    let whose =
        doing.person().map(|person| format!("{} ({})", person.name, person.number)).unwrap_or_default();
    let slug = doing.slug();
    let go = if *busy { "people.making".to_owned() } else { format!("people.{slug}-go") };
    html! {
        <form class="form paper" {onsubmit}>
            <h3>{ shop.say_with(&format!("people.{slug}-title"), &[("whose", whose)]) }</h3>
            <p class="note">{ shop.say(&format!("people.{slug}-why")) }</p>
            <p key="no-root" class="wrong" hidden={root.is_some()}>{ shop.say("people.no-root") }</p>
            { typed.fields(&shop, *doing == Doing::Add) }
            <div key="own" hidden={!makes_key}>
                <PassphraseFields id="signer-own" label={shop.say("people.their-passphrase")} of={own} />
            </div>
            { typed.root_field(&shop) }
            <div class="people">
                <button type="submit" class="control" disabled={*busy || root.is_none()}>{ shop.say(&go) }</button>
                <button type="button" class="control" onclick={give_up}>{ shop.say("people.give-up") }</button>
            </div>
        </form>
    }
}
