//! Reasons for refusing a signed file, in words.

use crate::app::state::Shop;
use crate::content::Args;
use crate::device::clock;
use crate::rules::term::Term;
use crate::signoff::{Refusal, When};
use yew::prelude::*;

/// What stands between a moment and the reason that a shop gives for what it did then.
const THEN: &str = ": ";

pub(in crate::app) fn refusal(shop: &Shop, one: &Refusal) -> String {
    let args = Args::from([("at".to_owned(), found(&one.at))]);
    shop.texts().fill(&format!("verify.{}", one.why.slug()), &args)
}

/// What a reason was found at, a moment at its beginning as this browser writes it.
fn found(at: &str) -> String {
    let (head, rest) = at.split_once(THEN).unwrap_or((at, ""));
    match (When::new(head), rest) {
        (Ok(moment), "") => clock::local(moment.text()),
        (Ok(moment), reason) => format!("{}{THEN}{reason}", clock::local(moment.text())),
        (Err(_), _) => at.to_owned(),
    }
}

/// Every reason on a line of its own.
pub(in crate::app) fn refusals(shop: &Shop, all: &[Refusal]) -> Html {
    let line = |(nth, one): (usize, &Refusal)| html! { <li key={nth}>{ refusal(shop, one) }</li> };
    html! { <ul class="told why" hidden={all.is_empty()}>{ for all.iter().enumerate().map(line) }</ul> }
}
