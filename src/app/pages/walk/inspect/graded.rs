//! What was found of the mistakes in somebody else's walk.

use crate::app::pages::walk::words;
use crate::app::parts::{Frame, Picture, SignKind, icon, sign};
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::walk::Walk;
use crate::walk::inspect::{Inspected, Mistake};
use yew::prelude::*;

/// What was found, half found, missed, and named with nothing wrong in it.
pub(in crate::app::pages::walk) fn groups(shop: &Shop, walk: &Walk, told: &Inspected) -> Html {
    let did = |turn: usize| words::step_of(shop, walk, turn);
    let mistake = |one: &Mistake| {
        html! { <li key={format!("{}-{}", one.turn, one.rule.0)}><span class="words"><b>{ did(one.turn) }</b><span class="note">{ shop.text(&format!("rule.{}", one.rule.0)) }</span></span></li> }
    };
    let group = |key: &'static str, kind: SignKind, all: &[Mistake]| {
        html! {
            <section key={key} hidden={all.is_empty()}>
                <h2 class="walk-promise">{ sign(kind) }{ shop.say(&format!("walk.inspected.{key}")) }</h2>
                <ul class="rows">{ for all.iter().map(mistake) }</ul>
            </section>
        }
    };
    let wrong = |turn: &usize| html! { <li key={*turn}><b>{ did(*turn) }</b></li> };
    html! {
        <>
            { group("found", SignKind::Right, &told.found) }
            { group("half", SignKind::Partly, &told.half) }
            { group("missed", SignKind::Wrong, &told.missed) }
            <section key="wrong" hidden={told.wrong.is_empty()}>
                <h2>{ shop.say("walk.inspected.wrong") }</h2>
                <ul class="rows">{ for told.wrong.iter().map(wrong) }</ul>
            </section>
        </>
    }
}

pub(super) fn graded(shop: &Shop, walk: &Walk, told: &Inspected, done: &Callback<()>) -> Html {
    let found = [
        ("n", told.found.len().to_string()),
        ("of", (told.found.len() + told.half.len() + told.missed.len()).to_string()),
    ];
    let action = html! {
        <button type="button" class="next-step" onclick={done.reform(|_: MouseEvent| ())}>{ shop.say("walk.to-report") }{ icon(Picture::Go) }</button>
    };
    html! {
        <Frame class="sheet walk-report" title={shop.text(&format!("walk.name.{}", walk.start().info.slug))} note={shop.text("walk.mode.inspect")} back={Some(Route::Walks)} cautions={shop.cautions_for(&[])} {action}>
            <p key="lead" class="lead" role="status">{ shop.say_with("walk.inspected", &found) }</p>
            { groups(shop, walk, told) }
        </Frame>
    }
}
