//! Who is stuck on what: what is misread, sure and wrong first.

use super::card_title::card_title;
use super::grid::name_of;
use crate::app::hooks::use_sets;
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::{CrewView, SetsContext, Shared, Shop, use_shop};
use crate::exchange::crew::{Misread, Slipped, Stuck};
use yew::prelude::*;

/// Rows that are shown before more are asked for.
const FIRST: usize = 8;
/// People who are listed under one, those first who are most sure; the table has all of them.
const PEOPLE: usize = 12;

#[derive(Properties, PartialEq)]
pub(super) struct StuckProps {
    pub(super) view: Shared<CrewView>,
}

#[component]
pub(super) fn StuckList(props: &StuckProps) -> Html {
    let shop = use_shop();
    let all = use_state(|| false);
    let row = |(nth, one): (usize, &Stuck)| html! { <One key={format!("{:?}", one.misread)} view={props.view.clone()} {nth} /> };
    let stuck: &[Stuck] = props.view.stuck.as_deref().unwrap_or_default();
    let shown = if *all { stuck.len() } else { FIRST };
    let more = {
        let all = all.clone();
        Callback::from(move |_: MouseEvent| all.set(!*all))
    };
    html! {
        <section class="stuck" hidden={stuck.is_empty()}>
            <h2>{ shop.say("crew.stuck") }</h2>
            <p class="note">{ shop.say("crew.stuck-why") }</p>
            <ul class="rows">{ for stuck.iter().take(shown).enumerate().map(row) }</ul>
            <button type="button" class="control" hidden={stuck.len() <= FIRST} aria-expanded={(*all).to_string()} onclick={more}>
                { if *all { shop.say("crew.fewer") } else { shop.say_with("crew.all", &[("n", stuck.len().to_string())]) } }
            </button>
        </section>
    }
}

/// The kinds of card that something was misread on.
pub(super) fn kinds(shop: &Shop, sets: &SetsContext, families: &[String]) -> AttrValue {
    // What was done on a walk may be asked by no card.
    let Some(first) = families.first() else { return shop.say("walked.decisions") };
    let family = card_title(shop, sets, first);
    let more = families.len() - 1;
    let told = [("family", family.to_string()), ("n", more.to_string())];
    match more {
        0 => family,
        1 => shop.say_with("crew.kind.two", &told),
        _ => shop.say_with("crew.kind.more", &told),
    }
}

/// What the card replies to it. That is true of the work, and never what somebody thought.
pub(super) fn reply(shop: &Shop, misread: &Misread) -> AttrValue {
    match misread {
        Misread::Slip(slip) => {
            shop.say_with("crew.replies", &[("words", shop.text(&format!("slip.{slip}")).to_string())])
        }
        Misread::Cards(_) => shop.say("crew.no-reply"),
        Misread::Rule(rule) => {
            let rule = shop.text(&format!("rule.{rule}")).to_string();
            shop.say_with("walked.broke-rule", &[("rule", rule)])
        }
    }
}

#[derive(Properties, PartialEq)]
struct OneProps {
    view: Shared<CrewView>,
    nth: usize,
}

/// One misconception; whose it is is drawn once it is opened, since drawing everybody under every one takes time.
#[component]
fn One(props: &OneProps) -> Html {
    let (shop, sets) = (use_shop(), use_sets());
    let opened = use_state(|| false);
    let Some(one) = props.view.stuck.as_deref().and_then(|stuck| stuck.get(props.nth)) else {
        return Html::default();
    };
    let told = [
        ("n", one.count.to_string()),
        ("sure", one.sure.to_string()),
        ("people", one.people.len().to_string()),
    ];
    let on_toggle = {
        let opened = opened.setter();
        Callback::from(move |_: Event| opened.set(true))
    };
    let people = if *opened { one.people.as_slice() } else { &[] };
    let more = one.people.len().saturating_sub(PEOPLE);
    html! {
        <li>
            <details ontoggle={on_toggle}>
                <summary>
                    <span class="words">
                        <b>{ kinds(&shop, &sets, &one.families) }</b>
                        <span>{ reply(&shop, &one.misread) }</span>
                        <span class={classes!("note", (one.sure > 0).then_some("sure-count"))}>{ icon(if one.sure > 0 { Picture::Cross } else { Picture::Dash }) }{ shop.say_with("crew.counts", &told) }</span>
                    </span>
                </summary>
                <ul class="rows links">{ for people.iter().take(PEOPLE).map(|who| person(&shop, who)) }</ul>
                <p class="note" hidden={more == 0}>{ shop.say_with("crew.more-people", &[("n", more.to_string())]) }</p>
            </details>
        </li>
    }
}

fn person(shop: &Shop, one: &Slipped) -> Html {
    slip_row(shop, one, name_of(shop, &one.name), None)
}

/// What one person misread, with the latest answer behind it; `reply` where it is not told above.
pub(super) fn slip_row(shop: &Shop, one: &Slipped, title: AttrValue, reply: Option<AttrValue>) -> Html {
    let to = Route::CrewAnswer { device: one.example.device.clone(), sequence: one.example.sequence };
    let told = [
        ("n", one.count.to_string()),
        ("sure", one.sure.to_string()),
        ("right", one.right_since.to_string()),
    ];
    let last = one.last.map(|at| crate::device::clock::local(&at.to_string())).unwrap_or_default();
    html! {
        <li key={format!("{}-{:?}", one.key, one.misread)}>
            <a href={to.address()} class="row-link">
                <span class="words"><b>{ title }</b><span hidden={reply.is_none()}>{ reply }</span><span>{ shop.say_with("crew.slip", &told) }</span><span class="note">{ shop.say_with("crew.last", &[("at", last)]) }</span></span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}
