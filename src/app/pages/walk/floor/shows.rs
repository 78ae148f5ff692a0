//! It shows now: the clock stands still; what it is, where it was made, by which rule, and what mends it.

use super::list::spot_of;
use super::{Ground, Hand, TOLD, Task, Told, recalled, words};
use crate::app::pages::walk::lines;
use crate::app::parts::{Picture, Still, icon, rules};
use crate::walk::air_then::is_of_air;
use crate::walk::names::Operation;
use crate::walk::report::{Found, found};
use crate::walk::{look, marks};
use yew::prelude::*;

/// Millimetres of a fault seen near a pixel: our own choice.
const NEAR_MM: f32 = 0.3;

pub(super) fn shows(ground: &Ground<'_>) -> Html {
    let shop = ground.shop;
    html! {
        <section key="shows" class="walk-shows" role="alert">
            <h2 id={TOLD} tabindex="-1">{ shop.say("walk.shows") }</h2>
            { for alike(these(ground)).iter().map(|all| told(ground, all)) }
        </section>
    }
}

/// What is done about what shows: the first of it that can be mended is, or the work goes on.
pub(super) fn then(ground: &Ground<'_>) -> Html {
    let (shop, these) = (ground.shop, these(ground));
    let first = these.iter().find(|one| !one.left.is_empty());
    let step = first.and_then(|one| one.left.first()).map(|step| words::step(shop, *step).to_string());
    let mend = first.map(|one| mend_now(ground, one));
    let on = ground.on(|hand, _: MouseEvent| hand.tell(Told::Nothing));
    html! {
        <div key="then" class="walk-then">
            <button key="mend" type="button" class="next-step" hidden={mend.is_none()} onclick={mend.unwrap_or_default()}>{ shop.say_with("walk.mend-now", &[("what", step.unwrap_or_default())]) }{ icon(Picture::Go) }</button>
            <button key="on" type="button" class="control" onclick={on}>{ shop.say("walk.go-on-as-is") }</button>
        </div>
    }
}

/// The faults that have just come out.
pub(super) fn these(ground: &Ground<'_>) -> Vec<Found> {
    let Told::Shows(turn) = ground.hand.told else { return Vec::new() };
    let turns = ground.walk.turns();
    let shown: Vec<usize> = turns.iter().skip(turn).flat_map(|turn| turn.shown.iter().copied()).collect();
    found(ground.walk, ground.shop.content()).into_iter().filter(|one| shown.contains(&one.shown)).collect()
}

/// Those of one kind on the same parts together: each coat of an operation may make its own.
fn alike(these: Vec<Found>) -> Vec<Vec<Found>> {
    let mut groups: Vec<Vec<Found>> = Vec::new();
    for one in these {
        let same =
            |first: &Found| (first.rule, first.faults, &first.parts) == (one.rule, one.faults, &one.parts);
        match groups.iter_mut().find(|group| group.first().is_some_and(same)) {
            Some(group) => group.push(one),
            None => groups.push(vec![one]),
        }
    }
    groups
}

/// Begins the first thing that mends a fault, on the parts that it is on.
pub(super) fn mend_now(ground: &Ground<'_>, found: &Found) -> Callback<MouseEvent> {
    let first = found.left.first().copied().flatten();
    let task = first.map_or(Task::Strip, Task::Work);
    let (at, values) = (spot_of(ground, task), recalled(ground, task));
    let parts = found.parts.clone();
    ground.on(move |hand: &mut Hand, _: MouseEvent| {
        hand.parts = parts.iter().copied().collect();
        hand.looked = parts.first().copied().unwrap_or_default();
        hand.at = at;
        hand.pick(task, values.clone());
    })
}

/// What is left to be done to mend a fault, in words.
pub(super) fn left(ground: &Ground<'_>, left: &[Option<Operation>]) -> String {
    left.iter().map(|one| words::step(ground.shop, *one).to_string()).collect::<Vec<_>>().join(", ")
}

/// The fault seen near, and where its ring is on the work.
fn near(ground: &Ground<'_>, found: &Found) -> Html {
    let (shop, walk) = (ground.shop, ground.walk);
    let all = marks::marks(walk, &look::views(walk.start()));
    let Some(mark) = all.iter().find(|mark| mark.shown == found.shown) else { return Html::default() };
    let said = [
        ("part", words::inline_part(shop, &walk.start().info, mark.part)),
        ("where", words::place(shop, mark).to_string()),
    ];
    let said = shop.say_with("walk.near-at", &said);
    let recipe = marks::near(walk, mark, shop.content());
    let close = recipe.map(|recipe| html! {
        <Still {recipe} alt={shop.say("walk.near")} ruled=false mm={NEAR_MM} on_drawn={Callback::noop()} />
    });
    html! { <figure class="walk-near">{ close.unwrap_or_default() }<figcaption>{ said }</figcaption></figure> }
}

fn told(ground: &Ground<'_>, all: &[Found]) -> Html {
    let Some(found) = all.first() else { return Html::default() };
    let Ground { shop, walk, .. } = ground;
    let name = words::fault_of(shop, found.faults, found.rule.0);
    let id = found.faults.iter().find(|id| shop.content().fault(id).is_some());
    let looks = id.map(|id| shop.text(&format!("fault.{id}.looks"))).unwrap_or_default();
    let fix = id.map(|id| shop.text(&format!("fault.{id}.fix"))).unwrap_or_default();
    let then = walk.lines().get(found.made.1).filter(|_| is_of_air(found.rule)).map(|line| line.begun);
    let then = then.map(|moment| words::air_at(shop, walk, moment)).unwrap_or_default();
    let work = all.iter().map(|one| one.cost.rework_h).sum();
    let wait = all.iter().map(|one| one.cost.wait_h).fold(0.0, f64::max);
    let cost = [("work", words::hours(shop, work)), ("wait", words::hours(shop, wait))];
    let number = |one: &Found| html! { <span key={one.shown} class="walk-number-of" aria-hidden="true">{ one.shown + 1 }</span> };
    let steps = left(ground, &found.left);
    html! {
        <article key={found.shown} class="paper walk-fault">
            <div class="walk-called">{ for all.iter().map(number) }<h3>{ name }{ ", " }{ words::on(shop, walk.start(), &found.parts) }</h3></div>
            { near(ground, found) }
            <p>{ looks }</p>
            { for all.iter().map(|one| html! { <p key={one.shown} class="walk-made">{ lines::made(shop, walk, one.made.1) }</p> }) }
            { rules(shop, &[found.rule]) }
            <p hidden={then.is_empty()}>{ then.clone() }</p>
            <dl class="walk-facts">
                <dt>{ shop.say("walk.mends") }</dt><dd>{ fix }{ if steps.is_empty() { String::new() } else { format!(" {}: {steps}.", shop.say("walk.mends-steps")) } }</dd>
                <dt>{ shop.say("walk.costs") }</dt><dd>{ shop.say_with("walk.cost", &cost) }</dd>
            </dl>
        </article>
    }
}
