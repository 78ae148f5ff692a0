//! What is typed of the folder, and what is wrong with it.

use crate::app::state::{FolderView, Shop};
use crate::device::{carry, clock};
use crate::exchange::folder::{Place, Rest, Setup as Used};
use crate::record::LocalDate;
use yew::prelude::*;

/// Parts a user from the password (RFC 7617, section 2).
const COLON: char = ':';

/// What is wrong with what was typed, a field each.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Wrong {
    pub(super) address: AttrValue,
    pub(super) user: AttrValue,
    pub(super) password: AttrValue,
    pub(super) until: AttrValue,
}

#[derive(Clone)]
pub(super) struct Typed {
    pub(super) address: UseStateHandle<String>,
    pub(super) user: UseStateHandle<String>,
    pub(super) password: UseStateHandle<String>,
    pub(super) rest: UseStateHandle<Rest>,
    pub(super) until: UseStateHandle<String>,
    pub(super) hands_in: UseStateHandle<bool>,
    pub(super) takes: UseStateHandle<bool>,
}

/// First as the folder is used now.
#[hook]
pub(super) fn use_typed(view: &FolderView) -> Typed {
    Typed {
        address: use_state(|| view.place.clone()),
        user: use_state(|| view.user.clone()),
        password: use_state(String::new),
        rest: use_state(|| view.rest.unwrap_or(Rest::Page)),
        until: use_state(|| view.until.map(|day| day.to_string()).unwrap_or_default()),
        hands_in: use_state(|| !view.on || view.hands_in),
        takes: use_state(|| view.takes_results),
    }
}

impl Typed {
    /// How the folder is used from now on.
    pub(super) fn read(&self, shop: &Shop) -> Result<Used, Wrong> {
        let Self { address, user, password, rest, until, hands_in, takes } = self;
        let typed = address.trim();
        let place = Place::new(typed.strip_prefix(carry::origin().as_str()).unwrap_or(typed));
        let last: Option<LocalDate> = until.parse().ok();
        let rests = last.zip(clock::today()).is_some_and(|(last, today)| Used::may_rest(last, today));
        let say = |bad: bool, key: &str| if bad { shop.say(key) } else { AttrValue::default() };
        let wrong = Wrong {
            address: say(place.is_err(), "folder.address-wrong"),
            user: say(user.is_empty() || user.contains(COLON), "folder.user-wrong"),
            password: say(password.is_empty(), "folder.password-wrong"),
            until: say(**rest == Rest::Day && !rests, "folder.until-wrong"),
        };
        match place {
            Ok(place) if wrong == Wrong::default() => Ok(Used {
                on: true,
                place: Some(place),
                takes_results: **takes,
                user: (**user).clone(),
                rest: **rest,
                until: last.filter(|_| **rest == Rest::Day),
                password: Some((**password).clone()),
                hands_in: **hands_in,
            }),
            _ => Err(wrong),
        }
    }
}
