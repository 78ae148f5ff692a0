//! One task: sprayed, or told of.

use super::at_stand::AtStand;
use super::outcome::OutcomeScreen;
use super::program::Program;
use super::words;
use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::content::CautionStage;
use crate::spraying::{Outcome, Setup};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct SprayPageProps {
    pub(in crate::app) task: String,
}

#[component]
pub(in crate::app) fn SprayPage(props: &SprayPageProps) -> Html {
    let shop = use_shop();
    let setup = use_memo((props.task.clone(), shop.clone()), |(slug, shop)| {
        let task = shop.content().sprays.iter().find(|task| task.slug == *slug)?;
        Setup::of(task, shop.content()).map(Rc::new)
    });
    let Some(setup) = (*setup).clone() else {
        return html! {
            <Frame class="sheet" title={shop.say("spray.title")} back={Some(Route::Sprays)} cautions={shop.cautions_for(&[CautionStage::Spray])}>
                <p key="gone" class="lead" role="status">{ shop.say("spray.gone") }</p>
            </Frame>
        };
    };
    html! { <Task {setup} /> }
}

#[derive(Properties)]
struct TaskProps {
    setup: Rc<Setup>,
}

impl PartialEq for TaskProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.setup, &other.setup)
    }
}

/// What the screen shows.
#[derive(Clone)]
enum Shown {
    Stand,
    Program,
    Done(Rc<Outcome>),
}

#[component]
fn Task(props: &TaskProps) -> Html {
    let shop = use_shop();
    let setup = &props.setup;
    let shown = use_state(|| Shown::Stand);
    // Each run has a stand of its own.
    let nth = use_state(|| 0_u32);
    let done = {
        let shown = shown.setter();
        Callback::from(move |run: Rc<Outcome>| shown.set(Shown::Done(run)))
    };
    let again = {
        let (shown, nth) = (shown.setter(), nth.clone());
        Callback::from(move |()| {
            nth.set(*nth + 1);
            shown.set(Shown::Stand);
        })
    };
    let program = {
        let shown = shown.setter();
        Callback::from(move |program: bool| shown.set(if program { Shown::Program } else { Shown::Stand }))
    };
    match &*shown {
        Shown::Stand => {
            html! { <AtStand key={*nth} setup={Rc::clone(setup)} on_done={done} on_program={program} /> }
        }
        Shown::Program => {
            html! { <Program key="program" setup={Rc::clone(setup)} on_done={done} on_hand={program.reform(|()| false)} /> }
        }
        Shown::Done(run) => {
            html! { <OutcomeScreen key="outcome" run={Rc::clone(run)} on_again={again} title={words::name(&shop, &setup.task)} /> }
        }
    }
}
