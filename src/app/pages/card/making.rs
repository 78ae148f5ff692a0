//! An answer that is being made, and handed in once it is whole.

use super::{CardProps, wanted};
use crate::app::pages::events::HandedIn;
use crate::app::pages::spray::{Came, use_came};
use crate::app::parts::{CERTAINTY, PANELS};
use crate::card::{Card, Slate};
use crate::device::page;
use crate::record::{Certainty, Draft};
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// Id of the part in which the answer is given.
pub(in crate::app::pages) const ANSWER: &str = "card-answer";
/// Said where it is not told yet how far one would go.
pub(in crate::app::pages) const NEED_CERTAINTY: &str = "card.need-certainty";
/// Said where no place on a panel is marked yet.
pub(super) const NEED_PLACE: &str = "card.need-place";

/// What changes an answer. Keys may come faster than the screen is drawn: each goes on from what the one before it made.
#[derive(Clone, PartialEq)]
pub(super) struct Making {
    newest: Rc<RefCell<Rc<Draft>>>,
    pub(super) on_slate: Callback<Slate>,
    pub(super) on_certainty: Callback<Certainty>,
    pub(super) hand_in: Callback<()>,
    /// What is missing before it can be handed in, as a key of its words.
    pub(super) missing: Option<&'static str>,
}

impl Making {
    /// The answer as it was made last.
    pub(super) fn slate(&self) -> Slate {
        self.newest.borrow().slate.clone()
    }

    pub(super) fn toggle_not_enough(&self) -> Callback<()> {
        let making = self.clone();
        self.on_slate.reform(move |()| making.slate().toggle_not_enough())
    }
}

#[hook]
pub(super) fn use_making(props: &CardProps) -> Making {
    let CardProps { draft, card, on_draft, hand_in, .. } = props;
    let newest = use_mut_ref(|| Rc::clone(draft));
    newest.replace(Rc::clone(draft));
    let change = use_callback((Rc::clone(&newest), on_draft.clone()), |draft: Draft, (newest, on_draft)| {
        newest.replace(Rc::new(draft.clone()));
        on_draft.emit(draft);
    });
    let on_slate = use_callback((Rc::clone(&newest), change.clone()), |slate: Slate, (newest, change)| {
        let draft = Draft { slate, ..(**newest.borrow()).clone() };
        change.emit(draft);
    });
    let on_certainty =
        use_callback((Rc::clone(&newest), change), |certainty: Certainty, (newest, change)| {
            let draft = Draft { certainty: Some(certainty), ..(**newest.borrow()).clone() };
            change.emit(draft);
        });
    let came = use_came(Some(card), &draft.card.sheet.slug, draft.slate.answer(card).as_ref());
    let missing = missing_of(draft, card, &came);
    let handed = use_mut_ref(|| None::<(String, u32)>);
    let hand_in = use_callback(
        (Rc::clone(&newest), Rc::clone(card), came, hand_in.clone()),
        move |(), (newest, card, came, hand_in)| {
            let draft = Rc::clone(&newest.borrow());
            if let Some(missing) = missing_of(&draft, card, came) {
                return page::bring(place_of(missing));
            }
            // A second press before the verdict is drawn hands nothing in again.
            let this = Some((card.family.clone(), card.seed));
            if handed.replace(this.clone()) != this {
                hand_in.emit(HandedIn { draft, card: Rc::clone(card), came: came.clone() });
            }
        },
    );
    Making { newest, on_slate, on_certainty, hand_in, missing }
}

/// The id of the part of the screen where what is missing is given.
pub(in crate::app::pages) fn place_of(missing: &str) -> &'static str {
    match missing {
        NEED_CERTAINTY => CERTAINTY,
        NEED_PLACE => PANELS,
        _ => ANSWER,
    }
}

/// What is missing before the card can be handed in.
fn missing_of(draft: &Draft, card: &Card, came: &Came) -> Option<&'static str> {
    match (draft.slate.answer(card), draft.certainty) {
        (None, _) => Some(wanted(card.kind)),
        (Some(_), None) => Some(NEED_CERTAINTY),
        _ if *came == Came::Measuring => Some("spray.measuring"),
        _ => None,
    }
}
