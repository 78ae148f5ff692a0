//! Writes an observation down, and says what keeps it from being written.

use super::form::FormProps;
use super::office::stamp;
use super::stopwatch::ran;
use crate::app::hooks::{use_book, use_watching};
use crate::app::state::{Keep, Shop, WatchingChange, use_shop};
use crate::record::{Begun, Journal, Observed, Unfit, WORK_MOST, is_plain, plain};
use crate::rules::term::Term;
use yew::prelude::*;

/// What is wrong, field by field; empty where nothing is.
#[derive(Clone, Default, PartialEq)]
pub(super) struct Wrong {
    pub(super) day: AttrValue,
    pub(super) work: AttrValue,
    pub(super) alone: AttrValue,
    pub(super) note: AttrValue,
    pub(super) other: AttrValue,
}

impl Wrong {
    fn of(shop: &Shop, begun: &Begun, unfit: &[Unfit]) -> Self {
        let say = |one: Unfit| shop.say(&format!("assess.unfit.{}", one.slug()));
        let mut wrong = Self::default();
        if begun.day().is_none() {
            wrong.day = shop.say("assess.day-unfit");
        }
        if begun.alone.is_none() {
            wrong.alone = shop.say("assess.alone-missing");
        }
        // Said at once with the others, though nothing is made of it without them.
        if plain(&begun.work).is_empty() {
            wrong.work = say(Unfit::WorkMissing);
        }
        for one in unfit {
            match one {
                Unfit::DayToCome | Unfit::EarlierDay | Unfit::TooOld => wrong.day = say(*one),
                Unfit::WorkMissing => {}
                Unfit::WordsUnfit if !is_plain(&plain(&begun.work), WORK_MOST) => wrong.work = say(*one),
                Unfit::WordsUnfit => wrong.note = say(*one),
                _ => wrong.other = say(*one),
            }
        }
        // The fields may be scrolled out of sight.
        if wrong != Self::default() && wrong.other.is_empty() {
            wrong.other = shop.say("assess.missing-above");
        }
        wrong
    }
}

/// How far it is written down.
pub(super) struct Writing {
    pub(super) wrong: Wrong,
    pub(super) busy: bool,
    pub(super) write: Callback<MouseEvent>,
}

#[hook]
pub(super) fn use_writing(form: &FormProps) -> Writing {
    let shop = use_shop();
    let (books, change) = (use_book(), use_watching().change);
    let wrong = use_state(Wrong::default);
    let busy = use_state(|| false);
    let write = {
        let (form, wrong, busy) = (form.clone(), wrong.clone(), busy.clone());
        Callback::from(move |_: MouseEvent| {
            if *busy {
                return;
            }
            let observed = observed(&shop, &books.book.journal, &form);
            let unfit = observed.as_ref().map(Observed::unfit).unwrap_or_default();
            let found = Wrong::of(&shop, &form.begun, &unfit);
            let fine = found == Wrong::default();
            wrong.set(found);
            let (true, Some(observed)) = (fine, observed) else { return };
            busy.set(true);
            let (shop, change, form) = (shop.clone(), change.clone(), form.clone());
            let (wrong, busy) = (wrong.setter(), busy.setter());
            let done = Callback::from(move |stored: bool| {
                busy.set(false);
                if stored {
                    form.on_said.emit(shop.say("assess.written"));
                    change.emit(WatchingChange::LetGo(form.begun.clone()));
                } else {
                    wrong.set(Wrong { other: shop.say("assess.not-stored"), ..Wrong::default() });
                }
            });
            books.write.emit(Keep { what: observed.into(), done });
        })
    };
    Writing { wrong: (*wrong).clone(), busy: *busy, write }
}

/// What was observed, now; none as long as something of it is missing.
fn observed(shop: &Shop, journal: &Journal, form: &FormProps) -> Option<Observed> {
    let criteria = form.competency.criteria.iter().map(|one| one.id.as_str());
    let stamp = stamp(shop, journal, &form.member);
    form.begun.observed(stamp, criteria, ran(&form.begun.stopwatch), form.by.clone())
}
