//! The answers of an attempt at a set: those that are its own, and as rows that lead to their cards.

use super::taken::latest;
use crate::app::parts::answer_row;
use crate::app::route::Route;
use crate::app::state::{KeptSet, SetsContext, Shop};
use crate::learn::check::{answers_of, in_order};
use crate::record::{Entry, Journal, Voids};
use yew::prelude::*;

/// The answers of the latest attempt at a set.
///
/// Answers that the check goes on with are no answers of the set, which may have dealt fewer cards than it asks for.
pub(super) fn given<'a>(shop: &Shop, journal: &'a Journal, id: &str, attempt: &str) -> Vec<&'a Entry> {
    let cards = latest(shop, journal, id).and_then(|one| one.taking).map_or(0, |taking| taking.cards);
    let cards = usize::try_from(cards).unwrap_or(usize::MAX);
    answers_of(journal.events(), &shop.settings.device, attempt).into_iter().take(cards).collect()
}

pub(super) fn answers(
    shop: &Shop,
    sets: &SetsContext,
    journal: &Journal,
    kept: &KeptSet,
    attempt: &str,
) -> Html {
    let voids = Voids::of(journal.events());
    let row = |entry: &&Entry| {
        let to = Route::SetAnswer { id: kept.id.clone(), sequence: entry.stamp.sequence };
        answer_row(shop, entry, sets.own_card(entry), &to, voids.touches(entry).is_some())
    };
    let answers = in_order(given(shop, journal, &kept.id, attempt));
    html! {
        <section key="answers" class="set-answers">
            <h2>{ shop.say("sets.outcome.answers") }</h2>
            <ul class="rows links">{ for answers.iter().map(row) }</ul>
        </section>
    }
}
