//! It shows now: the clock stands still; what it is, where it was made, by which rule, and what mends it.

use super::told::to_first;
use super::{Ground, TOLD, Told, words};
use crate::app::pages::walk::lines;
use crate::app::parts::{Picture, icon, rules};
use crate::walk::First;
use crate::walk::names::Operation;
use crate::walk::report::{Found, found};
use yew::prelude::*;

pub(super) fn shows(ground: &Ground<'_>) -> Html {
    let Ground { shop, walk, hand, .. } = ground;
    let Told::Shows(turn) = hand.told else { return Html::default() };
    let turns = walk.turns();
    let shown: Vec<usize> = turns.iter().skip(turn).flat_map(|turn| turn.shown.iter().copied()).collect();
    let all = found(walk, shop.content());
    let these: Vec<&Found> = all.iter().filter(|one| shown.contains(&one.shown)).collect();
    let mend = these.iter().find(|one| !one.left.is_empty()).map(|one| mend_now(ground, one));
    let on = ground.on(|hand, _: MouseEvent| hand.tell(Told::Nothing));
    html! {
        <section key="shows" class="walk-shows" role="alert">
            <h2 id={TOLD} tabindex="-1">{ shop.say("walk.shows") }</h2>
            { for these.iter().map(|one| told(ground, one)) }
            <div key="then" class="walk-then">
                <button key="mend" type="button" class="next-step" hidden={mend.is_none()} onclick={mend.unwrap_or_default()}>{ shop.say("walk.mend-now") }{ icon(Picture::Go) }</button>
                <button key="on" type="button" class="control" onclick={on}>{ shop.say("walk.go-on-as-is") }</button>
            </div>
        </section>
    }
}

/// Begins the first thing that mends a fault, on the parts that it is on.
pub(super) fn mend_now(ground: &Ground<'_>, found: &Found) -> Callback<MouseEvent> {
    let first = found.left.first().copied().flatten().map_or(First::Strip, First::Work);
    to_first(ground, first, Some(found.parts.clone()))
}

/// What is left to be done to mend a fault, in words.
pub(super) fn left(ground: &Ground<'_>, left: &[Option<Operation>]) -> String {
    left.iter().map(|one| words::step(ground.shop, *one).to_string()).collect::<Vec<_>>().join(", ")
}

fn told(ground: &Ground<'_>, found: &Found) -> Html {
    let Ground { shop, walk, .. } = ground;
    let name = words::fault_of(shop, found.faults, found.rule.0);
    let id = found.faults.iter().find(|id| shop.content().fault(id).is_some());
    let looks = id.map(|id| shop.text(&format!("fault.{id}.looks"))).unwrap_or_default();
    let fix = id.map(|id| shop.text(&format!("fault.{id}.fix"))).unwrap_or_default();
    let on = [("parts", words::parts(shop, walk.start(), &found.parts))];
    let cost =
        [("work", words::hours(shop, found.cost.rework_h)), ("wait", words::hours(shop, found.cost.wait_h))];
    let steps = left(ground, &found.left);
    html! {
        <article key={found.shown} class="paper walk-fault">
            <h3>{ name }{ ", " }{ shop.say_with("walk.on", &on) }</h3>
            <p>{ looks }</p>
            <p class="walk-made">{ lines::made(shop, walk, found.made.1) }</p>
            { rules(shop, &[found.rule]) }
            <dl class="walk-facts">
                <dt>{ shop.say("walk.mends") }</dt><dd>{ fix }{ if steps.is_empty() { String::new() } else { format!(" {}: {steps}.", shop.say("walk.mends-steps")) } }</dd>
                <dt>{ shop.say("walk.costs") }</dt><dd>{ shop.say_with("walk.cost", &cost) }</dd>
            </dl>
        </article>
    }
}
