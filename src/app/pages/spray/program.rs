//! Passes programmed by keys instead of a hand: sets of them one after another, then all are run.

use super::fields::{self, Typed};
use super::run::Run;
use super::words;
use crate::app::parts::{Field, Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::CautionStage;
use crate::device::page;
use crate::quantity::{Measure, Unit};
use crate::spraying::Setup;
use crate::spraying::program::Passes;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties)]
pub(super) struct ProgramProps {
    pub(super) setup: Rc<Setup>,
    pub(super) on_done: Callback<Rc<Run>>,
    /// Back to spraying by hand.
    pub(super) on_hand: Callback<()>,
}

impl PartialEq for ProgramProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.setup, &other.setup)
            && (&self.on_done, &self.on_hand) == (&other.on_done, &other.on_hand)
    }
}

#[component]
pub(super) fn Program(props: &ProgramProps) -> Html {
    let shop = use_shop();
    let setup = &props.setup;
    let typed = use_state(|| fields::first(setup));
    let sets = use_state(Vec::<Passes>::new);
    let said = use_state_eq(AttrValue::default);
    let wrong = fields::wrong(&typed);
    let field = |(nth, one): (usize, Typed)| {
        let id = id(one.key);
        let on_input = {
            let (set, typed) = (typed.setter(), (*typed).clone());
            Callback::from(move |text: String| {
                let mut typed = typed.clone();
                if let Some(slot) = typed.get_mut(nth) {
                    *slot = text;
                }
                set.set(typed);
            })
        };
        let bounds = [("from", number(one.least)), ("to", number(one.most))];
        let allowed = shop.say_with("spray.program.allowed", &bounds);
        let wrong = if wrong.contains(&one.key) { allowed } else { AttrValue::default() };
        let value = typed.get(nth).cloned().unwrap_or_default();
        html! { <Field key={one.key} {id} label={shop.say(&format!("spray.program.{}", one.key))} {value} {on_input} {wrong} /> }
    };
    let add = {
        let (typed, sets, said, shop) = ((*typed).clone(), sets.clone(), said.setter(), shop.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            match (fields::set(&typed), fields::wrong(&typed).first()) {
                (Some(set), _) => {
                    sets.set(sets.iter().cloned().chain([set]).collect());
                    said.set(shop.say("spray.program.added"));
                }
                (None, Some(key)) => page::focus(&id(key)),
                (None, None) => {}
            }
        })
    };
    let run = {
        let (sets, setup, said, shop) = ((*sets).clone(), Rc::clone(setup), said.setter(), shop.clone());
        let on_done = props.on_done.clone();
        Callback::from(move |_: MouseEvent| {
            if sets.is_empty() {
                return said.set(shop.say("spray.program.none"));
            }
            said.set(shop.say("spray.measuring"));
            let (sets, setup, said, shop) = (sets.clone(), Rc::clone(&setup), said.clone(), shop.clone());
            let on_done = on_done.clone();
            page::once_drawn(move || match Run::programmed(&sets, &setup) {
                Ok(run) => on_done.emit(Rc::new(run)),
                Err(_) => said.set(shop.say("spray.program.too-long")),
            });
        })
    };
    let taken = |(nth, set): (usize, &Passes)| {
        let drop = {
            let sets = sets.clone();
            move |_: MouseEvent| {
                let left =
                    sets.iter().enumerate().filter(|(other, _)| *other != nth).map(|(_, set)| set.clone());
                sets.set(left.collect());
            }
        };
        let named = [("n", (nth + 1).to_string())];
        html! {
            <li key={nth}>
                <span class="words"><b>{ shop.say_with("spray.program.set", &named) }</b><span class="note">{ told(&shop, set) }</span></span>
                <button type="button" class="control" aria-label={shop.say_with("spray.program.drop-named", &named)} onclick={drop}>{ shop.say("spray.program.drop") }</button>
            </li>
        }
    };
    let hand = props.on_hand.reform(|_: MouseEvent| ());
    let action = html! {
        <div class="spray-foot">
            <button key="hand" type="button" class="control" onclick={hand}>{ shop.say("spray.program.hand") }</button>
            <button key="run" type="button" class="next-step" onclick={run}>{ shop.say("spray.program.run") }{ icon(Picture::Go) }</button>
        </div>
    };
    html! {
        <Frame class="sheet spray-program" title={words::name(&shop, &setup.task)} back={Some(Route::Sprays)} cautions={shop.cautions_for(&[CautionStage::Spray])} {action}>
            <p key="lead" class="lead">{ shop.say("spray.program.lead") }</p>
            <p key="asks">{ words::asks(&shop, setup) }</p>
            <p key="face">{ face(&shop, setup) }</p>
            <section key="sets" hidden={sets.is_empty()}>
                <h2>{ shop.say("spray.program.sets") }</h2>
                <ol class="rows">{ for sets.iter().enumerate().map(taken) }</ol>
            </section>
            <form key="form" class="form" onsubmit={add}>
                <h2>{ shop.say("spray.program.passes") }</h2>
                <div class="spray-fields">{ for fields::all().into_iter().enumerate().map(field) }</div>
                <button type="submit" class="control">{ shop.say("spray.program.add") }</button>
            </form>
            <p key="said" role="status">{ (*said).clone() }</p>
        </Frame>
    }
}

fn id(key: &str) -> String {
    format!("spray-{key}")
}

fn number(value: f64) -> String {
    Measure::new(value, Unit::Ratio, if value.fract() == 0.0 { 0 } else { 2 }).figure()
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

/// A set in one line.
fn told(shop: &Shop, set: &Passes) -> AttrValue {
    let place = |place: Option<&(f64, f64)>| {
        let (x, y) = place.copied().unwrap_or_default();
        format!("{}, {}", words::length(shop, x), words::length(shop, y))
    };
    let named = [
        ("from", place(set.line.first())),
        ("to", place(set.line.last())),
        ("wide", words::length(shop, set.wide)),
        ("distance", words::length(shop, set.distance)),
        ("speed", words::speed(shop, set.speed)),
        ("overlap", words::share(shop, set.overlap)),
        ("lead", words::length(shop, set.lead)),
        ("lag", words::length(shop, set.lag)),
        ("wait", words::seconds(shop, set.wait)),
    ];
    shop.say_with("spray.program.told", &named)
}
