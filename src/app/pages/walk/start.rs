//! A walk before it is begun: its job ticket, and how it is to be walked.

use crate::app::hooks::{use_second_tap, use_walks};
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Keep, Shop, use_shop};
use crate::content::WalkInfo;
use crate::device::{clock, page};
use crate::rules::term::Term;
use crate::walk::planted::planted;
use crate::walk::{Kept, Mode, Start, Walk};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct WalkStartProps {
    pub(in crate::app) slug: String,
}

#[component]
pub(in crate::app) fn WalkStart(props: &WalkStartProps) -> Html {
    let shop = use_shop();
    let walks = use_walks();
    let mode = use_state(|| Mode::Guided);
    let failed = use_state(|| false);
    let busy = use_state(|| false);
    let second_tap = use_second_tap();
    let Some(info) = shop.content().walk(&props.slug) else {
        return html! {
            <Frame class="sheet" title={shop.say("walk.title")} back={Some(Route::Walks)} cautions={shop.cautions_for(&[])}>
                <p key="gone" class="lead" role="status">{ shop.say("walk.gone") }</p>
            </Frame>
        };
    };
    let begin = {
        let (shop, info, mode) = (shop.clone(), info.clone(), *mode);
        let (keep, failed, busy) = (walks.keep.clone(), failed.setter(), busy.setter());
        Callback::from(move |_: MouseEvent| {
            if second_tap.now() {
                return;
            }
            let (shop, info, keep) = (shop.clone(), info.clone(), keep.clone());
            let (failed, busy) = (failed.clone(), busy.clone());
            busy.set(true);
            // Mistakes are planted in a walk by trying them, which takes a moment.
            page::once_drawn(move || {
                let Some(kept) = begun(&shop, &info, mode) else {
                    busy.set(false);
                    return failed.set(true);
                };
                let to = Route::WalkOf { id: kept.id.clone() };
                let done = Callback::from(move |stored: bool| {
                    busy.set(false);
                    if stored {
                        to.go_instead();
                    } else {
                        failed.set(true);
                    }
                });
                keep.emit(Keep { what: kept, done });
            });
        })
    };
    let way = |one: &Mode| {
        let (set, one) = (mode.setter(), *one);
        let picked = *mode == one;
        let onchange = move |_: Event| set.set(one);
        html! {
            <label key={one.slug()} class={classes!("choice", "walk-way", picked.then_some("picked"))}>
                <input type="radio" name="way" checked={picked} {onchange} />
                <span class="letter" aria-hidden="true">{ icon(Picture::Tick) }</span>
                <span class="words"><b>{ shop.text(&format!("walk.mode.{}", one.slug())) }</b><span class="note">{ shop.say(&format!("walk.way.{}", one.slug())) }</span></span>
            </label>
        }
    };
    let action = html! {
        <button type="button" class="next-step" onclick={begin}>{ shop.say("walk.begin") }{ icon(Picture::Go) }</button>
    };
    html! {
        <Frame class="sheet walk-start" title={shop.text(&format!("walk.name.{}", info.slug))} back={Some(Route::Walks)} cautions={shop.cautions_for(&[])} {action}>
            { ticket(&shop, info) }
            <section key="way">
                <h2 id="way-name">{ shop.say("walk.how") }</h2>
                <div class="choices" role="radiogroup" aria-labelledby="way-name">{ for WAYS.iter().map(way) }</div>
            </section>
            <p key="busy" role="status" hidden={!*busy}>{ shop.say("walk.preparing") }</p>
            <p key="failed" class="wrong" role="alert" hidden={!*failed}>{ shop.say("walk.not-begun") }</p>
        </Frame>
    }
}

/// The ways that are offered.
const WAYS: [Mode; 3] = [Mode::Guided, Mode::Own, Mode::Inspect];

/// A walk at its beginning, to be kept.
fn begun(shop: &Shop, info: &WalkInfo, mode: Mode) -> Option<Kept> {
    let sheet = shop.content().sheet(&info.ticket.sheet)?;
    let start = Start::of(info, sheet, shop.content()).ok()?;
    let seed = page::random_bytes::<4>().map_or(0, u32::from_le_bytes);
    let now = clock::now();
    let walk = Walk::begin(start, mode, seed);
    let walk = if mode == Mode::Inspect { planted(&walk, seed, shop.content())? } else { walk };
    Some(Kept {
        id: page::random_name(),
        person: shop.settings.person.clone(),
        begun: now.clone(),
        changed: now,
        saved: walk.saved(),
        taken_over: None,
        named: Vec::new(),
        graded: false,
    })
}

/// The job ticket of a walk.
pub(super) fn ticket(shop: &Shop, info: &WalkInfo) -> Html {
    let ticket = &info.ticket;
    let part = |(place, part): (usize, &crate::content::Part)| {
        html! { <li key={place}>{ super::words::part(shop, info, place) }{ ": " }{ super::words::wood(shop, &part.wood) }</li> }
    };
    let shaded = if ticket.shaded { "shaded" } else { "plain" };
    let facts = [
        ("colour", shop.text(&format!("on-ticket.{shaded}.{}", ticket.colour.slug())).to_string()),
        ("look", shop.text(&format!("term.{}", ticket.look.slug())).to_string()),
        ("class", shop.text(&format!("term.{}", ticket.class.slug())).to_string()),
        ("filler", shop.text(&format!("term.{}", ticket.filler.slug())).to_string()),
        ("binding", shop.text(&format!("on-ticket.binding.{}", ticket.binding.slug())).to_string()),
        ("clear", shop.say_with("walk.ticket.coats", &[("n", ticket.clear_coats.to_string())]).to_string()),
        ("sheet", shop.sheet_name(&ticket.sheet).to_string()),
        ("day", shop.say_with("walk.ticket.until", &[("day", ticket.days.to_string())]).to_string()),
    ];
    let fact = |(key, value): &(&'static str, String)| {
        html! { <div key={*key} class="fact words"><dt>{ shop.say(&format!("walk.ticket.{key}")) }</dt><dd>{ value.clone() }</dd></div> }
    };
    let number = [("n", ticket.number.to_string())];
    html! {
        <section key="ticket" class="ticket walk-ticket">
            <span class="hole" aria-hidden="true"></span>
            <h2>{ shop.text(&format!("ticket.{}", ticket.slug)) }<small>{ " " }{ shop.say_with("walk.ticket.number", &number) }</small></h2>
            <ul class="walk-woods">{ for ticket.parts.iter().enumerate().map(part) }</ul>
            <dl class="facts">{ for facts.iter().map(fact) }</dl>
        </section>
    }
}
