//! What is seen of a card once it was answered: its panels, or what came of the run.

use super::spray::Sprayed;
use crate::app::parts::{Place, answered_panels};
use crate::app::state::Shop;
use crate::card::{Answer, Card, Place as Pointed};
use crate::record::Entry;
use std::rc::Rc;
use yew::prelude::*;

/// `place` is pointed at instead of the one that was answered, where there is one.
pub(super) fn answered(
    shop: &Shop,
    card: &Rc<Card>,
    entry: &Entry,
    place: Option<Pointed>,
    on_place: &Callback<Place>,
) -> Html {
    match &entry.answer {
        Answer::Run(run) => {
            html! { <Sprayed key="sprayed" card={Rc::clone(card)} run={run.clone()} sheet={entry.sheet.slug.clone()} /> }
        }
        other => answered_panels(shop, card, place.or(other.place()), on_place),
    }
}
