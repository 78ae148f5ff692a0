//! What cannot be done: what, why and what now, with a touch that begins what has to be done first.

use super::list::spot_of;
use super::once::is_plain;
use super::task::Act;
use super::{Ground, Hand, Spot, Task, Told, recalled, words};
use crate::app::parts::{Picture, icon};
use crate::rules::term::Term;
use crate::walk::first::First;
use crate::walk::{Impossible, RoomAct, Wait};
use yew::prelude::*;

pub(super) fn refused(ground: &Ground<'_>, why: &Impossible) -> Html {
    let (shop, walk) = (ground.shop, ground.walk);
    let duty = why.key.as_deref().and_then(RoomAct::from_slug);
    let what = match duty {
        Some(duty) => shop.text(&format!("walk.room.{}", duty.slug())).to_string(),
        None => words::decision(shop, walk.start(), &why.what),
    };
    let part = why.part.map(|part| words::part(shop, &walk.start().info, part));
    let on = part.map(|part| format!("{part}: "));
    let allowed = why.allowed.map(|(from, to)| {
        shop.say_with("walk.allowed", &[("from", from.to_string()), ("to", to.to_string())])
    });
    let when =
        why.when.map(|when| shop.say_with("walk.can-from", &[("at", words::at(shop, when).to_string())]));
    let first = why.first();
    let name = first.map(|first| match first {
        First::Room(duty) => shop.text(&format!("walk.room.{}", duty.slug())),
        first => task(first).map(|task| task.name(shop)).unwrap_or_default(),
    });
    let go = first.map(|first| to_first(ground, first)).unwrap_or_default();
    let others = ground.hand.duties.len() > 1 || ground.hand.worn != walk.room().worn;
    let without = duty.map(|duty| {
        ground.on(move |hand: &mut Hand, _: MouseEvent| {
            hand.duties.remove(&duty);
            hand.tell(Told::Nothing);
        })
    });
    html! {
        <div key="refused" class="kraft walk-news">
            { super::told::head(shop.say_with("walk.cannot", &[("what", what)])) }
            <p>{ on.unwrap_or_default() }{ shop.text(&format!("walk.why.{}", why.why.slug())) }{ " " }{ allowed.unwrap_or_default() }</p>
            <p>{ shop.text(&format!("walk.now.{}", why.why.slug())) }{ " " }{ when.unwrap_or_default() }</p>
            <p hidden={duty.is_none() || !others}>{ shop.say("walk.others-picked") }</p>
            <button key="first" type="button" class="control" hidden={first.is_none()} onclick={go}>{ name.unwrap_or_default() }{ icon(Picture::Go) }</button>
            <button key="without" type="button" class="control" hidden={without.is_none()} onclick={without.unwrap_or_default()}>{ shop.say("walk.without") }</button>
        </div>
    }
}

/// What is begun first, on the floor; `None`: a duty of the room.
fn task(first: First) -> Option<Task> {
    Some(match first {
        First::Work(operation) => Task::Work(operation),
        First::Strip => Task::Strip,
        First::Wait(Wait::Morning) => Task::Morning,
        First::Wait(Wait::Hours(_)) => Task::Hours,
        First::Wait(Wait::Until(test)) => Task::Until(test),
        First::Offer => Task::Offer,
        First::HandOver => Task::HandOver,
        First::Room(_) => return None,
    })
}

/// Begins what has to be done first; a wait with nothing to set is waited at once. What was refused is gone on with then.
fn to_first(ground: &Ground<'_>, first: First) -> Callback<MouseEvent> {
    let Some(task) = task(first) else {
        return ground.on(move |hand: &mut Hand, _: MouseEvent| {
            hand.leave_for(Spot::Room);
            if let First::Room(duty) = first {
                hand.duties.insert(duty);
            }
            hand.tell(Told::Nothing);
        });
    };
    if is_plain(ground, task) {
        let (act, decision) = (ground.act.clone(), ground.hand.decision(task));
        let leave = ground.on(|hand: &mut Hand, ()| hand.leave_for(hand.at));
        return Callback::from(move |_: MouseEvent| {
            leave.emit(());
            act.emit(Act::now(vec![decision.clone()]));
        });
    }
    let (at, values) = (spot_of(ground, task), recalled(ground, task));
    ground.on(move |hand: &mut Hand, _: MouseEvent| {
        if let First::Wait(Wait::Hours(hours)) = first {
            hand.wait_h = hours.get();
        }
        hand.leave_for(at);
        let left = hand.left;
        hand.pick(task, values.clone());
        hand.left = left;
    })
}
