//! The time line of a walk: the work as it looked after each decision, and another try from there.

use crate::app::pages::walk::detail::detail;
use crate::app::pages::walk::marks::Marks;
use crate::app::pages::walk::pictured::Pictured;
use crate::app::pages::walk::{cut, lines, marks, parts, words};
use crate::app::parts::{Picture, icon, letter};
use crate::app::state::{Shared, use_shop};
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
    /// What of its mistakes is marked.
    #[prop_or_default]
    pub(super) marks: Marks,
    /// Begins another try from there; none where there is none.
    pub(super) again: Option<Callback<Shared<Walk>>>,
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
    let oninput = {
        let turn = turn.setter();
        move |event: InputEvent| {
            let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
            if let Some(to) = input.and_then(|input| input.value().parse::<usize>().ok()) {
                turn.set(to.min(most));
            }
        }
    };
    let to_turn = {
        let turn = turn.setter();
        Callback::from(move |to: usize| turn.set(to.min(most)))
    };
    let go = |to: usize| {
        let turn = turn.setter();
        move |_: MouseEvent| turn.set(to.min(most))
    };
    let again = {
        let (again, then) = (props.again.clone(), (*then).clone());
        move |_: MouseEvent| again.iter().for_each(|again| again.emit(then.clone()))
    };
    let last = turn.checked_sub(1).and_then(|last| walk.turns().get(last));
    let did = last.map(|last| words::decision(&shop, walk.start(), &last.decision));
    let did = did.map_or_else(|| shop.say("walk.at-beginning"), AttrValue::from);
    let values = last.map(|last| detail(&shop, walk.start(), &last.decision)).unwrap_or_default();
    let now = words::at(&shop, then.clock());
    let named = [
        ("n", turn.to_string()),
        ("of", most.to_string()),
        ("at", now.to_string()),
        ("what", did.to_string()),
    ];
    let said = shop.say_with("walk.scrubbed", &named);
    let info = &walk.start().info;
    let part = |part: usize| {
        let picked = *looked == part;
        let set = looked.setter();
        let seen = then.part(part).map(|lying| parts::seen(&shop, &lying)).unwrap_or_default();
        html! {
            <label key={part} class={classes!("walk-part", picked.then_some("picked"))}>
                <input type="radio" name="scrub-part" checked={picked} onchange={move |_: Event| set.set(part)} />
                { icon(Picture::Tick) }<span><b>{ if walk.start().parts() > 1 { format!("{} ", letter(part)) } else { String::new() } }{ words::part(&shop, info, part) }</b><span>{ seen }</span></span>
            </label>
        }
    };
    let on_part = {
        let set = looked.setter();
        move |part: usize| set.set(part)
    };
    let name = words::part(&shop, info, *looked);
    let shown = then
        .part(*looked)
        .map(|lying| cut::cut(&shop, &name, &lying, then.start().shows_pores(*looked)))
        .unwrap_or_default();
    html! {
        <section class="walk-scrub">
            <h2>{ shop.say("walk.time-line") }</h2>
            <div key="range" class="walk-range">
                <button key="back" type="button" class="control square" aria-label={shop.say("walk.one-back")} disabled={*turn == 0} onclick={go(turn.saturating_sub(1))}>{ icon(Picture::Back) }</button>
                <input key="range" type="range" min="0" max={most.to_string()} step="1" value={turn.to_string()} {oninput}
                    aria-label={shop.say("walk.time-line")} aria-valuetext={said.clone()} />
                <button key="on" type="button" class="control square" aria-label={shop.say("walk.one-on")} disabled={*turn >= most} onclick={go(*turn + 1)}>{ icon(Picture::Go) }</button>
            </div>
            <p key="said" class="walk-scrubbed" role="status">{ said }<span class="note">{ values }</span></p>
            { marks::known(&shop, &then) }
            { marks::marks(&shop, walk, props.marks, *turn, &to_turn) }
            <Pictured key="picture" walk={(*then).clone()} picked={vec![*looked]} rows={walk.start().parts()} on_part={on_part}>
                <div class="walk-parts" role="radiogroup" aria-label={shop.say("walk.parts")}>{ for (0..walk.start().parts()).map(part) }</div>
            </Pictured>
            <div key="below" class="walk-below">
                { shown }
                { lines::lines(&shop, &then) }
            </div>
            <button key="again" type="button" class="control" hidden={props.again.is_none()} disabled={*turn >= most} onclick={again}>{ icon(Picture::TurnLeft) }{ shop.say("walk.again-from") }</button>
        </section>
    }
}
