//! A task at the stand: sprayed by hand, with the second control beside it.

use super::asked::OfCard;
use super::gun::{self, Gun};
use super::run;
use super::words;
use crate::app::hooks::{Wanted, use_wanted};
use crate::app::parts::{Frame, Picture, SprayStand, Stand, Turn, icon};
use crate::app::state::{Shop, use_shop};
use crate::device::once_drawn;
use crate::spraying::{Outcome, Setup};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties)]
pub(super) struct AtStandProps {
    pub(super) setup: Rc<Setup>,
    pub(super) on_done: Callback<Rc<Outcome>>,
    pub(super) on_program: Callback<bool>,
    /// The card that it is of, where it is of one: then nothing is measured here.
    #[prop_or_default]
    pub(super) of_card: Option<OfCard>,
}

impl PartialEq for AtStandProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.setup, &other.setup)
            && self.of_card == other.of_card
            && (&self.on_done, &self.on_program) == (&other.on_done, &other.on_program)
    }
}

/// Somebody at the stand: what they do there, and what is said of it.
#[derive(Clone)]
struct AtWork {
    shop: Shop,
    /// None before the stand is drawn.
    stand: Rc<RefCell<Option<Stand>>>,
    said: UseStateSetter<AttrValue>,
    wanted: Wanted,
}

impl AtWork {
    fn say(&self, key: &str) {
        self.said.set(self.shop.say(key));
    }

    /// A stroke was begun or ended.
    fn stroked(&self) {
        // What is sprayed now is not part of a run that is being measured.
        self.wanted.none();
        let full = self.stand.borrow().as_ref().is_some_and(Stand::is_full);
        self.said.set(if full { self.shop.say("spray.full") } else { AttrValue::default() });
    }

    /// Waits for what is sprayed to dry.
    fn wait(&self) {
        self.wanted.none();
        let stand = self.stand.borrow();
        let Some(stand) = &*stand else { return };
        let full = stand.is_full();
        if !full {
            stand.wait(gun::WAIT);
        }
        self.say(if stand.is_bare() {
            "spray.wait-bare"
        } else if full {
            "spray.full"
        } else {
            "spray.waited"
        });
    }

    /// Hands a run to its card, or measures it.
    fn look(&self, of_card: Option<&OfCard>, on_done: &Callback<Rc<Outcome>>) {
        let done = self.stand.borrow().as_ref().map(Stand::done);
        match (done, of_card) {
            (Some(Ok((path, _))), Some(card)) => card.on_path.emit(path),
            (Some(Ok((path, sprayer))), None) => {
                self.say("spray.measuring");
                let (on_done, is_wanted) = (on_done.clone(), self.wanted.anew());
                once_drawn(async move |mut slices| {
                    let run = run::measured(path, sprayer, &mut slices).await;
                    if is_wanted() {
                        on_done.emit(Rc::new(run));
                    }
                });
            }
            _ => self.say("spray.bare"),
        }
    }
}

#[component]
pub(super) fn AtStand(props: &AtStandProps) -> Html {
    let shop = use_shop();
    let setup = &props.setup;
    let held = use_state_eq(|| gun::first(setup));
    let turn = use_state_eq(Turn::default);
    let spraying = use_state_eq(|| false);
    let said = use_state_eq(AttrValue::default);
    let stand = use_mut_ref(|| None::<Stand>);
    let wanted = use_wanted();
    let pressed = use_memo((), |()| Rc::new(Cell::new(false)));
    let at_work = AtWork { shop: shop.clone(), stand: Rc::clone(&stand), said: said.setter(), wanted };
    let on_ready = Callback::from(move |ready: Stand| *stand.borrow_mut() = Some(ready));
    let on_stroke = {
        let (spraying, at_work) = (spraying.setter(), at_work.clone());
        Callback::from(move |begun: bool| {
            at_work.stroked();
            spraying.set(begun);
        })
    };
    let on_wait = {
        let at_work = at_work.clone();
        Callback::from(move |()| at_work.wait())
    };
    let look = {
        let (of_card, on_done) = (props.of_card.clone(), props.on_done.clone());
        Callback::from(move |_: MouseEvent| at_work.look(of_card.as_ref(), &on_done))
    };
    let program = props.on_program.reform(|_: MouseEvent| true);
    let controls = Gun {
        shop: &shop,
        setup,
        held: *held,
        turn: *turn,
        spraying: *spraying,
        pressed: (*pressed).clone(),
        on_held: setting(&held),
        on_turn: setting(&turn),
        on_wait,
    };
    let action = html! {
        <div class="spray-foot">
            { OfCard::leave(props.of_card.as_ref(), &shop) }
            <button key="program" type="button" class="control" disabled={*spraying} onclick={program}>{ shop.say("spray.to-program") }</button>
            <button key="look" type="button" class="next-step" onclick={look}>{ shop.say(if props.of_card.is_some() { "spray.take" } else { "spray.look" }) }{ icon(Picture::Go) }</button>
        </div>
    };
    html! {
        <Frame class="spray" title={words::name(&shop, &setup.task)} back={OfCard::back(props.of_card.as_ref())} cautions={OfCard::cautions(props.of_card.as_ref(), &shop)} {action}>
            <div key="work" class="spray-work">
                <div key="words" class="spray-words">
                    <p key="asks"><b>{ words::asks(&shop, setup) }</b></p>
                    { OfCard::said(props.of_card.as_ref()) }
                    <details key="how" class="seen"><summary>{ shop.say("spray.how") }</summary>{ how(&shop, setup) }</details>
                </div>
                <p key="said" class="spray-notice" role="status" hidden={said.is_empty()}>{ (*said).clone() }</p>
                { controls.draw() }
                <SprayStand key="stand" setup={Rc::clone(setup)} held={*held} turn={*turn} alt={shop.say("spray.alt")} {on_ready} {on_stroke} />
            </div>
        </Frame>
    }
}

/// How it is sprayed on a screen, and what that is not.
fn how(shop: &Shop, setup: &Setup) -> Html {
    html! {
        <>
            <p>{ shop.say("spray.hand-how") }</p>
            <p>{ words::gun(shop, setup) }</p>
            <p>{ shop.say("spray.judgement") }</p>
        </>
    }
}

/// Sets a state.
fn setting<T: 'static>(state: &UseStateHandle<T>) -> Callback<T> {
    let set = state.setter();
    Callback::from(move |value| set.set(value))
}
