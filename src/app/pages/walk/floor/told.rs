//! What was last told: what cannot be done, what would be spoilt, what was read. And what is still to be mended.

use super::hand::last;
use super::list::spot;
use super::{Change, Ground, Hand, TOLD, Told, shows, words};
use crate::app::parts::{Picture, icon};
use crate::rules::term::Term;
use crate::walk::at_hand::place_of;
use crate::walk::first::First;
use crate::walk::guided::Warning;
use crate::walk::report::{Found, found};
use crate::walk::{Decision, Impossible, Lapse, Turn, Walk};
use yew::prelude::*;

pub(super) fn told(ground: &Ground<'_>) -> Html {
    let inside = match &ground.hand.told {
        Told::Nothing | Told::Shows(_) => Html::default(),
        Told::Refused(why) => refused(ground, why),
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

fn head(text: AttrValue) -> Html {
    html! { <h2 id={TOLD} tabindex="-1">{ text }</h2> }
}

fn refused(ground: &Ground<'_>, why: &Impossible) -> Html {
    let (shop, walk) = (ground.shop, ground.walk);
    let what = [("what", words::decision(shop, walk.start(), &why.what))];
    let part = why.part.map(|part| words::part(shop, &walk.start().info, part));
    let on = part.map(|part| format!("{part}: "));
    let allowed = why.allowed.map(|(from, to)| {
        shop.say_with("walk.allowed", &[("from", from.to_string()), ("to", to.to_string())])
    });
    let when =
        why.when.map(|when| shop.say_with("walk.can-from", &[("at", words::at(shop, when).to_string())]));
    let first = why.first();
    let name = first.map(|first| match first {
        First::Work(operation) => words::operation(shop, operation),
        First::Strip => shop.say("walk.strip"),
        First::Room(duty) => shop.text(&format!("walk.room.{}", duty.slug())),
        First::Wait(time) => words::wait(shop, time),
        First::Offer => shop.say("walk.offer"),
        First::HandOver => shop.say("walk.hand-over"),
    });
    let go = first.map(|first| to_first(ground, first, None)).unwrap_or_default();
    html! {
        <div key="refused" class="kraft walk-news">
            { head(shop.say_with("walk.cannot", &what)) }
            <p>{ on.unwrap_or_default() }{ shop.text(&format!("walk.why.{}", why.why.slug())) }{ " " }{ allowed.unwrap_or_default() }</p>
            <p>{ shop.text(&format!("walk.now.{}", why.why.slug())) }{ " " }{ when.unwrap_or_default() }</p>
            <button key="first" type="button" class="control" hidden={first.is_none()} onclick={go}>{ name.unwrap_or_default() }{ icon(Picture::Go) }</button>
        </div>
    }
}

/// Begins what has to be done first, on those parts where some are named.
pub(super) fn to_first(ground: &Ground<'_>, first: First, parts: Option<Vec<usize>>) -> Callback<MouseEvent> {
    let (before, at) = match first {
        First::Work(operation) => {
            (last(ground.walk, operation), place_of(ground.shop.content(), operation).map(spot))
        }
        _ => (None, None),
    };
    ground.on(move |hand: &mut Hand, _: MouseEvent| {
        if let Some(parts) = &parts {
            hand.parts = parts.iter().copied().collect();
            hand.looked = parts.first().copied().unwrap_or_default();
        }
        hand.begin(first, at, before.as_ref());
    })
}

fn warned(ground: &Ground<'_>, all: &[Warning]) -> Html {
    let (shop, walk) = (ground.shop, ground.walk);
    let one = |(nth, warning): (usize, &Warning)| match warning {
        Warning::Makes(defect) | Warning::Uncovers(defect) => {
            let key = if matches!(warning, Warning::Makes(_)) { "walk.makes" } else { "walk.uncovers" };
            let named = [
                ("fault", words::fault(shop, defect).to_string()),
                ("part", words::part(shop, &walk.start().info, defect.part).to_string()),
            ];
            html! { <li key={nth}><b>{ shop.say_with(key, &named) }</b>{ " " }{ shop.text(&format!("rule.{}", defect.rule().0)) }</li> }
        }
        Warning::Leaves(lapse) => html! { <li key={nth}>{ left(ground, *lapse) }</li> },
    };
    html! {
        <div key="warned" class="kraft walk-news warned">
            { head(shop.say("walk.before")) }
            <ul class="told">{ for all.iter().enumerate().map(one) }</ul>
        </div>
    }
}

/// A lapse with the caution that goes with it.
fn left(ground: &Ground<'_>, lapse: Lapse) -> Html {
    let shop = ground.shop;
    html! { <><b>{ shop.text(&format!("walk.lapse.{}", lapse.slug())) }</b>{ " " }{ shop.text(&format!("caution.{}", lapse.caution())) }</> }
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
            <p id={TOLD} tabindex="-1"><b>{ what }{ "." }</b>{ if waited { html! { <>{ " " }{ shop.say_with("walk.it-is", &now) }</> } } else { Html::default() } }</p>
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
        let named = [("parts", words::parts(shop, ground.walk.start(), &found.parts))];
        html! {
            <li key={found.shown}>
                <button type="button" onclick={shows::mend_now(ground, found)}><span><b>{ name }{ ", " }{ shop.say_with("walk.on", &named) }</b><span class="note">{ shows::left(ground, &found.left) }</span></span>{ icon(Picture::Go) }</button>
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
