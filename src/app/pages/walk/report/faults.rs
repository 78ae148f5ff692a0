//! The faults of a walk by what made them: those of one rule together.

use crate::app::pages::walk::{lines, words};
use crate::app::parts::rules;
use crate::app::state::Shop;
use crate::walk::report::Found;
use crate::walk::{Walk, When};
use yew::prelude::*;

pub(super) fn faults(shop: &Shop, walk: &Walk, all: &[Found]) -> Html {
    let mut groups: Vec<Vec<&Found>> = Vec::new();
    for found in all {
        match groups.last_mut().filter(|group| group.first().is_some_and(|first| first.rule == found.rule)) {
            Some(group) => group.push(found),
            None => groups.push(vec![found]),
        }
    }
    let group = |of: &Vec<&Found>| {
        let Some(first) = of.first() else { return Html::default() };
        html! {
            <li key={first.shown} class="paper walk-cause">
                { for of.iter().map(|found| one(shop, walk, found)) }
                { rules(shop, &[first.rule]) }
            </li>
        }
    };
    html! {
        <section key="faults">
            <h2>{ shop.say("walk.faults") }</h2>
            <p key="none" hidden={!all.is_empty()}>{ shop.say("walk.faults-none") }</p>
            <ul class="walk-causes" hidden={all.is_empty()}>{ for groups.iter().map(group) }</ul>
        </section>
    }
}

fn one(shop: &Shop, walk: &Walk, found: &Found) -> Html {
    let name = words::fault_of(shop, found.faults, found.rule.0);
    let turn = |turn: usize| walk.turns().get(turn).map_or(0.0, |turn| turn.ended);
    let showed = match found.when {
        When::AtWork => {
            shop.say_with("walk.showed", &[("at", words::at(shop, turn(found.turn)).to_string())])
        }
        When::HandOver => shop.say("walk.showed-at-hand-over"),
        When::After => shop.say("walk.showed-after"),
    };
    let end = match found.mended {
        Some(at) => shop.say_with("walk.mended-at", &[("at", words::at(shop, turn(at)).to_string())]),
        None => {
            let cost = [
                ("work", words::hours(shop, found.cost.rework_h)),
                ("wait", words::hours(shop, found.cost.wait_h)),
            ];
            shop.say_with("walk.not-mended", &cost)
        }
    };
    html! {
        <article key={found.shown} class="walk-found">
            <h3>{ name }{ ", " }{ words::on(shop, walk.start(), &found.parts) }</h3>
            <p class="walk-made">{ lines::made(shop, walk, found.made.1) }</p>
            <p>{ showed }{ " " }{ end }</p>
        </article>
    }
}
