//! Taking a file: where it goes, whether it is there already, and what comes next.

use super::Opened;
use crate::app::hooks::use_sets;
use crate::app::route::Route;
use crate::app::state::{Keep, KeptSet, Origin, SetFile};
use crate::exchange::Ours;
use std::rc::Rc;
use yew::prelude::*;

/// How taking a file stands.
pub(in crate::app::pages) struct Taking {
    /// Whether it is here already.
    pub(in crate::app::pages) had: bool,
    /// Whether it was here before it was taken, once it is.
    pub(in crate::app::pages) taken: Option<bool>,
    /// Whether it could not be stored.
    pub(in crate::app::pages) failed: bool,
    /// Whether it can be taken on this screen.
    pub(in crate::app::pages) may: bool,
    pub(in crate::app::pages) take: Callback<MouseEvent>,
    /// Where to go then, and the words of it.
    pub(in crate::app::pages) next: (Route, &'static str),
    /// The set that it is or is about, where that is here.
    pub(in crate::app::pages) about: Option<KeptSet>,
}

/// What became of it: it was here before, or not; none where it was not stored.
#[derive(Clone, Copy, PartialEq)]
enum Became {
    Taken(bool),
    Failed,
}

#[hook]
pub(in crate::app::pages) fn use_taking(opened: &Rc<Opened>) -> Taking {
    let sets = use_sets();
    let became = use_state(|| None::<Became>);
    let about = match &opened.ours {
        Ours::Set(set) => sets.find(&set.id()).cloned(),
        Ours::Withdrawal(withdrawal) => sets.find(&withdrawal.set).cloned(),
        Ours::Sheet(_) | Ours::Results(_) | Ours::Walk(_) | Ours::Ticket(_) => None,
    };
    let had = match (&opened.ours, &about) {
        (Ours::Withdrawal(_), Some(kept)) => kept.withdrawn.is_some(),
        (_, about) => about.is_some(),
    };
    let may = match &opened.ours {
        Ours::Set(_) => true,
        // By anybody else than who made the set it means nothing.
        Ours::Withdrawal(withdrawal) => about.as_ref().is_some_and(|kept| withdrawal.by == kept.set.by),
        Ours::Sheet(_) | Ours::Results(_) | Ours::Walk(_) | Ours::Ticket(_) => false,
    };
    let next = match &opened.ours {
        Ours::Set(set) => (Route::SetOf { id: set.id() }, "open.begin-set"),
        // The others are taken by parts of their own.
        _ => (Route::Sets, "open.to-sets"),
    };
    let take = {
        let (opened, keep, set) = (Rc::clone(opened), sets.keep.clone(), became.setter());
        Callback::from(move |_: MouseEvent| {
            let set = set.clone();
            let done = Callback::from(move |stored: bool| {
                set.set(Some(if stored { Became::Taken(had) } else { Became::Failed }));
            });
            match &opened.ours {
                Ours::Set(one) => {
                    let what = SetFile::Set(Rc::new((**one).clone()), Origin::Taken);
                    keep.emit(Keep { what, done });
                }
                Ours::Withdrawal(one) => {
                    keep.emit(Keep { what: SetFile::Withdrawal(Rc::new(one.clone())), done });
                }
                Ours::Sheet(_) | Ours::Results(_) | Ours::Walk(_) | Ours::Ticket(_) => {}
            }
        })
    };
    let taken = match *became {
        Some(Became::Taken(before)) => Some(before),
        _ => None,
    };
    Taking { had, taken, failed: *became == Some(Became::Failed), may, take, next, about }
}
