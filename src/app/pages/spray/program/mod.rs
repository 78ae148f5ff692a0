//! Passes programmed by keys instead of a hand: sets of them one after another, then all are run.

mod fields;
mod set;
mod sets;

use super::asked::OfCard;
use super::words;
use crate::app::hooks::use_wanted;
use crate::app::parts::{Field, Frame, Picture, icon};
use crate::app::state::{Shop, use_shop};
use crate::spraying::edge::Side;
use crate::spraying::{Outcome, Setup};
use fields::{Along, Number, Typed};
use set::Set;
use sets::Sets;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties)]
pub(super) struct ProgramProps {
    pub(super) setup: Rc<Setup>,
    pub(super) on_done: Callback<Rc<Outcome>>,
    /// Back to spraying by hand.
    pub(super) on_hand: Callback<()>,
    /// The card that they are of, where they are of one: then nothing is measured here.
    #[prop_or_default]
    pub(super) of_card: Option<OfCard>,
}

impl PartialEq for ProgramProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.setup, &other.setup)
            && self.of_card == other.of_card
            && (&self.on_done, &self.on_hand) == (&other.on_done, &other.on_hand)
    }
}

#[component]
pub(super) fn Program(props: &ProgramProps) -> Html {
    let shop = use_shop();
    let setup = &props.setup;
    let goes = use_state_eq(|| if setup.task.shade.is_some() { Along::Edge(None) } else { Along::Line });
    let typed = use_state(|| Typed::first(setup, &shop));
    let sets = use_state(Vec::<Set>::new);
    let said = use_state_eq(AttrValue::default);
    let wanted = use_wanted();
    let sets = Sets { shop: shop.clone(), setup: Rc::clone(setup), sets, said: said.setter(), wanted };
    let add = {
        let (sets, typed, goes) = (sets.clone(), (*typed).clone(), *goes);
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            sets.add(&typed, goes);
        })
    };
    let run = {
        let (sets, of_card, on_done) = (sets.clone(), props.of_card.clone(), props.on_done.clone());
        Callback::from(move |_: MouseEvent| sets.run(of_card.as_ref(), &on_done))
    };
    let wrong = typed.wrong(*goes, setup, &shop);
    let field = |one: Number| field(&shop, &typed, one, wrong.contains(&one.key));
    let hand = props.on_hand.reform(|_: MouseEvent| ());
    let action = html! {
        <div class="spray-foot">
            { OfCard::leave(props.of_card.as_ref(), &shop) }
            <button key="hand" type="button" class="control" onclick={hand}>{ shop.say("spray.program.hand") }</button>
            <button key="run" type="button" class="next-step" onclick={run}>{ shop.say(if props.of_card.is_some() { "spray.take-passes" } else { "spray.program.run" }) }{ icon(Picture::Go) }</button>
        </div>
    };
    html! {
        <Frame class="sheet spray-program" title={words::name(&shop, &setup.task)} back={OfCard::back(props.of_card.as_ref())} cautions={OfCard::cautions(props.of_card.as_ref(), &shop)} {action}>
            { OfCard::said(props.of_card.as_ref()) }
            <p key="lead" class="lead">{ shop.say("spray.program.lead") }</p>
            <p key="asks">{ words::asks(&shop, setup) }</p>
            <p key="face">{ face(&shop, setup) }</p>
            { sets.list() }
            <form key="form" class="form" onsubmit={add}>
                <h2>{ shop.say("spray.program.passes") }</h2>
                { along(&shop, &goes) }
                <div class="spray-fields">{ for fields::numbers(*goes, setup).into_iter().map(field) }</div>
                <button type="submit" class="control">{ shop.say("spray.program.add") }</button>
            </form>
            <p key="said" role="status">{ (*said).clone() }</p>
        </Frame>
    }
}

/// A number to be typed, with what is allowed where it is not.
fn field(shop: &Shop, typed: &UseStateHandle<Typed>, one: Number, is_wrong: bool) -> Html {
    let on_input = {
        let (set, typed) = (typed.setter(), (**typed).clone());
        Callback::from(move |text: String| set.set(typed.with(one.key, text)))
    };
    let bounds = [("from", number(shop, one.least)), ("to", number(shop, one.most))];
    let key = if one.is_whole() { "spray.program.allowed-whole" } else { "spray.program.allowed" };
    let wrong = if is_wrong { shop.say_with(key, &bounds) } else { AttrValue::default() };
    html! { <Field key={one.key} id={id(one.key)} label={shop.say(&format!("spray.program.{}", one.key))} value={typed.text(one.key).to_owned()} {on_input} {wrong} /> }
}

fn id(key: &str) -> String {
    format!("spray-{key}")
}

fn number(shop: &Shop, value: f64) -> String {
    shop.figure(value, if value.fract() == 0.0 { 0 } else { 2 })
}

/// Where the face lies, as places are typed.
fn face(shop: &Shop, setup: &Setup) -> AttrValue {
    let (least, most) = setup.outline.bounds();
    let named = [
        ("left", words::length(shop, least.0)),
        ("right", words::length(shop, most.0)),
        ("bottom", words::length(shop, most.1)),
    ];
    shop.say_with("spray.program.face", &named)
}

/// What the next set goes along, to be picked.
fn along(shop: &Shop, goes: &UseStateHandle<Along>) -> Html {
    let ways =
        [Along::Line, Along::Edge(None), Along::Edge(Some(Side::Left)), Along::Edge(Some(Side::Right))];
    let way = |one: Along| {
        let picked = **goes == one;
        let set = goes.setter();
        let onchange = move |_: Event| set.set(one);
        html! {
            <label key={set::key(one)} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name="spray-along" checked={picked} {onchange} /><span>{ shop.say(&format!("spray.program.along.{}", set::key(one))) }</span>
            </label>
        }
    };
    html! {
        <fieldset key="along" class="setting">
            <legend>{ shop.say("spray.program.along") }</legend>
            <div class="segments">{ for ways.map(way) }</div>
        </fieldset>
    }
}
