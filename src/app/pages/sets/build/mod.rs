//! Building a set: what it asks, how, and what is dealt, side by side. Each touch is kept, so that a half-built set is there
//! again tomorrow.

mod choice;
mod from;
mod how;
mod length;
mod missing;
mod more;
mod own;
mod own_card;
mod preview;
mod save;
mod warned;

use super::maker::use_maker;
use crate::app::hooks::{use_sets, use_sheets};
use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::Task;
use crate::exchange::CarriedSheet;
use crate::exchange::Editions;
use crate::exchange::set::Set;
use std::rc::Rc;
use yew::prelude::*;

/// Cards of a set that nobody has changed yet.
const CARDS: u32 = 10;

/// The set that is being built, and how it is changed.
#[derive(Debug, Clone, PartialEq)]
struct Building {
    set: Rc<Set>,
    put: Callback<Set>,
}

impl Building {
    /// What an event changes in the set. With another number of cards the pass rule wants the same share of them.
    fn change<E: 'static>(&self, change: impl Fn(&mut Set, E) + 'static) -> Callback<E> {
        let set = Rc::clone(&self.set);
        self.put.reform(move |event: E| {
            let mut made = (*set).clone();
            change(&mut made, event);
            let (before, after) = (set.count(), made.count());
            if before != after {
                made.task.pass = made.task.pass.map(|pass| pass.of_cards(before, after));
            }
            made
        })
    }

    /// What an event changes in what it asks.
    fn task<E: 'static>(&self, change: impl Fn(&mut Task, E) + 'static) -> Callback<E> {
        self.change(move |set, event| change(&mut set.task, event))
    }
}

/// A set with nothing in it, on the sheet in use.
fn blank(shop: &Shop, editions: &Editions) -> Option<Set> {
    let sheet = shop.sheet()?;
    Some(Set {
        title: String::new(),
        note: String::new(),
        by: String::new(),
        at: String::new(),
        sheet: CarriedSheet::of(sheet, editions),
        task: Task { count: CARDS, ..Task::default() },
        from: None,
        until: None,
        own_cards: Vec::new(),
    })
}

#[component]
pub(in crate::app) fn NewSet() -> Html {
    let shop = use_shop();
    let sets = use_sets();
    let maker = use_maker();
    let editions = use_sheets().editions;
    let first = use_memo((shop.clone(), editions), |(shop, editions)| blank(shop, editions).map(Rc::new));
    let set = sets.draft.clone().or_else(|| (*first).clone());
    let put = sets.edit.reform(Some);
    // Whether saving was tried.
    let tried = use_state(|| false);
    let Some(set) = set.filter(|_| sets.loaded) else {
        return html! {
            <Frame class="sheet" title={shop.say("sets.build.title")} back={Some(Route::Sets)} cautions={shop.cautions_for(&[])}>
                <p class="lead" role="status">{ shop.say("sets.loading") }</p>
            </Frame>
        };
    };
    let building = Building { set, put };
    let on_try = tried.setter();
    let on_try = Callback::from(move |()| on_try.set(true));
    html! {
        <Frame class="build-set" title={shop.say("sets.build.title")} back={Some(Route::Sets)} cautions={shop.cautions_for(&[])}>
            <div key="form" class="build-form">
                { from::from(&shop, &building, *tried) }
                { how::how(&shop, &building) }
                <more::More building={building.clone()} />
            </div>
            <div key="side" class="build-side">
                <preview::Preview set={Rc::clone(&building.set)} />
                <save::Save {building} {maker} tried={*tried} {on_try} />
            </div>
        </Frame>
    }
}
