//! What was decided on walks and broke a rule, once it may be told.

use crate::app::pages::decided_row;
use crate::app::route::Route;
use crate::app::state::{Shop, Told};
use crate::record::{Decided, Voids, Walked};
use yew::prelude::*;

/// Latest ones shown.
const LATEST: usize = 30;

pub(super) fn walked(shop: &Shop, told: &Told, voids: &Voids<'_>) -> Html {
    let wrong = told.decisions().filter(|(_, decided)| !decided.broke.is_empty()).rev();
    let wrong: Vec<(&Walked, &Decided)> = wrong.take(LATEST).collect();
    let row = |(walked, decided): &(&Walked, &Decided)| {
        let to = Route::Entry { sequence: walked.stamp.sequence };
        decided_row(shop, walked, decided, &to, voids.touches_decided(decided).is_some())
    };
    html! {
        <section key="walked" hidden={wrong.is_empty()}>
            <h2>{ shop.say("walked.wrong") }</h2>
            <ul class="rows links">{ for wrong.iter().map(row) }</ul>
        </section>
    }
}
