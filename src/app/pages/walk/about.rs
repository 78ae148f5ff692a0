//! What the file of a walk is, in words.

use crate::app::parts::carried_sheet;
use crate::app::state::Shop;
use crate::device::clock;
use crate::exchange::{Named, WalkFile};
use crate::rules::term::Term;
use crate::walk::Decision;
use yew::prelude::*;

/// Which job, who walked it, how, and how far.
pub(in crate::app::pages) fn about(shop: &Shop, file: &WalkFile) -> Html {
    let over = file.decisions.last() == Some(&Decision::HandOver);
    let n = [("n", file.decisions.len().to_string()), ("day", file.came.day.to_string())];
    let rows = [
        ("who", who(shop, &file.who)),
        ("mode", shop.text(&format!("walk.mode.{}", file.mode.slug()))),
        ("sheet", carried_sheet(shop, &file.sheet)),
        ("begun", clock::local(&file.begun).into()),
        ("made", clock::local(&file.at).into()),
        ("stands", shop.say_with(if over { "walk-file.over" } else { "walk-file.open" }, &n)),
    ];
    let row = |(key, told): &(&'static str, AttrValue)| {
        html! { <div key={*key}><dt>{ shop.say(&format!("walk-file.{key}")) }</dt><dd>{ told }</dd></div> }
    };
    html! {
        <div key="about" class="set-about">
            <h2>{ shop.text(&format!("walk.name.{}", file.walk)) }</h2>
            <dl class="said">{ for rows.iter().map(row) }</dl>
            <p key="sealed" class="kraft" hidden={!file.is_sealed()}>{ shop.say("walk-file.sealed") }</p>
        </div>
    }
}

/// Who walked it: name and shop number, as far as there is one.
pub(super) fn who(shop: &Shop, who: &Named) -> AttrValue {
    let name = if who.name.is_empty() { &who.journal } else { &who.name };
    match (name.is_empty(), who.number.is_empty()) {
        (true, _) => shop.say("walk-file.nobody"),
        (false, true) => name.clone().into(),
        (false, false) => format!("{name} ({})", who.number).into(),
    }
}
