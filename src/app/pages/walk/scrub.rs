//! The time line of a walk: the work as it looked after each decision, and another try from there.

use crate::app::pages::walk::detail::detail;
use crate::app::pages::walk::pictured::Pictured;
use crate::app::pages::walk::pins::{self, Pins};
use crate::app::pages::walk::{cut, lines, parts, words};
use crate::app::parts::{Picture, icon, letter};
use crate::app::state::{Shared, Shop, use_shop};
use crate::walk::Walk;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct ScrubProps {
    pub(super) walk: Shared<Walk>,
    /// Decisions after which it is first looked at.
    pub(super) first: usize,
    /// Told after how many it is looked at.
    #[prop_or_default]
    pub(super) on_turn: Callback<usize>,
    /// What of its mistakes has pins.
    #[prop_or_default]
    pub(super) pins: Pins,
    /// Begins another try from there; none where there is none.
    pub(super) again: Option<Callback<Shared<Walk>>>,
    /// What is asked of the decision that is looked at; it stands beside the work.
    #[prop_or_default]
    pub(super) children: Html,
}

#[component]
pub(super) fn Scrub(props: &ScrubProps) -> Html {
    let shop = use_shop();
    let walk = &props.walk;
    let most = walk.turns().len();
    let turn = use_state(|| props.first.min(most));
    use_effect_with((*turn, props.on_turn.clone()), |(turn, on_turn)| on_turn.emit(*turn));
    let looked = use_state(|| 0_usize);
    let then = use_memo((walk.clone(), *turn), |(walk, turn)| Shared::new(walk.at(*turn, shop.content())));
    let go = {
        let turn = turn.setter();
        Callback::from(move |to: usize| turn.set(to.min(most)))
    };
    let look = {
        let looked = looked.setter();
        Callback::from(move |part: usize| looked.set(part))
    };
    let again = {
        let (again, then) = (props.again.clone(), (*then).clone());
        move |_: MouseEvent| again.iter().for_each(|again| again.emit(then.clone()))
    };
    let over = *turn >= most;
    let part = |nth: usize| part_row(&shop, &then, nth, *looked == nth, &look);
    let count = walk.start().parts();
    html! {
        <section class="walk-scrub">
            <h2>{ shop.say("walk.time-line") }</h2>
            { line(&shop, walk, &then, *turn, &go) }
            <div key="beside" class="walk-beside">
                <Pictured key="picture" walk={(*then).clone()} picked={vec![*looked]} rows={count} on_part={look.clone()}>
                    <div class="walk-parts" role="radiogroup" aria-label={shop.say("walk.parts")}>{ for (0..count).map(part) }</div>
                </Pictured>
                <div key="aside" class="walk-aside">
                    { pins::known(&shop, &then) }
                    { pins::pins(&shop, walk, props.pins, *turn, &go) }
                    { props.children.clone() }
                </div>
            </div>
            <div key="below" class="walk-below">
                { cut::of_part(&shop, &then, *looked) }
                { lines::lines(&shop, &then) }
            </div>
            <button key="again" type="button" class="control" hidden={props.again.is_none()} disabled={over} onclick={again}>{ icon(Picture::TurnLeft) }{ shop.say(if over { "walk.again-first" } else { "walk.again-from" }) }</button>
        </section>
    }
}

/// The line with its buttons, and what was decided there.
fn line(shop: &Shop, walk: &Walk, then: &Walk, turn: usize, go: &Callback<usize>) -> Html {
    let most = walk.turns().len();
    let last = turn.checked_sub(1).and_then(|last| walk.turns().get(last));
    let did = last.map(|last| words::decision(shop, walk.start(), &last.decision));
    let values = last.map(|last| detail(shop, walk.start(), &last.decision)).unwrap_or_default();
    let named = [
        ("n", turn.to_string()),
        ("of", most.to_string()),
        ("at", words::at(shop, then.clock()).to_string()),
        ("what", did.unwrap_or_else(|| shop.say("walk.at-beginning").to_string())),
    ];
    let said = shop.say_with("walk.scrubbed", &named);
    let to = |to: usize| go.reform(move |_: MouseEvent| to);
    let go = go.clone();
    let oninput = move |event: InputEvent| {
        let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        input.and_then(|input| input.value().parse().ok()).into_iter().for_each(|to| go.emit(to));
    };
    html! {
        <>
            <div key="range" class="walk-range">
                <button key="back" type="button" class="control square" aria-label={shop.say("walk.one-back")} disabled={turn == 0} onclick={to(turn.saturating_sub(1))}>{ icon(Picture::Back) }</button>
                <input key="range" type="range" min="0" max={most.to_string()} step="1" value={turn.to_string()} {oninput}
                    aria-label={shop.say("walk.time-line")} aria-valuetext={said.clone()} />
                <button key="on" type="button" class="control square" aria-label={shop.say("walk.one-on")} disabled={turn >= most} onclick={to(turn + 1)}>{ icon(Picture::Go) }</button>
            </div>
            <p key="said" class="walk-scrubbed" role="status">{ said }<span class="note">{ values }</span></p>
        </>
    }
}

/// The label of a part, which is looked at when it is picked.
fn part_row(shop: &Shop, then: &Walk, part: usize, picked: bool, look: &Callback<usize>) -> Html {
    let many = then.start().parts() > 1;
    let seen = then.part(part).map(|lying| parts::seen(shop, &lying)).unwrap_or_default();
    let onchange = look.reform(move |_: Event| part);
    html! {
        <label key={part} class={classes!("walk-part", picked.then_some("picked"))}>
            <input type="radio" name="scrub-part" checked={picked} {onchange} />
            { icon(Picture::Tick) }<span><b>{ if many { format!("{} ", letter(part)) } else { String::new() } }{ words::part(shop, &then.start().info, part) }</b><span>{ seen }</span></span>
        </label>
    }
}
