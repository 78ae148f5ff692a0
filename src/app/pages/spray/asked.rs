//! A card that is sprayed: what it asks of its face, and its stand.

use super::at_stand::AtStand;
use super::program::Program;
use super::words;
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::card::{Card, sprayed};
use crate::content::CautionStage;
use crate::spraying::run::Run as Given;
use crate::spraying::{Outcome, Passes, Path, Setup};
use std::rc::Rc;
use yew::prelude::*;

/// The face of a card on the shop sheet that it was dealt on; none of a card that is not sprayed.
pub(in crate::app) fn setup_of(shop: &Shop, card: &Card, sheet: &str) -> Option<Rc<Setup>> {
    sprayed::setup(card, &shop.world(sheet)?).map(Rc::new)
}

/// What is asked of a face, the gun, and what spraying on a screen is not.
pub(in crate::app) fn asked(shop: &Shop, setup: Option<&Rc<Setup>>) -> Html {
    let Some(setup) = setup else { return Html::default() };
    html! {
        <div key="face" class="paper face-asked">
            <p><b>{ words::asks(shop, setup) }</b></p>
            <p>{ words::gun(shop, setup) }</p>
            <p class="note">{ shop.say("spray.judgement") }</p>
        </div>
    }
}

/// A card whose face stands there: its run is taken and not measured, and the way leads back to it.
#[derive(Clone, PartialEq)]
pub(super) struct OfCard {
    /// What was wrong with the run before.
    said: AttrValue,
    cautions: Vec<AttrValue>,
    on_leave: Callback<()>,
    pub(super) on_path: Callback<Path>,
    pub(super) on_passes: Callback<Vec<Passes>>,
}

impl OfCard {
    /// Where back leads: to the tasks, and from a card nowhere but to the card.
    pub(super) fn back(of: Option<&Self>) -> Option<Route> {
        of.is_none().then_some(Route::Sprays)
    }

    /// The cautions of the stand: those of spraying, and of a card those that stand below it.
    pub(super) fn cautions(of: Option<&Self>, shop: &Shop) -> Vec<AttrValue> {
        of.map_or_else(|| shop.cautions_for(&[CautionStage::Spray]), |card| card.cautions.clone())
    }

    /// The way back to the card.
    pub(super) fn leave(of: Option<&Self>, shop: &Shop) -> Html {
        let Some(card) = of else { return Html::default() };
        html! { <button key="leave" type="button" class="control" onclick={card.on_leave.reform(|_: MouseEvent| ())}>{ shop.say("spray.to-card") }</button> }
    }

    /// What was wrong with the run before.
    pub(super) fn said(of: Option<&Self>) -> Html {
        let said = of.map(|card| card.said.clone()).unwrap_or_default();
        html! { <p key="before" class="kraft" role="status" hidden={said.is_empty()}>{ said.clone() }</p> }
    }
}

#[derive(Properties)]
pub(in crate::app) struct CardStandProps {
    pub(in crate::app) setup: Rc<Setup>,
    /// Those that stand below the card.
    pub(in crate::app) cautions: Vec<AttrValue>,
    pub(in crate::app) on_run: Callback<Given>,
    pub(in crate::app) on_leave: Callback<()>,
}

impl PartialEq for CardStandProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.setup, &other.setup)
            && (&self.cautions, &self.on_run, &self.on_leave)
                == (&other.cautions, &other.on_run, &other.on_leave)
    }
}

/// The stand of a card: what was sprayed, by hand or in programmed passes, is its answer. A run that is too long to be kept
/// is begun anew.
#[component]
pub(in crate::app) fn CardStand(props: &CardStandProps) -> Html {
    let shop = use_shop();
    let setup = Rc::clone(&props.setup);
    let programmed = use_state_eq(|| false);
    // A run too long has a stand of its own after it.
    let nth = use_state_eq(|| 0_u32);
    let said = use_state_eq(AttrValue::default);
    let on_path = {
        let (nth, said, shop, on_run) = (nth.clone(), said.setter(), shop.clone(), props.on_run.clone());
        Callback::from(move |path: Path| match Given::hand(&path) {
            Ok(run) => on_run.emit(run),
            Err(_) => {
                nth.set(*nth + 1);
                said.set(shop.say("spray.too-long"));
            }
        })
    };
    let on_passes = {
        let (setup, said, shop, on_run) =
            (Rc::clone(&setup), said.setter(), shop.clone(), props.on_run.clone());
        Callback::from(move |sets: Vec<Passes>| match Given::shortest(sets, &setup) {
            Ok(run) => on_run.emit(run),
            Err(_) => said.set(shop.say("spray.program.too-long")),
        })
    };
    let on_program = {
        let (programmed, said) = (programmed.setter(), said.setter());
        Callback::from(move |program: bool| {
            said.set(AttrValue::default());
            programmed.set(program);
        })
    };
    let said = (*said).clone();
    let (cautions, on_leave) = (props.cautions.clone(), props.on_leave.clone());
    let of_card = Some(OfCard { said, cautions, on_leave, on_path, on_passes });
    let on_done = Callback::from(|_: Rc<Outcome>| ());
    if *programmed {
        return html! { <Program key="program" {setup} {of_card} {on_done} on_hand={on_program.reform(|()| false)} /> };
    }
    html! { <AtStand key={*nth} {setup} {of_card} {on_done} {on_program} /> }
}
