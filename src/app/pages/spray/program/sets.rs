//! The sets of passes that were added: dropped again, or all of them run.

use super::fields::{Along, Typed};
use super::set::{self, Set};
use crate::app::hooks::Wanted;
use crate::app::pages::spray::asked::OfCard;
use crate::app::pages::spray::run;
use crate::app::state::Shop;
use crate::device::{once_drawn, page};
use crate::spraying::{Outcome, Passes, Setup};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Clone)]
pub(super) struct Sets {
    pub(super) shop: Shop,
    pub(super) setup: Rc<Setup>,
    pub(super) sets: UseStateHandle<Vec<Set>>,
    pub(super) said: UseStateSetter<AttrValue>,
    pub(super) wanted: Wanted,
}

impl Sets {
    fn say(&self, key: &str) {
        self.said.set(self.shop.say(key));
    }

    /// Adds what was typed; where it is not allowed, the first number that is not takes the focus.
    pub(super) fn add(&self, typed: &Typed, goes: Along) {
        self.wanted.none();
        let (setup, shop) = (&self.setup, &self.shop);
        match (typed.passes(goes, setup, shop), typed.wrong(goes, setup, shop).first()) {
            (Some(passes), _) => {
                self.sets.set(self.sets.iter().cloned().chain([Set { goes, passes }]).collect());
                self.say("spray.program.added");
            }
            (None, Some(key)) => {
                self.said.set(AttrValue::default());
                page::focus(&super::id(key));
            }
            (None, None) => {}
        }
    }

    /// Takes one out.
    fn drop(&self, nth: usize) {
        self.wanted.none();
        let others = self.sets.iter().enumerate().filter(|(other, _)| *other != nth);
        self.sets.set(others.map(|(_, set)| set.clone()).collect());
    }

    /// Hands all passes to their card, or sprays and measures them.
    pub(super) fn run(&self, of_card: Option<&OfCard>, on_done: &Callback<Rc<Outcome>>) {
        if self.sets.is_empty() {
            return self.say("spray.program.none");
        }
        let passes: Vec<Passes> = self.sets.iter().flat_map(|set| set.passes.iter().cloned()).collect();
        if let Some(card) = of_card {
            return card.on_passes.emit(passes);
        }
        self.say("spray.measuring");
        let (own, on_done, is_wanted) = (self.clone(), on_done.clone(), self.wanted.anew());
        once_drawn(async move |mut slices| match run::programmed(&passes, &own.setup, &mut slices).await {
            Ok(run) if is_wanted() => on_done.emit(Rc::new(run)),
            Ok(_) => {}
            Err(_) => own.say("spray.program.too-long"),
        });
    }

    /// All of them in words.
    pub(super) fn list(&self) -> Html {
        html! {
            <section key="sets" hidden={self.sets.is_empty()}>
                <h2>{ self.shop.say("spray.program.sets") }</h2>
                <ol class="rows">{ for self.sets.iter().enumerate().map(|(nth, set)| self.row(nth, set)) }</ol>
            </section>
        }
    }

    fn row(&self, nth: usize, set: &Set) -> Html {
        let shop = &self.shop;
        let named = [("n", (nth + 1).to_string())];
        let own = self.clone();
        let drop = move |_: MouseEvent| own.drop(nth);
        html! {
            <li key={nth}>
                <span class="words"><b>{ shop.say_with("spray.program.set", &named) }</b><span class="note">{ set::told(shop, &self.setup, set) }</span></span>
                <button type="button" class="control" aria-label={shop.say_with("spray.program.drop-named", &named)} onclick={drop}>{ shop.say("spray.program.drop") }</button>
            </li>
        }
    }
}
