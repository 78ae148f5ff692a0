//! What is seen of a card once it was answered: the verdict on it, its panels, or what came of the run.

use super::spray::{Came, told_of_run, use_came};
use crate::app::parts::{Place, Verdict, answered_panels};
use crate::app::state::{Shop, use_shop};
use crate::card::{self, Card, Place as Pointed};
use crate::record::Entry;
use std::rc::Rc;
use yew::prelude::*;

/// The panels of a card, or what came of the run. `place` is pointed at instead of the one that was answered, where there is
/// one.
pub(super) fn seen_of(
    shop: &Shop,
    (card, entry, came): (&Rc<Card>, &Entry, &Came),
    place: Option<Pointed>,
    on_place: &Callback<Place>,
) -> Html {
    match came {
        Came::NoRun => answered_panels(shop, card, place.or(entry.answer.place()), on_place),
        came => told_of_run(shop, came),
    }
}

#[derive(Properties, PartialEq)]
pub(super) struct AnsweredProps {
    pub(super) card: Rc<Card>,
    pub(super) entry: Rc<Entry>,
}

/// The verdict on an answer; nothing where its shop sheet is not here.
#[component]
pub(super) fn Answered(props: &AnsweredProps) -> Html {
    let shop = use_shop();
    let (card, entry) = (&props.card, &props.entry);
    let came = use_came(Some(card), &entry.sheet.slug, Some(&entry.answer));
    let Some(world) = shop.world(&entry.sheet.slug) else { return Html::default() };
    let Some(graded) = came.graded(card, &world, &entry.answer).map(Rc::new) else {
        return told_of_run(&shop, &came);
    };
    let tests = card::weigh(card, &world, &graded.solution.right, &entry.answer);
    let panels = seen_of(&shop, (card, entry, &came), None, &Callback::from(|_| ()));
    html! {
        <Verdict card={Rc::clone(card)} {graded} {tests} answer={entry.answer.clone()} certainty={entry.certainty} {panels} />
    }
}
