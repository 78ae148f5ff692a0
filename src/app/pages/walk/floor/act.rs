//! Carrying out what is decided, and the one button for it.

use super::task::Act;
use super::{Change, Ground, Spot, Told, words};
use crate::app::parts::{Picture, icon};
use crate::app::state::{Shared, Shop};
use crate::walk::guided::{Warning, warnings};
use crate::walk::{Decision, Impossible, Mode, RoomAct, Walk};
use std::rc::Rc;
use yew::prelude::*;

/// What decisions would spoil, one after another.
fn warned(walk: &Walk, decisions: &[Decision], shop: &Shop) -> Result<Vec<Warning>, Box<Impossible>> {
    let (mut on, mut found) = (walk.clone(), Vec::new());
    for decision in decisions {
        found.extend(warnings(&on, decision, shop.content())?);
        on.decide(decision.clone(), shop.content())?;
    }
    Ok(found)
}

#[hook]
pub(super) fn use_act(
    shop: &Shop,
    walk: &Shared<Walk>,
    put: &Callback<Shared<Walk>>,
    change: &Callback<Change>,
) -> Callback<Act> {
    let known = (shop.clone(), walk.clone(), put.clone(), change.clone());
    use_callback(known, |act: Act, (shop, walk, put, change)| {
        let tell = |told: Told| change.emit(Change::new(move |hand| hand.tell(told)));
        if walk.mode() == Mode::Guided && !act.sure {
            match warned(walk, &act.decisions, shop) {
                Ok(found) if found.is_empty() => {}
                Ok(found) => return tell(Told::Warned(Rc::new(found), Rc::new(act.decisions))),
                Err(why) => return tell(Told::Refused(Rc::from(why))),
            }
        }
        let (mut next, from) = ((**walk).clone(), walk.turns().len());
        for decision in act.decisions {
            if let Err(why) = next.decide(decision, shop.content()) {
                return tell(Told::Refused(Rc::from(why)));
            }
        }
        let next = Shared::new(next);
        put.emit(next.clone());
        change.emit(Change::new(move |hand| hand.done(&next, from)));
    })
}

/// What the room is asked for: what is put on where that is another thing than before, then the duties.
fn of_room(ground: &Ground<'_>) -> Vec<Decision> {
    let (hand, room) = (ground.hand, ground.walk.room());
    let wear = (hand.worn != room.worn).then_some(Decision::Wear(hand.worn));
    let duties: Vec<RoomAct> = hand.duties.iter().copied().collect();
    let duties = (!duties.is_empty()).then_some(Decision::Room(duties));
    wear.into_iter().chain(duties).collect()
}

/// What the one button does: what is picked and set, else what was warned of at one touch.
fn picked(ground: &Ground<'_>) -> Vec<Decision> {
    let hand = ground.hand;
    let set = match hand.task {
        Some(task) => vec![hand.decision(task)],
        None if hand.at == Spot::Room => of_room(ground),
        None => Vec::new(),
    };
    match &hand.told {
        Told::Warned(_, of) if set.is_empty() => (**of).clone(),
        _ => set,
    }
}

/// The one button that does what is picked, with its name; where something shows, what is done about it.
pub(super) fn button(ground: &Ground<'_>) -> Html {
    if matches!(ground.hand.told, Told::Shows(_)) {
        return html! { <div key="shown" class="walk-foot">{ super::shows::then(ground) }</div> };
    }
    let Ground { shop, walk, hand, .. } = ground;
    let decisions = picked(ground);
    let sure = matches!(&hand.told, Told::Warned(_, of) if **of == decisions);
    let lacking = super::values::lacking(ground);
    let ready = !decisions.is_empty() && lacking.is_none();
    let at_room = hand.task.is_none() && hand.at == Spot::Room;
    let label = match (&lacking, decisions.first()) {
        (Some((_, name)), _) => shop.say_with("walk.choose-first", &[("name", name.clone())]),
        _ if sure => shop.say("walk.all-the-same"),
        (None, None) => shop.say(if at_room { "walk.room-nothing" } else { "walk.pick-next" }),
        _ if at_room => shop.say("walk.room-do"),
        (None, Some(one)) => words::decision(shop, walk.start(), one).into(),
    };
    let act = ground.act.clone();
    let onclick = Callback::from(move |_: MouseEvent| match &lacking {
        Some((id, _)) => crate::device::page::bring(id),
        None if decisions.is_empty() => {}
        None => act.emit(Act { decisions: decisions.clone(), sure }),
    });
    // What was warned of is never the one next thing to do.
    let like = if sure { "control" } else { "next-step" };
    html! {
        <div key="foot" class="walk-foot">
        <button key="do" type="button" class={classes!(like, "walk-do", (!ready).then_some("not-yet"))} {onclick}>
            { label }{ if ready { icon(Picture::Go) } else { Html::default() } }
        </button>
        </div>
    }
}
