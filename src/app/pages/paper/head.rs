//! What stands at the head and at the foot of every page.

use super::{OnPaper, Worksheet};
use crate::app::state::Shop;
use yew::prelude::*;

/// A paper whose foot stands on every page: browsers print the foot of a table again on each page that it goes over.
pub(super) fn paged(shop: &Shop, on: &OnPaper, sheet: &Worksheet, kind: &str, inside: Html) -> Html {
    html! {
        <article key={format!("{kind}-{}", sheet.code)} class="printed worksheet">
            <table class="pages" role="presentation">
                <tbody><tr><td>{ inside }</td></tr></tbody>
                <tfoot><tr><td class="running">{ foot(shop, on, sheet) }</td></tr></tfoot>
            </table>
        </article>
    }
}

/// Set, seed and whose it is.
fn foot(shop: &Shop, on: &OnPaper, sheet: &Worksheet) -> Html {
    let named = [("title", on.set.title.clone()), ("id", on.id.clone())];
    html! {
        <>
            <span>{ shop.say_with("worksheet.foot", &named) }</span>
            <span class="digits">{ seed(shop, on, sheet) }</span>
        </>
    }
}

/// What the cards are dealt again from.
pub(super) fn seed(shop: &Shop, on: &OnPaper, sheet: &Worksheet) -> AttrValue {
    let code = ("code", sheet.code.to_string());
    match on.set.task.same_seed {
        Some(seed) => shop.say_with("worksheet.same-seed", &[("seed", seed.to_string()), code]),
        None => shop.say_with("worksheet.seed", &[code]),
    }
}

/// A line to write on, after what belongs there.
pub(super) fn line(class: &'static str, label: AttrValue, written: &str) -> Html {
    html! { <p class={classes!("to-write", class)}><span>{ label }</span><b class="on-line">{ written.to_owned() }</b></p> }
}
