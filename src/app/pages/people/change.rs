//! What the holder of the root key changes about the trust list: somebody more, a new key for somebody, the end of a key.

use super::begin::NAME_MOST;
use super::passphrase::{PassphraseFields, use_passphrase};
use super::relist::{Next, Wanted, next};
use super::save_key;
use crate::app::hooks::{use_keys_held, use_signed};
use crate::app::parts::{Field, opened, typed_into};
use crate::app::state::{Keep, use_shop};
use crate::device::{clock, page};
use crate::rules::term::Term;
use crate::signoff::{Book, Person, Role, ShopNumber, When, WrappedKey, fit_name};
use std::rc::Rc;
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
    let (number, name, day, root) =
        (use_state(String::new), use_state(String::new), use_state(String::new), use_state(String::new));
    let role = use_state(|| Role::Assessor);
    let own = use_passphrase();
    let wrong = use_state(<[AttrValue; 4]>::default);
    let busy = use_state(|| false);
    let doing = props.doing.clone();
    let (adds, makes_key) = (doing == Doing::Add, !matches!(doing, Doing::End(_)));
    let onsubmit = {
        let (shop, doing, book, on_end) =
            (shop.clone(), doing.clone(), props.book.clone(), props.on_end.clone());
        let (number, name, day, root, role) =
            (number.clone(), name.clone(), day.clone(), root.clone(), role.clone());
        let (own, wrong, busy, wrapped) = (own.clone(), wrong.clone(), busy.clone(), props.root.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let (false, Some(wrapped)) = (*busy, wrapped.clone()) else { return };
            let Some(now) = clock::when() else {
                return wrong.set(under_all(shop.say("people.no-clock")));
            };
            let shop_number = ShopNumber::new(number.trim()).ok();
            let end = if day.is_empty() {
                Some(now.clone())
            } else {
                When::new(&format!("{}T00:00:00Z", *day)).ok()
            };
            let or = |fit: bool, key: &str| if fit { AttrValue::default() } else { shop.say(key) };
            let found = [
                or(!adds || shop_number.is_some(), "people.number-unfit"),
                or(!adds || fit_name(name.trim(), NAME_MOST).is_ok(), "people.not.name-unfit"),
                or(end.as_ref().is_some_and(|end| *end <= now), "people.day-unfit"),
                AttrValue::default(),
            ];
            let fine = found.iter().all(|one| one.is_empty());
            wrong.set(found);
            let passphrase = if makes_key { own.checked(&shop) } else { Some(String::new()) };
            let (true, Some(end), Some(passphrase)) = (fine, end, passphrase) else { return };
            let new = match (&doing, shop_number) {
                (Doing::Add, Some(number)) => Some((number, name.trim().to_owned(), *role)),
                (Doing::Replace(person), _) => {
                    Some((person.number.clone(), person.name.clone(), person.role))
                }
                _ => None,
            };
            busy.set(true);
            let (shop, doing, book, keys, signed) =
                (shop.clone(), doing.clone(), book.clone(), keys.clone(), signed.clone());
            let (own, root, wrong, busy, on_end) =
                (own.clone(), root.clone(), wrong.clone(), busy.clone(), on_end.clone());
            page::once_drawn(move || {
                let told = {
                    let (wrong, busy) = (wrong.clone(), busy.clone());
                    move |said: AttrValue| {
                        busy.set(false);
                        wrong.set(under_all(said));
                    }
                };
                let opened = opened(&shop, &wrapped, &root);
                root.set(String::new());
                own.clear();
                let key = match opened {
                    Ok(key) => key,
                    Err(why) => return told(why),
                };
                let next = match next(
                    &shop,
                    &book,
                    &Wanted { ends: doing.person(), end, new, passphrase },
                    &key,
                    &now,
                ) {
                    Ok(next) => next,
                    Err(said) => return told(said),
                };
                let Next { made, book } = next;
                let failed = {
                    let shop = shop.clone();
                    let told = told.clone();
                    move || told(shop.say("people.not-stored"))
                };
                let add = signed.add.clone();
                let kept = made
                    .as_ref()
                    .map_or_else(|| keys.wrapped.to_vec(), |made| keys.with(made.wrapped.clone()));
                let (on_end, made) = (on_end.clone(), made.map(|made| made.wrapped));
                let then = Callback::from(move |stored: bool| {
                    if !stored {
                        return failed();
                    }
                    let (on_end, made, failed) = (on_end.clone(), made.clone(), failed.clone());
                    let done = Callback::from(move |stored: bool| {
                        if !stored {
                            return failed();
                        }
                        if let Some(made) = &made {
                            save_key(made, &made.public.fingerprint());
                        }
                        on_end.emit(());
                    });
                    add.emit(Keep { what: book.clone(), done });
                });
                keys.put.emit(Keep { what: kept, done: then });
            });
        })
    };
    let give_up = props.on_end.reform(|_: MouseEvent| ());
    let role_choice = |one: &Role| {
        let one = *one;
        let onchange = {
            let role = role.setter();
            Callback::from(move |_: Event| role.set(one))
        };
        html! {
            <label key={one.slug()} class={classes!("unit", (*role == one).then_some("picked"))}>
                <input type="radio" name="role" checked={*role == one} {onchange} /><span>{ shop.say(&format!("people.role.{}", one.slug())) }</span>
            </label>
        }
    };
    let whose =
        doing.person().map(|person| format!("{} ({})", person.name, person.number)).unwrap_or_default();
    let slug = doing.slug();
    html! {
        <form class="form paper" {onsubmit}>
            <h3>{ shop.say_with(&format!("people.{slug}-title"), &[("whose", whose)]) }</h3>
            <p class="note">{ shop.say(&format!("people.{slug}-why")) }</p>
            <p key="no-root" class="wrong" hidden={props.root.is_some()}>{ shop.say("people.no-root") }</p>
            <div key="who" class="pair" hidden={!adds}>
                <Field id="signer-number" label={shop.say("people.number")} hint={shop.say("people.number-hint")} value={(*number).clone()} on_input={typed_into(&number)} wrong={wrong[0].clone()} />
                <Field id="signer-name" label={shop.say("people.name")} value={(*name).clone()} on_input={typed_into(&name)} wrong={wrong[1].clone()} />
            </div>
            <fieldset key="role" class="setting" hidden={!adds}>
                <legend>{ shop.say("people.role") }</legend>
                <div class="segments">{ for Role::ALL.iter().map(role_choice) }</div>
            </fieldset>
            <div key="day" hidden={adds}>
                <Field id="signer-day" kind="date" label={shop.say("people.end-day")} hint={shop.say("people.end-day-hint")} value={(*day).clone()} on_input={typed_into(&day)} wrong={wrong[2].clone()} />
            </div>
            <div key="own" hidden={!makes_key}>
                <PassphraseFields id="signer-own" label={shop.say("people.their-passphrase")} of={own} />
            </div>
            <Field id="signer-root" kind="password" autocomplete="current-password" label={shop.say("people.root-passphrase")} value={(*root).clone()} on_input={typed_into(&root)} wrong={wrong[3].clone()} />
            <div class="people">
                <button type="submit" class="control" disabled={*busy || props.root.is_none()}>{ if *busy { shop.say("people.making") } else { shop.say(&format!("people.{slug}-go")) } }</button>
                <button type="button" class="control" onclick={give_up}>{ shop.say("people.give-up") }</button>
            </div>
        </form>
    }
}

/// What is wrong with none of the fields alone: it stands under the last one.
fn under_all(said: AttrValue) -> [AttrValue; 4] {
    let none = AttrValue::default();
    [none.clone(), none.clone(), none, said]
}
