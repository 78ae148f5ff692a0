//! The values of what is picked: parts, numbers, choices.

use super::{Ground, TASK, Task, choice, number, offer, words};
use crate::app::parts::{Picture, icon};
use crate::rules::term::Term;
use crate::walk::at_hand::{AtHand, asked};
use yew::prelude::*;

fn asks<'a>(ground: &'a Ground<'_>, task: Task) -> Option<AtHand<'a>> {
    match task {
        Task::Work(operation) => Some(asked(ground.shop.content(), &ground.walk.start().sheet, operation)),
        _ => None,
    }
}

/// The first thing that is still to be set before it can be done: the id of its place, and its name.
pub(super) fn lacking(ground: &Ground<'_>) -> Option<(String, String)> {
    let task = ground.hand.task?;
    let shop = ground.shop;
    if task.takes_parts() && ground.hand.parts.is_empty() {
        return Some((TASK.to_owned(), shop.say("walk.part-one").to_string()));
    }
    if task == Task::Hours && ground.hand.wait_typed.is_some() {
        return Some((offer::WAIT_FIELD.to_owned(), shop.say("walk.wait.typed").to_string()));
    }
    let at_hand = asks(ground, task)?;
    let name = |kind: &str, key: &str| shop.text(&format!("walk.{kind}.{key}")).to_string();
    let number = at_hand.numbers.iter().find(|one| ground.hand.values.typed.contains_key(&one.ask));
    let open = |key: &&str| !ground.hand.values.picks.contains_key(*key);
    let choice = at_hand.choices.iter().map(|one| one.key.as_str()).find(open);
    let number = number.map(|one| (number::id(one.ask), name("ask", one.ask.slug())));
    number.or_else(|| choice.map(|key| (choice::id(key), name("choice", key))))
}

pub(super) fn values(ground: &Ground<'_>, task: Task) -> Html {
    let Ground { shop, walk, hand, .. } = ground;
    let back = ground.on(|hand, _: MouseEvent| hand.close());
    let at_hand = asks(ground, task);
    let (numbers, choices) =
        at_hand.as_ref().map(|one| (one.numbers.as_slice(), one.choices.as_slice())).unwrap_or_default();
    let takes =
        at_hand.as_ref().map(|one| words::takes(shop, one.takes.get())).filter(|hours| !hours.is_empty());
    let takes = takes.map(|hours| shop.say_with("walk.takes", &[("hours", hours)]));
    let on = match hand.picked_parts().as_slice() {
        [] => shop.say("walk.on-none"),
        parts => words::on(shop, walk.start(), parts),
    };
    let title = task.name(shop);
    html! {
        <div key="values" class="walk-values">
            <div key="head" class="walk-head">
                <button type="button" class="control square" onclick={back} aria-label={shop.say("walk.back-to-list")}>{ icon(Picture::Back) }</button>
                <div><h3 id={TASK} tabindex="-1">{ title }</h3>
                <p class="note">{ takes.unwrap_or_default() }{ if task.takes_parts() { html! { <>{ " " }{ on }</> } } else { Html::default() } }</p></div>
            </div>
            { for numbers.iter().map(|one| number::number(ground, one)) }
            { for choices.iter().map(|one| choice::choice(ground, one)) }
            { offer::more(ground, task) }
        </div>
    }
}
