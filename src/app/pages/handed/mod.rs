//! A card after it was handed in: the verdict, and what comes next.

mod onward;
mod rework;

use super::answered::seen_of;
use super::card::{cautions, place, stage_name};
use super::spray::{told_of_run, use_came};
use crate::app::hooks::use_enter;
use crate::app::parts::{Frame, Verdict, round, seen_card};
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::card::{self, Card, Kind};
use crate::record::{Draft, Entry};
use onward::use_onward;
use rework::use_rework;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct HandedProps {
    pub(super) draft: Rc<Draft>,
    pub(super) card: Rc<Card>,
    pub(super) entry: Rc<Entry>,
    pub(super) put: Callback<Option<Draft>>,
    /// Whether the verdict was on the screen before: the screen was left and is come back to, or the page was loaded anew.
    pub(super) left: bool,
}

#[component]
pub(super) fn HandedScreen(props: &HandedProps) -> Html {
    let shop = use_shop();
    let (draft, card, entry) = (&props.draft, &props.card, &props.entry);
    let came = use_came(Some(card), &entry.sheet.slug, Some(&entry.answer));
    let of_entry = (shop.clone(), Rc::clone(card), Rc::clone(entry), came.clone());
    let graded = use_memo(of_entry, |(shop, card, entry, came)| {
        let world = shop.world(&entry.sheet.slug)?;
        came.graded(card, &world, &entry.answer).map(Rc::new)
    });
    let onward = use_onward(draft, entry.stamp.sequence, &props.put);
    let rework = use_rework(props, graded.is_some());
    let held_back = entry.sure_and_wrong() && !draft.reworked;
    use_enter(if *rework.at_stand {
        Callback::from(|()| ())
    } else if held_back {
        rework.check.clone()
    } else {
        onward.next()
    });
    if let Some(stand) = rework.stand(&shop, card, &entry.sheet.slug) {
        return stand;
    }
    let graded = (*graded).clone();
    let action = if held_back { rework.action(&shop, card) } else { onward.action(&shop) };
    let points = card.kind == Kind::Point;
    let field = graded
        .as_ref()
        .filter(|_| entry.sure_and_wrong())
        .map(|graded| rework.field(&shop, card, &graded.solution.right, draft.reworked));
    let on_place = if held_back { rework.on_place(card) } else { Callback::from(|_| ()) };
    // Who is to point again has the panel beside what is asked.
    let panels = seen_of(&shop, (card, entry, &came), rework.slate.place, &on_place);
    let panels = if points {
        html! { <>{ panels }{ for field.clone() }</> }
    } else {
        panels
    };
    let verdict = graded.map(|graded| {
        let world = shop.world(&entry.sheet.slug);
        let right = &graded.solution.right;
        let tests = world.map(|world| card::weigh(card, &world, right, &entry.answer)).unwrap_or_default();
        html! {
            <Verdict key="verdict" card={Rc::clone(card)} {graded} {tests} answer={entry.answer.clone()} certainty={entry.certainty} {panels} />
        }
    });
    html! {
        <Frame class="handed" title={stage_name(&shop, card)} note={place(&shop, draft, onward.length)} back={Some(Route::Home)}
            marks={round(&shop, draft.done + 1, onward.length.cards)} cautions={cautions(&shop, card)} {action}>
            <div key="verdict" class="verdict-place">{ verdict.unwrap_or_else(|| told_of_run(&shop, &came)) }</div>
            <div key="rework" hidden={points || field.is_none()}>
                { for field.filter(|_| !points) }
            </div>
            { seen_card(&shop, card) }
        </Frame>
    }
}
