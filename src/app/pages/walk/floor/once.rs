//! What one touch does: where nothing is to be set, and what was decided before on this walk, with its values shown.

use super::list::{place, spot_of};
use super::task::Act;
use super::{Ground, Task, words};
use crate::app::pages::walk::detail::detail;
use crate::app::parts::{Picture, icon};
use crate::app::state::Shop;
use crate::rules::term::Term;
use crate::walk::at_hand::asked;
use crate::walk::{Decision, Start, Wait, Walk, Work, again};
use yew::prelude::*;

/// Whether nothing is to be set of it but the parts that are picked beside the work.
pub(super) fn is_plain(ground: &Ground<'_>, task: Task) -> bool {
    match task {
        Task::Work(operation) => {
            let at_hand = asked(ground.shop.content(), &ground.walk.start().sheet, operation);
            at_hand.numbers.is_empty() && at_hand.choices.is_empty()
        }
        Task::Morning | Task::Until(_) => true,
        Task::Strip | Task::Hours | Task::Offer | Task::HandOver => false,
    }
}

/// How it was decided last on this walk, with the parts that are picked now.
pub(super) fn as_last(ground: &Ground<'_>, task: Task) -> Option<Decision> {
    match task {
        Task::Work(operation) => {
            let last = again::last(ground.walk, operation)?.clone();
            let parts = ground.hand.picked_parts();
            (!parts.is_empty()).then_some(Decision::Work(Work { parts, ..last }))
        }
        Task::Hours => last_wait(ground.walk).map(Decision::Wait),
        _ => None,
    }
}

/// The last wait of so many hours.
fn last_wait(walk: &Walk) -> Option<Wait> {
    walk.turns().iter().rev().find_map(|turn| match turn.decision {
        Decision::Wait(wait @ Wait::Hours(_)) => Some(wait),
        _ => None,
    })
}

/// A button that does something at once.
pub(super) fn button(
    ground: &Ground<'_>,
    label: &str,
    slug: &'static str,
    name: String,
    decisions: Vec<Decision>,
) -> Html {
    let act = ground.act.clone();
    let onclick = Callback::from(move |_: MouseEvent| act.emit(Act::now(decisions.clone())));
    let (said, named) = (ground.shop.say(label), ground.shop.say_with("walk.at-once", &[("what", name)]));
    html! {
        <button key="once" type="button" class="control walk-once" value={slug} aria-label={format!("{said}. {named}")} {onclick}>{ said.clone() }</button>
    }
}

/// The last work once more, where it is done at another place than this.
pub(super) fn the_same(ground: &Ground<'_>) -> Html {
    let Some(last) = again::done(ground.walk).next() else { return Html::default() };
    let task = Task::Work(last.operation);
    let elsewhere = spot_of(ground, task) != ground.hand.at && !is_plain(ground, task);
    let Some(decision) = as_last(ground, task).filter(|_| elsewhere) else { return Html::default() };
    let name = words::decision(ground.shop, ground.walk.start(), &decision);
    let values = detail(ground.shop, ground.walk.start(), &decision);
    offered(ground, "walk.again", &name, values, task.slug(), vec![decision])
}

/// What was put on and seen to before the last work at this place, where it is not so now.
pub(super) fn made_ready(ground: &Ground<'_>) -> Html {
    let Some(place) = place(ground.hand.at) else { return Html::default() };
    let (shop, start) = (ground.shop, ground.walk.start());
    let decisions = again::ready_as_before(ground.walk, shop.content(), place);
    if decisions.is_empty() {
        return Html::default();
    }
    let named = [("place", shop.text(&format!("walk.place.{}", place.slug())).to_string())];
    let name = shop.say_with("walk.as-before", &named).to_string();
    offered(ground, "walk.do-now", &name, of_room(shop, start, &decisions), "ready", decisions)
}

/// What is put on and seen to, in words.
pub(super) fn of_room(shop: &Shop, start: &Start, decisions: &[Decision]) -> String {
    let told = decisions.iter().map(|decision| match decision {
        Decision::Wear(_) => detail(shop, start, decision),
        _ => words::decision(shop, start, decision),
    });
    told.collect::<Vec<_>>().join(". ")
}

/// Something of before that is done at one touch, with its values.
pub(super) fn offered(
    ground: &Ground<'_>,
    label: &'static str,
    name: &str,
    values: String,
    slug: &'static str,
    decisions: Vec<Decision>,
) -> Html {
    html! {
        <div key={slug} class="walk-before">
            <p><b>{ name.to_owned() }</b><span class="note">{ values }</span></p>
            { button(ground, label, slug, name.to_owned(), decisions) }
        </div>
    }
}

/// A row of what is at hand: opened to set its values, or done at one touch.
pub(super) fn row(ground: &Ground<'_>, task: Task, name: AttrValue, takes: String) -> Html {
    let (shop, slug, start) = (ground.shop, task.slug(), ground.walk.start());
    if is_plain(ground, task) {
        let parts = !task.takes_parts() || !ground.hand.parts.is_empty();
        let decision = parts.then(|| ground.hand.decision(task));
        let once = decision
            .map(|one| button(ground, "walk.do-now", slug, words::decision(shop, start, &one), vec![one]));
        return html! {
            <li key={slug}><span class="walk-op"><span>{ name }</span><span class="note">{ takes }</span></span>{ once.unwrap_or_default() }</li>
        };
    }
    let before = as_last(ground, task);
    let values = before.as_ref().map(|one| detail(shop, start, one)).unwrap_or_default();
    let once =
        before.map(|one| button(ground, "walk.again", slug, words::decision(shop, start, &one), vec![one]));
    let onclick = ground.pick(task);
    html! {
        <li key={slug}>
            <button key="open" type="button" class="walk-op" value={slug} {onclick}><span>{ name }<small>{ values }</small></span><span class="note">{ takes }</span>{ icon(Picture::Go) }</button>
            { once.unwrap_or_default() }
        </li>
    }
}
