//! Reasons for refusing a signed file, in words.

use crate::app::state::Shop;
use crate::content::Args;
use crate::rules::term::Term;
use crate::signoff::Refusal;
use yew::prelude::*;

pub(in crate::app) fn refusal(shop: &Shop, one: &Refusal) -> String {
    let args = Args::from([("at".to_owned(), one.at.clone())]);
    shop.texts().fill(&format!("verify.{}", one.why.slug()), &args)
}

/// Every reason on a line of its own.
pub(in crate::app) fn refusals(shop: &Shop, all: &[Refusal]) -> Html {
    let line = |(nth, one): (usize, &Refusal)| html! { <li key={nth}>{ refusal(shop, one) }</li> };
    html! { <ul class="told why" hidden={all.is_empty()}>{ for all.iter().enumerate().map(line) }</ul> }
}
