//! What a walk counts for.

use crate::app::state::Shop;
use crate::rules::term::Term;
use crate::walk::Mode;
use yew::prelude::*;

pub(super) fn counts(shop: &Shop, mode: Mode, taken_over: bool) -> Html {
    let key = if taken_over && mode == Mode::Own { "again" } else { mode.slug() };
    html! {
        <section key="counts">
            <h2>{ shop.say("walked.counts") }</h2>
            <p>{ shop.say(&format!("walked.counts.{key}")) }</p>
        </section>
    }
}
