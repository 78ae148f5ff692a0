//! Somebody else's walk: the decisions with a mistake in them are named, each with the rule that it broke, and graded.

mod graded;
mod naming;

pub(super) use graded::groups;

use super::scrub::Scrub;
use super::words;
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shared, Shop, use_shop};
use crate::walk::Walk;
use crate::walk::inspect::{Inspected, inspect};
use naming::Naming;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct InspectProps {
    pub(super) walk: Shared<Walk>,
    /// Turns that were named, each with a rule.
    pub(super) named: Vec<(usize, String)>,
    /// Says that the last one is not stored.
    pub(super) strip: Html,
    /// Keeps what is named.
    pub(super) name: Callback<Vec<(usize, String)>>,
    /// All is named that was found.
    pub(super) done: Callback<()>,
}

#[component]
pub(super) fn Inspect(props: &InspectProps) -> Html {
    let shop = use_shop();
    let (walk, named) = (&props.walk, &props.named);
    let turn = use_state(|| 0_usize);
    let graded = use_state(|| None::<Inspected>);
    let on_turn = {
        let turn = turn.setter();
        move |to: usize| turn.set(to)
    };
    let add = {
        let (name, named) = (props.name.clone(), named.clone());
        move |one: (usize, String)| {
            if !named.contains(&one) {
                name.emit(named.iter().cloned().chain([one]).collect());
            }
        }
    };
    let grade = {
        let (graded, shop, walk, named) = (graded.setter(), shop.clone(), walk.clone(), named.clone());
        move |_: MouseEvent| graded.set(Some(inspect(&walk, &named, shop.content())))
    };
    if let Some(told) = (*graded).as_ref() {
        return graded::graded(&shop, walk, told, &props.done);
    }
    // Nothing leads on before something is named, yet one who finds nothing can say so.
    let class = if named.is_empty() { "control" } else { "next-step" };
    let action = html! {
        <button type="button" {class} onclick={grade}>{ shop.say_with("walk.inspect-done", &[("n", named.len().to_string())]) }{ icon(Picture::Go) }</button>
    };
    let row = |nth: usize| row(&shop, walk, named, nth, &props.name);
    html! {
        <Frame class="sheet walk-report" title={shop.text(&format!("walk.name.{}", walk.start().info.slug))} note={shop.text("walk.mode.inspect")} back={Some(Route::Walks)} cautions={shop.cautions_for(&[])} {action}>
            { props.strip.clone() }
            <p key="lead" class="lead">{ shop.say("walk.inspect-lead") }</p>
            <Scrub key="scrub" walk={walk.clone()} first=0 {on_turn} again={None::<Callback<Shared<Walk>>>}>
                <Naming key="naming" at={turn.checked_sub(1)} {add} />
            </Scrub>
            <section key="named" hidden={named.is_empty()}>
                <h2>{ shop.say("walk.named") }</h2>
                <ul class="rows">{ for (0..named.len()).map(row) }</ul>
            </section>
        </Frame>
    }
}

/// What was named, with a button that takes it back.
fn row(
    shop: &Shop,
    walk: &Walk,
    named: &[(usize, String)],
    nth: usize,
    name: &Callback<Vec<(usize, String)>>,
) -> Html {
    let Some((turn, rule)) = named.get(nth) else { return Html::default() };
    let did = words::step_of(shop, walk, *turn);
    let label = shop.say_with("walk.unname", &[("what", did.to_string())]);
    let others = named.iter().enumerate().filter(|(place, _)| *place != nth);
    let others: Vec<(usize, String)> = others.map(|(_, one)| one.clone()).collect();
    let take_off = name.reform(move |_: MouseEvent| others.clone());
    html! {
        <li key={format!("{turn}-{rule}")}>
            <span class="words"><b>{ did }</b><span class="note">{ shop.text(&format!("rule.{rule}")) }</span></span>
            <button type="button" class="control square" aria-label={label} onclick={take_off}>{ icon(Picture::Cross) }</button>
        </li>
    }
}
