//! What came of a run: whether it passes and why not, one thing to do better, the film map beside that of a good run, the
//! figures, how each stroke was made.

mod chart;
mod figures;
mod lines;
mod maps;
mod replayed;
mod shade;
mod strokes;
mod verdict;

use super::run;
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::CautionStage;
use crate::device::once_drawn;
use crate::device::page;
use crate::spraying::Outcome;
use std::rc::Rc;
use yew::prelude::*;

/// Id of the heading that takes the focus.
const HEADING: &str = "spray-verdict";

#[derive(Properties)]
pub(super) struct OutcomeScreenProps {
    pub(super) run: Rc<Outcome>,
    pub(super) title: AttrValue,
    pub(super) on_again: Callback<()>,
}

impl PartialEq for OutcomeScreenProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.run, &other.run) && self.title == other.title && self.on_again == other.on_again
    }
}

#[component]
pub(super) fn OutcomeScreen(props: &OutcomeScreenProps) -> Html {
    let shop = use_shop();
    let run = &props.run;
    let good = use_good(run);
    use_effect_with((), |()| page::focus(HEADING));
    let again = props.on_again.reform(|_: MouseEvent| ());
    let action = html! {
        <div class="spray-foot">
            { next(&shop, run) }
            <button key="again" type="button" class="next-step" onclick={again}>{ icon(Picture::TurnLeft) }{ shop.say("spray.again") }</button>
        </div>
    };
    html! {
        <Frame class="sheet spray-outcome" title={props.title.clone()} back={Some(Route::Sprays)} cautions={shop.cautions_for(&[CautionStage::Spray])} {action}>
            { verdict::verdict(&shop, run) }
            { measured(&shop, run, good.as_ref()) }
        </Frame>
    }
}

/// All that was measured of a run, beside a good one.
fn measured(shop: &Shop, run: &Rc<Outcome>, good: Option<&Rc<Outcome>>) -> Html {
    html! {
        <>
            { maps::maps(shop, run, good) }
            { figures::figures(shop, run, good.map(Rc::as_ref)) }
            { shade::shade(shop, run) }
            { strokes::strokes(shop, run) }
            <p key="judgement" class="spray-judgement kraft">{ shop.say("spray.judgement") }</p>
        </>
    }
}

#[derive(Properties)]
pub(super) struct CameOfProps {
    pub(super) run: Rc<Outcome>,
}

impl PartialEq for CameOfProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.run, &other.run)
    }
}

/// What came of a run that answered a card, below the verdict on it.
#[component]
pub(super) fn CameOf(props: &CameOfProps) -> Html {
    let shop = use_shop();
    let run = &props.run;
    let good = use_good(run);
    html! {
        <div class="spray-outcome">
            { verdict::reasons(&shop, run) }
            { measured(&shop, run, good.as_ref()) }
        </div>
    }
}

/// A good run of the same task: what came of one's own run is there first.
#[hook]
fn use_good(run: &Rc<Outcome>) -> Option<Rc<Outcome>> {
    let good = use_state(|| None::<Rc<Outcome>>);
    use_effect_with((), {
        let (good, run) = (good.setter(), Rc::clone(run));
        move |()| {
            once_drawn(async move |mut slices| {
                good.set(run::good(run.setup(), &mut slices).await.map(Rc::new));
            });
        }
    });
    (*good).clone()
}

/// The way to the task that comes after this one; to all of them after the last.
fn next(shop: &Shop, run: &Outcome) -> Html {
    let tasks = &shop.content().sprays;
    let at = tasks.iter().position(|task| task.slug == run.setup().task.slug);
    let next = at.and_then(|at| tasks.get(at + 1));
    let (to, key) = match next {
        Some(task) => (Route::SprayOf { task: task.slug.clone() }, "spray.next"),
        None => (Route::Sprays, "spray.all"),
    };
    html! { <a key="next" href={to.address()} class="control">{ shop.say(key) }{ icon(Picture::Go) }</a> }
}
