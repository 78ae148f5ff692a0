//! What is typed of a change, and what is wrong with it.

use super::super::begin::NAME_MOST;
use super::super::relist::Holder;
use super::Doing;
use crate::app::parts::{Field, typed_into};
use crate::app::state::Shop;
use crate::rules::term::Term;
use crate::signoff::{Role, ShopNumber, When, fit_name};
use yew::prelude::*;

/// What is wrong with number, name, day and root passphrase.
pub(super) type Wrong = [AttrValue; 4];

/// What is wrong with none of the fields alone: it stands under the last one.
pub(super) fn under_all(said: AttrValue) -> Wrong {
    let none = AttrValue::default();
    [none.clone(), none.clone(), none, said]
}

/// The fields.
#[derive(Clone, PartialEq)]
pub(super) struct Typed {
    number: UseStateHandle<String>,
    name: UseStateHandle<String>,
    day: UseStateHandle<String>,
    role: UseStateHandle<Role>,
    pub(super) root: UseStateHandle<String>,
    pub(super) wrong: UseStateHandle<Wrong>,
}

#[hook]
pub(super) fn use_typed() -> Typed {
    Typed {
        number: use_state(String::new),
        name: use_state(String::new),
        day: use_state(String::new),
        role: use_state(|| Role::Assessor),
        root: use_state(String::new),
        wrong: use_state(Wrong::default),
    }
}

impl Typed {
    /// When a key ends: now where no day is typed.
    fn end(&self, now: &When) -> Option<When> {
        if self.day.is_empty() {
            return Some(now.clone());
        }
        When::new(&format!("{}T00:00:00Z", *self.day)).ok()
    }

    /// When a key ends and who gets a new one, where all is fit; else says under each field what is wrong.
    pub(super) fn read(&self, shop: &Shop, doing: &Doing, now: &When) -> Option<(When, Option<Holder>)> {
        let adds = *doing == Doing::Add;
        let (number, name) = (ShopNumber::new(self.number.trim()).ok(), self.name.trim().to_owned());
        let end = self.end(now).filter(|end| end <= now);
        let or = |fit: bool, key: &str| if fit { AttrValue::default() } else { shop.say(key) };
        let wrong = [
            or(!adds || number.is_some(), "people.number-unfit"),
            or(!adds || fit_name(&name, NAME_MOST).is_ok(), "people.not.name-unfit"),
            or(end.is_some(), "people.day-unfit"),
            AttrValue::default(),
        ];
        let fit = wrong.iter().all(|one| one.is_empty());
        self.wrong.set(wrong);
        let new = match doing {
            Doing::Add => number.map(|number| (number, name, *self.role)),
            Doing::Replace(person) => Some((person.number.clone(), person.name.clone(), person.role)),
            Doing::End(_) => None,
        };
        end.filter(|_| fit).map(|end| (end, new))
    }

    /// Who somebody new is, or from when on a key ends.
    pub(super) fn fields(&self, shop: &Shop, adds: bool) -> Html {
        let wrong = &*self.wrong;
        html! {
            <>
                <div key="who" class="pair" hidden={!adds}>
                    <Field id="signer-number" label={shop.say("people.number")} hint={shop.say("people.number-hint")} value={(*self.number).clone()} on_input={typed_into(&self.number)} wrong={wrong[0].clone()} />
                    <Field id="signer-name" label={shop.say("people.name")} value={(*self.name).clone()} on_input={typed_into(&self.name)} wrong={wrong[1].clone()} />
                </div>
                <fieldset key="role" class="setting" hidden={!adds}>
                    <legend>{ shop.say("people.role") }</legend>
                    <div class="segments">{ for Role::ALL.iter().map(|one| self.role_choice(shop, *one)) }</div>
                </fieldset>
                <div key="day" hidden={adds}>
                    <Field id="signer-day" kind="date" label={shop.say("people.end-day")} hint={shop.say("people.end-day-hint")} value={(*self.day).clone()} on_input={typed_into(&self.day)} wrong={wrong[2].clone()} />
                </div>
            </>
        }
    }

    fn role_choice(&self, shop: &Shop, one: Role) -> Html {
        let picked = *self.role == one;
        let role = self.role.setter();
        let onchange = move |_: Event| role.set(one);
        html! {
            <label key={one.slug()} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name="role" checked={picked} {onchange} /><span>{ shop.say(&format!("people.role.{}", one.slug())) }</span>
            </label>
        }
    }

    /// The passphrase of the root key, and what is wrong with the whole.
    pub(super) fn root_field(&self, shop: &Shop) -> Html {
        html! {
            <Field id="signer-root" kind="password" autocomplete="current-password" label={shop.say("people.root-passphrase")} value={(*self.root).clone()} on_input={typed_into(&self.root)} wrong={self.wrong[3].clone()} />
        }
    }
}
