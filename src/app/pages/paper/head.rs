//! What stands at the head and at the foot of every page.

use super::{OnPaper, Worksheet};
use crate::app::state::Shop;
use yew::prelude::*;

/// What a paper is, for everybody who finds it: class names and words by its slug.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sort {
    Worksheet,
    Key,
}

impl Sort {
    const fn slug(self) -> &'static str {
        match self {
            Self::Worksheet => "worksheet",
            Self::Key => "key",
        }
    }
}

/// A paper whose head and foot stand on every page: browsers print those of a table again on each page that it goes over.
pub(super) fn paged(shop: &Shop, on: &OnPaper, sheet: &Worksheet, sort: Sort, inside: Html) -> Html {
    let only = || {
        html! { <div class="instructor-only"><b>{ shop.say("worksheet.only") }</b><span>{ shop.say("worksheet.only-why") }</span></div> }
    };
    html! {
        <article key={format!("{}-{}", sort.slug(), sheet.code)} class={classes!("printed", "worksheet", (sort == Sort::Key).then_some("key-on-paper"))}>
            <table class="pages" role="presentation">
                <thead><tr><td class="page-top">{ for (sort == Sort::Key).then(only) }</td></tr></thead>
                <tbody><tr><td>{ inside }</td></tr></tbody>
                <tfoot><tr><td class="running">{ foot(shop, on, sheet, sort) }</td></tr></tfoot>
            </table>
        </article>
    }
}

/// The last line of a paper. It stands inside the last block that no page breaks, so that it is never alone on a page.
pub(super) fn end(shop: &Shop, sort: Sort) -> Html {
    html! { <p key="end" class="end-of-paper">{ shop.say(&format!("worksheet.end-{}", sort.slug())) }</p> }
}

/// Set, what it is, whose and its seed.
fn foot(shop: &Shop, on: &OnPaper, sheet: &Worksheet, sort: Sort) -> Html {
    html! {
        <>
            <span>{ shop.set_title(&on.id, &on.set.title) }{ " · " }<b class="whole">{ &on.id }</b></span>
            <span>{ shop.say(&format!("worksheet.sort-{}", sort.slug())) }{ whose(&sheet.whom) }</span>
            <span class="digits">{ seed(shop, on, sheet) }</span>
        </>
    }
}

fn whose(whom: &str) -> String {
    if whom.is_empty() { String::new() } else { format!(" · {whom}") }
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
