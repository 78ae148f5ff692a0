//! What was last told: what cannot be done, what would be spoilt, what was read. And what is still to be mended.

use super::{Change, Ground, Hand, Spot, TOLD, Told, refused, shows, words};
use crate::app::parts::{Picture, icon};
use crate::rules::term::{Severity, Term};
use crate::walk::air_then::is_of_air;
use crate::walk::guided::Warning;
use crate::walk::report::{Found, found};
use crate::walk::{Decision, Lapse, Turn, Walk};
use yew::prelude::*;

pub(super) fn told(ground: &Ground<'_>) -> Html {
    let inside = match &ground.hand.told {
        Told::Nothing | Told::Shows(_) => Html::default(),
        Told::Refused(why) => refused::refused(ground, why),
        Told::Warned(all, _) => warned(ground, all),
        Told::Done(from) => done(ground, *from),
    };
    html! {
        <>
            <div key="told" class="walk-told" role="status" aria-live="polite">{ inside }</div>
            { to_mend(ground) }
        </>
    }
}

pub(super) fn head(text: AttrValue) -> Html {
    html! { <h2 id={TOLD} tabindex="-1">{ text }</h2> }
}

fn warned(ground: &Ground<'_>, all: &[Warning]) -> Html {
    let (shop, walk) = (ground.shop, ground.walk);
    let one = |(nth, warning): (usize, &Warning)| match warning {
        Warning::Makes(defect) | Warning::Uncovers(defect) => {
            let key = if matches!(warning, Warning::Makes(_)) { "walk.makes" } else { "walk.uncovers" };
            let named = [
                ("fault", words::fault(shop, defect).to_string()),
                ("part", words::inline_part(shop, &walk.start().info, defect.part)),
            ];
            let air = is_of_air(defect.rule()).then(|| words::air_at(shop, walk, walk.clock()));
            html! { <li key={nth}><b>{ shop.say_with(key, &named) }</b>{ " " }{ shop.text(&format!("rule.{}", defect.rule().0)) }{ " " }{ air.unwrap_or_default() }</li> }
        }
        Warning::Leaves(lapse) => html! { <li key={nth}>{ left(ground, *lapse) }</li> },
    };
    let at_room = ground.hand.at == Spot::Room;
    let of_room = !at_room && all.iter().any(|one| matches!(one, Warning::Leaves(_)));
    let to_room = ground.on(|hand: &mut Hand, _: MouseEvent| hand.go(Spot::Room));
    html! {
        <div key="warned" class="kraft walk-news warned">
            { head(shop.say("walk.before")) }
            <ul class="told">{ for all.iter().enumerate().map(one) }</ul>
            <p>{ shop.say("walk.before-now") }</p>
            <button key="room" type="button" class="control" hidden={!of_room} onclick={to_room}>{ shop.say("walk.to-room") }{ icon(Picture::Go) }</button>
        </div>
    }
}

/// A lapse with its rule, and with the caution that goes with it where it endangers people.
fn left(ground: &Ground<'_>, lapse: Lapse) -> Html {
    let shop = ground.shop;
    let caution =
        (lapse.severity() == Severity::Safety).then(|| shop.text(&format!("caution.{}", lapse.caution())));
    html! { <><b>{ shop.text(&format!("walk.lapse.{}", lapse.slug())) }</b>{ " " }{ shop.text(&format!("rule.{}", lapse.rule().0)) }{ " " }{ caution.unwrap_or_default() }</> }
}

fn done(ground: &Ground<'_>, from: usize) -> Html {
    let (shop, walk) = (ground.shop, ground.walk);
    let turns: Vec<&Turn> = walk.turns().iter().skip(from).collect();
    let what = turns.iter().map(|turn| words::decision(shop, walk.start(), &turn.decision));
    let what = what.collect::<Vec<_>>().join(". ");
    let mended = turns.iter().flat_map(|turn| &turn.mended).filter_map(|shown| walk.shown().get(*shown));
    let mended = mended.map(|shown| {
        shop.say_with("walk.mended", &[("fault", words::fault(shop, &shown.defect).to_string())])
    });
    let reads =
        turns.iter().flat_map(|turn| &turn.read).map(|read| words::read(shop, &walk.start().info, read));
    let more: Vec<AttrValue> = reads.chain(mended).collect();
    let waited = turns.iter().any(|turn| matches!(turn.decision, Decision::Wait(_)));
    let now = [("at", words::at(shop, walk.clock()).to_string())];
    html! {
        <div key="done" class="walk-news">
            <p id={TOLD} tabindex="-1"><b>{ shop.say_with("walk.done", &[("what", what)]) }</b>{ if waited { html! { <>{ " " }{ shop.say_with("walk.it-is", &now) }</> } } else { Html::default() } }</p>
            { for more.into_iter().map(|told| html! { <p class="walk-read">{ told }</p> }) }
        </div>
    }
}

/// Faults that showed and are not mended, each with what comes next for it.
fn to_mend(ground: &Ground<'_>) -> Html {
    let shop = ground.shop;
    let all = if ground.walk.shown().is_empty() { Vec::new() } else { found(ground.walk, shop.content()) };
    let open: Vec<&Found> = all.iter().filter(|one| one.mended.is_none() && !one.left.is_empty()).collect();
    let hidden = open.is_empty() || matches!(ground.hand.told, Told::Shows(_));
    let one = |found: &&Found| {
        let name = words::fault_of(shop, found.faults, found.rule.0);
        html! {
            <li key={found.shown}>
                <button type="button" class="walk-op" onclick={shows::mend_now(ground, found)}><span><b>{ name }{ ", " }{ words::on(shop, ground.walk.start(), &found.parts) }</b><span class="note">{ shows::left(ground, &found.left) }</span></span>{ icon(Picture::Go) }</button>
            </li>
        }
    };
    html! {
        <details key="open" class="walk-open-faults" {hidden}>
            <summary>{ shop.say_with("walk.to-mend", &[("n", open.len().to_string())]) }</summary>
            <ul class="walk-ops">{ for open.iter().map(one) }</ul>
        </details>
    }
}

/// One step back, where the walk is guided.
pub(super) fn step_back(ground: &Ground<'_>, guided: bool) -> Html {
    let turns = ground.walk.turns();
    let hidden = !guided || turns.is_empty() || ground.hand.task.is_some();
    let last = turns.last().map(|turn| words::decision(ground.shop, ground.walk.start(), &turn.decision));
    let named = [("what", last.unwrap_or_default())];
    html! {
        <button key="step-back" type="button" class="control walk-step-back" {hidden} onclick={ground.back.reform(|_: MouseEvent| ())}>
            { icon(Picture::TurnLeft) }{ ground.shop.say_with("walk.step-back", &named) }
        </button>
    }
}

/// What is told after a step back.
pub(super) fn went_back(walk: &Walk) -> Change {
    let worn = walk.room().worn;
    Change::new(move |hand| {
        hand.worn = worn;
        hand.tell(Told::Nothing);
    })
}
