//! How a set is: how many cards, how hard, what for, whose cards, passed with what.

use super::Building;
use super::choice::{Choice, choices};
use super::length::{Stepper, stepper, usual};
use crate::app::state::Shop;
use crate::content::{Hard, PassRule, Purpose, Task};
use crate::rules::term::Term;
use yew::prelude::*;

/// Counts that are offered at one touch.
const USUAL: [u32; 5] = [6, 8, 10, 12, 15];
/// Right answers that are asked for when a rule is first made, of ten. Common practice, no source.
const PASS_TENTHS: u32 = 8;
/// The number that the same cards for all come of first.
const FIRST_SEED: u32 = 1;

pub(super) fn how(shop: &Shop, building: &Building) -> Html {
    let set = &building.set;
    let task = &set.task;
    let others = u32::try_from(set.own_cards.len()).unwrap_or(u32::MAX);
    let most = Task::COUNT_MOST.saturating_sub(others);
    let count = building.task(move |task, count: u32| task.count = count.clamp(1, most));
    let (fewer, more) = (task.count.saturating_sub(1), task.count.saturating_add(1));
    let cards = Stepper {
        fewer: shop.say("sets.build.fewer"),
        more: shop.say("sets.build.more"),
        shown: shop.say_with("sets.cards", &[("n", task.count.to_string())]),
        least: task.count <= 1,
        most: task.count >= most,
        on_fewer: count.reform(move |_: MouseEvent| fewer),
        on_more: count.reform(move |_: MouseEvent| more),
    };
    let hard = |one: &Hard| {
        let one = *one;
        Choice {
            name: shop.say(&format!("sets.hard.{}", one.slug())),
            note: AttrValue::default(),
            chosen: task.hard == one,
            on_pick: building.task(move |task, _: Event| task.hard = one),
        }
    };
    let purpose = |one: &Purpose| {
        let one = *one;
        Choice {
            name: shop.say(&format!("sets.purpose.{}", one.slug())),
            note: AttrValue::default(),
            chosen: task.purpose == one,
            on_pick: building.task(move |task, _: Event| task.purpose = one),
        }
    };
    let seeds = |same: bool| Choice {
        name: shop.say(if same { "sets.seeds.same" } else { "sets.seeds.own" }),
        note: AttrValue::default(),
        chosen: task.same_seed.is_some() == same,
        on_pick: building.task(move |task, _: Event| {
            task.same_seed = same.then(|| task.same_seed.unwrap_or(FIRST_SEED));
        }),
    };
    html! {
        <section key="how" class="build-part">
            <fieldset key="count" class="setting">
                <legend>{ shop.say("sets.build.how-many") }</legend>
                <div class="count-row">{ usual(shop, &USUAL, task.count, &count) }{ stepper(cards) }</div>
            </fieldset>
            { choices(shop.say("sets.build.hard"), Some("hard"), Hard::ALL.iter().map(hard).collect()) }
            <p key="hard" class="note">{ shop.say(&format!("sets.hard.{}.told", task.hard.slug())) }</p>
            <div key="pair" class="pair">
                { choices(shop.say("sets.build.purpose"), Some("purpose"), Purpose::ALL.iter().map(purpose).collect()) }
                { choices(shop.say("sets.build.seeds"), Some("seeds"), vec![seeds(false), seeds(true)]) }
            </div>
            { passing(shop, building) }
        </section>
    }
}

/// The pass rule.
fn passing(shop: &Shop, building: &Building) -> Html {
    let set = &building.set;
    let all = set.count();
    let now = set.task.pass;
    let first = PassRule { right: (all * PASS_TENTHS).div_ceil(10).max(1), safety: true };
    let rule = |some: bool| Choice {
        name: shop.say(if some { "sets.build.pass-rule" } else { "sets.build.pass-none" }),
        note: AttrValue::default(),
        chosen: now.is_some() == some,
        on_pick: building.task(move |task, _: Event| task.pass = some.then(|| task.pass.unwrap_or(first))),
    };
    let pass = now.unwrap_or(first);
    let right = building.task(move |task, right: u32| {
        task.pass = task.pass.map(|pass| PassRule { right: right.clamp(1, all.max(1)), ..pass });
    });
    let (fewer, more) = (pass.right.saturating_sub(1), pass.right.saturating_add(1));
    let figures = [("n", pass.right.to_string()), ("of", all.to_string())];
    let rights = Stepper {
        fewer: shop.say("sets.build.pass-fewer"),
        more: shop.say("sets.build.pass-more"),
        shown: shop.say_with("sets.build.pass-of", &figures),
        least: pass.right <= 1,
        most: pass.right >= all,
        on_fewer: right.reform(move |_: MouseEvent| fewer),
        on_more: right.reform(move |_: MouseEvent| more),
    };
    let safety = building.task(|task, _: Event| {
        task.pass = task.pass.map(|pass| PassRule { safety: !pass.safety, ..pass });
    });
    html! {
        <div key="pass" class="setting">
            { choices(shop.say("sets.build.pass"), Some("pass"), vec![rule(false), rule(true)]) }
            <div key="rule" class="setting" hidden={now.is_none()}>
                { stepper(rights) }
                <label class={classes!("unit", "wide", pass.safety.then_some("picked"))}>
                    <input type="checkbox" checked={pass.safety} onchange={safety} /><span>{ shop.say("sets.build.pass-safety") }</span>
                </label>
            </div>
        </div>
    }
}
