//! Guided: what comes next in the order of the shop sheet and why, and what other values would break. It is worked out once
//! the screen shows what was done before.

use super::hand::Values;
use super::list::spot_of;
use super::once::{self, of_room};
use super::task::Act;
use super::{Ground, Hand, Spot, Task, words};
use crate::app::pages::walk::detail::detail;
use crate::app::parts::{Picture, icon};
use crate::app::state::{Shared, Shop};
use crate::device::page;
use crate::walk::suggest::{Otherwise, Reason, Suggested, otherwise, suggest};
use crate::walk::undone::undone;
use crate::walk::{Decision, Mode, Wait, Walk, Work};
use std::rc::Rc;
use yew::prelude::*;

/// What is suggested, on which walk.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Guide {
    walk: Shared<Walk>,
    suggested: Option<Suggested>,
    /// What other values of the suggested operation would break.
    otherwise: Vec<Otherwise>,
}

impl Guide {
    /// What other values of an operation would break, where it is the one that is suggested.
    pub(super) fn otherwise(&self, task: Task) -> &[Otherwise] {
        let suggested = self.suggested.as_ref().and_then(|one| one.decisions.first()?.operation());
        if suggested.is_some_and(|operation| task == Task::Work(operation)) { &self.otherwise } else { &[] }
    }
}

#[hook]
pub(super) fn use_guide(shop: &Shop, walk: &Shared<Walk>) -> Option<Rc<Guide>> {
    let guide = use_state(|| None::<Rc<Guide>>);
    use_effect_with((shop.clone(), walk.clone()), {
        let set = guide.setter();
        move |(shop, walk)| {
            if walk.mode() != Mode::Guided {
                return;
            }
            let (shop, walk) = (shop.clone(), walk.clone());
            page::once_drawn(move || {
                let suggested = suggest(&walk, shop.content());
                let work = suggested.as_ref().and_then(|one| match one.decisions.first() {
                    Some(Decision::Work(work)) => Some(work),
                    _ => None,
                });
                let otherwise = work.map(|work| otherwise(&walk, work, shop.content())).unwrap_or_default();
                set.set(Some(Rc::new(Guide { walk, suggested, otherwise })));
            });
        }
    });
    (*guide).clone().filter(|guide| guide.walk == *walk)
}

/// The next step with its reason, and a touch that opens it.
pub(super) fn next(ground: &Ground<'_>) -> Html {
    let shop = ground.shop;
    let suggested = ground.guide.and_then(|guide| guide.suggested.as_ref());
    let Some(one) = suggested.filter(|_| ground.hand.task.is_none()) else { return Html::default() };
    let start = ground.walk.start();
    let (name, values) = match one.decisions.first() {
        Some(Decision::Wear(_) | Decision::Room(_)) => {
            (shop.say("walk.guide.room").to_string(), of_room(shop, start, &one.decisions))
        }
        Some(decision) => (words::decision(shop, start, decision), detail(shop, start, decision)),
        None => return Html::default(),
    };
    let why = match one.why {
        Some(Reason::Rule(rule) | Reason::Order(rule)) => shop.text(&format!("rule.{}", rule.0)),
        Some(Reason::Lapse(lapse)) => shop.text(&format!("rule.{}", lapse.rule().0)),
        None if one.decisions.contains(&Decision::HandOver) && undone(ground.walk).is_empty() => {
            shop.say("walk.guide.all-done")
        }
        None => shop.say("walk.guide.in-order"),
    };
    let plain = one.decisions.first().and_then(task).is_some_and(|(task, _)| once::is_plain(ground, task));
    let (label, onclick) = if plain {
        let (act, decisions) = (ground.act.clone(), one.decisions.clone());
        let now = Callback::from(move |_: MouseEvent| act.emit(Act::now(decisions.clone())));
        ("walk.guide.do", now)
    } else {
        let key = if values.is_empty() { "walk.guide.open-plain" } else { "walk.guide.open" };
        (key, take_up(ground, &one.decisions))
    };
    html! {
        <section key="guide" class="walk-guide">
            <h2>{ shop.say("walk.guide") }</h2>
            <p><b>{ name }</b><span class="note">{ values }</span></p>
            <p>{ why }</p>
            <button type="button" class="control" {onclick}>{ shop.say(label) }{ icon(Picture::Go) }</button>
        </section>
    }
}

/// Opens what is suggested with its values set; nothing is done yet.
fn take_up(ground: &Ground<'_>, decisions: &[Decision]) -> Callback<MouseEvent> {
    let first = decisions.first().and_then(task);
    let at = first.as_ref().map_or(Spot::Room, |(task, _)| spot_of(ground, *task));
    let decisions = decisions.to_vec();
    ground.on(move |hand: &mut Hand, _: MouseEvent| {
        hand.at = at;
        if let Some((task, parts)) = &first {
            hand.parts =
                parts.clone().map_or_else(|| hand.parts.clone(), |parts| parts.into_iter().collect());
            hand.set(*task, Values::default());
        }
        for decision in &decisions {
            match decision {
                Decision::Work(work) => hand.values = work.clone().into(),
                Decision::Wait(Wait::Hours(hours)) => hand.wait_h = hours.get(),
                Decision::Wear(worn) => hand.worn = *worn,
                Decision::Room(duties) => hand.duties = duties.iter().copied().collect(),
                Decision::Offer(offer) => hand.day = offer.day,
                _ => {}
            }
        }
        hand.tell(super::Told::Nothing);
    })
}

/// What a decision is on the floor, with its parts; `None`: it is of the room.
fn task(decision: &Decision) -> Option<(Task, Option<Vec<usize>>)> {
    Some(match decision {
        Decision::Work(Work { operation, parts, .. }) => (Task::Work(*operation), Some(parts.clone())),
        Decision::Strip(named) => (Task::Strip, Some(named.parts.clone())),
        Decision::Wait(Wait::Hours(_)) => (Task::Hours, None),
        Decision::Wait(Wait::Morning) => (Task::Morning, None),
        Decision::Wait(Wait::Until(test)) => (Task::Until(*test), None),
        Decision::Offer(_) => (Task::Offer, None),
        Decision::HandOver => (Task::HandOver, None),
        Decision::Wear(_) | Decision::Room(_) => return None,
    })
}

/// What an option of a choice would break, in words.
pub(super) fn of_pick(ground: &Ground<'_>, key: &str, slug: &str) -> AttrValue {
    let breaks = of_task(ground).iter().find_map(|one| match one {
        Otherwise::Pick(choice, option, rule) if choice == key && option == slug => Some(rule),
        _ => None,
    });
    breaks.map(|rule| ground.shop.text(&format!("rule.{}", rule.0))).unwrap_or_default()
}

/// What a number far below and far above would break, in words.
pub(super) fn of_number(ground: &Ground<'_>, ask: crate::content::Ask) -> Vec<AttrValue> {
    let one = |one: &Otherwise| match one {
        Otherwise::Number(of, above, rule) if *of == ask => {
            let key = if *above { "walk.guide.too-much" } else { "walk.guide.too-little" };
            let named = [("rule", ground.shop.text(&format!("rule.{}", rule.0)).to_string())];
            Some(ground.shop.say_with(key, &named))
        }
        _ => None,
    };
    of_task(ground).iter().filter_map(one).collect()
}

fn of_task<'a>(ground: &'a Ground<'_>) -> &'a [Otherwise] {
    let task = ground.hand.task;
    ground.guide.zip(task).map(|(guide, task)| guide.otherwise(task)).unwrap_or_default()
}
