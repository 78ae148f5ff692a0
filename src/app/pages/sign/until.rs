//! When it runs out: at the latest the months of the competency later, or on an earlier day.

use crate::app::parts::Field;
use crate::app::parts::typed_into;
use crate::app::state::Shop;
use crate::device::clock;
use crate::people::{Signing, Source};
use crate::signoff::When;
use yew::prelude::*;

/// The latest moment at which it may run out.
pub(super) fn latest(signing: &Signing<'_>, source: &Source<'_>) -> Option<When> {
    source.now.plus_months(signing.ready.competency.expires_months)
}

/// The moment of a typed day; the latest where none is typed, and on its day. `None` where it is no day.
pub(super) fn until(typed: &str, latest: &When) -> Option<When> {
    if typed.is_empty() || typed == latest.day() {
        return Some(latest.clone());
    }
    When::day_or_moment(typed).ok()
}

pub(super) fn field(
    shop: &Shop,
    signing: &Signing<'_>,
    source: &Source<'_>,
    typed: &UseStateHandle<String>,
) -> Html {
    let Some(latest) = latest(signing, source) else { return Html::default() };
    let named = [("latest", clock::day(&latest))];
    let value = if typed.is_empty() { latest.day().to_owned() } else { (**typed).clone() };
    html! {
        <section key="until" class="paper form">
            <Field id="until" kind="date" label={shop.say("sign-off.until")} {value} on_input={typed_into(typed)} hint={shop.say_with("sign-off.until-hint", &named)} />
        </section>
    }
}
