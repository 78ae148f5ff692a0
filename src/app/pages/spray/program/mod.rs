//! Passes programmed by keys instead of a hand: sets of them one after another, then all are run.

mod fields;
mod set;

use super::asked::OfCard;
use super::run as spray;
use super::words;
use crate::app::hooks::use_wanted;
use crate::app::parts::{Field, Frame, Picture, icon};
use crate::app::state::{Shop, use_shop};
use crate::content::CautionStage;
use crate::device::once_drawn;
use crate::device::page;
use crate::spraying::edge::Side;
use crate::spraying::{Outcome, Passes, Setup};
use fields::{Along, Number, Typed};
use set::Set;
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
    let wrong = typed.wrong(*goes, setup, &shop);
    let field = |one: Number| {
        let on_input = {
            let (set, typed) = (typed.setter(), (*typed).clone());
            Callback::from(move |text: String| set.set(typed.with(one.key, text)))
        };
        let bounds = [("from", number(&shop, one.least)), ("to", number(&shop, one.most))];
        let key = if one.is_whole() { "spray.program.allowed-whole" } else { "spray.program.allowed" };
        let allowed = shop.say_with(key, &bounds);
        let wrong = if wrong.contains(&one.key) { allowed } else { AttrValue::default() };
        html! { <Field key={one.key} id={id(one.key)} label={shop.say(&format!("spray.program.{}", one.key))} value={typed.text(one.key).to_owned()} {on_input} {wrong} /> }
    };
    let add = {
        let (typed, goes, setup) = ((*typed).clone(), *goes, Rc::clone(setup));
        let (sets, said, shop) = (sets.clone(), said.setter(), shop.clone());
        let wanted = wanted.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            wanted.none();
            match (typed.passes(goes, &setup, &shop), typed.wrong(goes, &setup, &shop).first()) {
                (Some(passes), _) => {
                    sets.set(sets.iter().cloned().chain([Set { goes, passes }]).collect());
                    said.set(shop.say("spray.program.added"));
                }
                (None, Some(key)) => {
                    said.set(AttrValue::default());
                    page::focus(&id(key));
                }
                (None, None) => {}
            }
        })
    };
    let run = {
        let (sets, setup, said, shop) = ((*sets).clone(), Rc::clone(setup), said.setter(), shop.clone());
        let (on_done, of_card, wanted) = (props.on_done.clone(), props.of_card.clone(), wanted.clone());
        Callback::from(move |_: MouseEvent| {
            if sets.is_empty() {
                return said.set(shop.say("spray.program.none"));
            }
            let passes: Vec<Passes> = sets.iter().flat_map(|set: &Set| set.passes.iter().cloned()).collect();
            if let Some(card) = &of_card {
                return card.on_passes.emit(passes);
            }
            said.set(shop.say("spray.measuring"));
            let (setup, said, shop) = (Rc::clone(&setup), said.clone(), shop.clone());
            let (on_done, is_wanted) = (on_done.clone(), wanted.anew());
            once_drawn(async move |mut slices| match spray::programmed(&passes, &setup, &mut slices).await {
                Ok(run) if is_wanted() => on_done.emit(Rc::new(run)),
                Ok(_) => {}
                Err(_) => said.set(shop.say("spray.program.too-long")),
            });
        })
    };
    let taken = |(nth, set): (usize, &Set)| {
        let drop = {
            let (sets, wanted) = (sets.clone(), wanted.clone());
            move |_: MouseEvent| {
                wanted.none();
                let left =
                    sets.iter().enumerate().filter(|(other, _)| *other != nth).map(|(_, set)| set.clone());
                sets.set(left.collect());
            }
        };
        let named = [("n", (nth + 1).to_string())];
        html! {
            <li key={nth}>
                <span class="words"><b>{ shop.say_with("spray.program.set", &named) }</b><span class="note">{ set::told(&shop, set) }</span></span>
                <button type="button" class="control" aria-label={shop.say_with("spray.program.drop-named", &named)} onclick={drop}>{ shop.say("spray.program.drop") }</button>
            </li>
        }
    };
    let hand = props.on_hand.reform(|_: MouseEvent| ());
    let action = html! {
        <div class="spray-foot">
            { OfCard::leave(props.of_card.as_ref(), &shop) }
            <button key="hand" type="button" class="control" onclick={hand}>{ shop.say("spray.program.hand") }</button>
            <button key="run" type="button" class="next-step" onclick={run}>{ shop.say(if props.of_card.is_some() { "spray.take-passes" } else { "spray.program.run" }) }{ icon(Picture::Go) }</button>
        </div>
    };
    html! {
        <Frame class="sheet spray-program" title={words::name(&shop, &setup.task)} back={OfCard::back(props.of_card.as_ref())} cautions={shop.cautions_for(&[CautionStage::Spray])} {action}>
            { OfCard::said(props.of_card.as_ref()) }
            <p key="lead" class="lead">{ shop.say("spray.program.lead") }</p>
            <p key="asks">{ words::asks(&shop, setup) }</p>
            <p key="face">{ face(&shop, setup) }</p>
            <section key="sets" hidden={sets.is_empty()}>
                <h2>{ shop.say("spray.program.sets") }</h2>
                <ol class="rows">{ for sets.iter().enumerate().map(taken) }</ol>
            </section>
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
