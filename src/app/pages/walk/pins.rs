//! What the time line of a walk tells beside the work: what was known before a decision, what it read, and pins at the
//! decisions where a fault was made, where it showed, and where a duty was left undone.

use crate::app::pages::walk::words;
use crate::app::state::{Shared, Shop};
use crate::rules::term::Term;
use crate::walk::report::{Found, found};
use crate::walk::{Read, Turn, Walk};
use yew::prelude::*;

/// What of its mistakes has pins.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(in crate::app::pages) enum Pins {
    /// Nothing: they are to be found.
    #[default]
    Nothing,
    /// Faults that came to light.
    Showed,
    /// Those, and the duties left undone.
    All,
}

/// A decision that something happened at, as a button that goes there.
fn to(key: &'static str, shop: &Shop, turn: usize, now: usize, go: &Callback<usize>) -> Html {
    let (nth, go) = (turn + 1, go.clone());
    let said = shop.say_with(key, &[("n", nth.to_string())]);
    html! {
        <button key={key} type="button" class={classes!("control", (nth == now).then_some("here"))} aria-pressed={(nth == now).to_string()}
            onclick={move |_: MouseEvent| go.emit(nth)}>{ said }</button>
    }
}

/// Every fault with where it was made and where it showed, then the duties; each leads there. `now` decisions are shown.
pub(super) fn pins(shop: &Shop, walk: &Shared<Walk>, pins: Pins, now: usize, go: &Callback<usize>) -> Html {
    if pins == Pins::Nothing {
        return Html::default();
    }
    let fault = |one: &Found| {
        let name = words::fault_of(shop, one.faults, one.rule.0);
        let made = walk.lines().get(one.made.1).map(|line| to("walk-file.made-at", shop, line.turn, now, go));
        html! {
            <li key={format!("fault-{}", one.shown)}>
                <b>{ name }{ ", " }{ words::on(shop, walk.start(), &one.parts) }</b>
                <span class="people">{ for made }{ to("walk-file.showed-at", shop, one.turn, now, go) }</span>
            </li>
        }
    };
    let lapses = walk.turns().iter().enumerate().filter(|_| pins == Pins::All);
    let lapses = lapses.flat_map(|(turn, one)| one.lapses.iter().map(move |lapse| (turn, *lapse)));
    let lapse = |(nth, (turn, lapse)): (usize, (usize, crate::walk::Lapse))| {
        html! {
            <li key={format!("lapse-{nth}")}>
                <b>{ shop.text(&format!("walk.lapse.{}", lapse.slug())) }</b>
                <span class="people">{ to("walk-file.left-at", shop, turn, now, go) }</span>
            </li>
        }
    };
    // Coats of one operation may each have made the same.
    let mut all = found(walk, shop.content());
    let line = |one: &Found| walk.lines().get(one.made.1).map(|line| line.turn);
    all.dedup_by(|one, before| {
        (one.rule, one.faults, &one.parts, one.turn, line(one))
            == (before.rule, before.faults, &before.parts, before.turn, line(before))
    });
    let rows: Vec<Html> = all.iter().map(fault).chain(lapses.enumerate().map(lapse)).collect();
    html! {
        <section key="pins" class="walk-pins" hidden={rows.is_empty()}>
            <h3>{ shop.say("walk-file.pins") }</h3>
            <ul class="rows">{ for rows }</ul>
        </section>
    }
}

/// What had been read before the last decision, and what it read itself.
pub(super) fn known(shop: &Shop, then: &Walk) -> Html {
    let Some((last, before)) = then.turns().split_last() else { return Html::default() };
    let read = |turn: &Turn| -> Vec<String> {
        let at = words::at(shop, turn.begun);
        turn.read
            .iter()
            .map(|read| format!("{at}: {}", words::read(shop, &then.start().info, read)))
            .collect()
    };
    // Of what is read again and again the last reading is what is known.
    let newest = |kind: fn(&Read) -> bool| before.iter().rev().find(|turn| turn.read.iter().any(kind));
    let kinds: [fn(&Read) -> bool; 4] = [
        |read| matches!(read, Read::Air(_)),
        |read| matches!(read, Read::Gauge { .. }),
        |read| matches!(read, Read::Meter { .. }),
        |read| matches!(read, Read::Test(_)),
    ];
    let mut turns: Vec<&Turn> = kinds.into_iter().filter_map(newest).collect();
    turns.sort_by(|one, other| one.begun.total_cmp(&other.begun));
    turns.dedup_by(|one, other| std::ptr::eq(*one, *other));
    let knew: Vec<String> = turns.into_iter().flat_map(read).collect();
    let knew = if knew.is_empty() { shop.say("walk-file.knew-nothing").to_string() } else { knew.join(" ") };
    let own = read(last);
    html! {
        <div key="known" class="walk-known">
            <p class="note"><b>{ shop.say("walk-file.knew") }</b>{ " " }{ knew }</p>
            <p class="note" hidden={own.is_empty()}><b>{ shop.say("walk-file.read") }</b>{ " " }{ own.join(" ") }</p>
        </div>
    }
}
