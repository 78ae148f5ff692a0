//! The work: its parts as they lie there, to be picked.

use super::{Ground, Hand, Task};
use crate::app::pages::walk::pictured::Pictured;
use crate::app::pages::walk::{parts, words};
use crate::app::parts::{Picture, icon, letter};
use crate::walk::look;
use yew::prelude::*;

pub(super) fn work(ground: &Ground<'_>) -> Html {
    let Ground { shop, walk, hand, .. } = ground;
    let info = &walk.start().info;
    let many = walk.start().parts() > 1;
    let one = |part: usize| {
        let picked = hand.parts.contains(&part);
        let onchange = ground.on(move |hand, _: Event| hand.touch(part));
        let wood = info.ticket.parts.get(part).map(|part| words::wood(shop, &part.wood));
        let seen = walk.part(part).map(|lying| parts::seen(shop, &lying)).unwrap_or_default();
        html! {
            <label key={part} class={classes!("walk-part", picked.then_some("picked"))}>
                <input type="checkbox" checked={picked} {onchange} />
                { icon(Picture::Tick) }
                <span><b>{ if many { format!("{} ", letter(part)) } else { String::new() } }{ words::part(shop, info, part) }</b><span>{ wood.unwrap_or_default() }{ ", " }{ seen }</span></span>
            </label>
        }
    };
    let all = walk.start().parts();
    let every = hand.parts.len() == all;
    let toggle = ground.on(move |hand, _: MouseEvent| {
        let parts = if hand.parts.len() == all { [hand.looked].into() } else { (0..all).collect() };
        hand.set_parts(parts);
    });
    let on_part = ground.on(Hand::touch);
    let acts = match hand.task {
        Some(Task::Work(operation)) => Some(look::acts(operation, walk.start())),
        _ => None,
    };
    html! {
        <section key="work" class="walk-work">
            <h2 class="spoken">{ shop.say("walk.work") }</h2>
            <Pictured key="picture" walk={(*walk).clone()} picked={hand.picked_parts()} rows={all + usize::from(many)} {acts} {on_part}>
                <div class="walk-parts" role="group" aria-label={shop.say("walk.parts")}>
                    { for (0..all).map(one) }
                    <button key="all" type="button" class="control walk-all" hidden={!many} onclick={toggle}>
                        { shop.say(if every { "walk.only-one" } else { "walk.all-parts-pick" }) }
                    </button>
                </div>
            </Pictured>
        </section>
    }
}
