//! A card after it was handed in: the verdict, and what comes next.

use super::answered::seen_of;
use super::card::{cautions, place, stage_name, stand, to_stand, wanted};
use super::deal;
use super::spray::{Came, setup_of, told_of_run, use_came};
use crate::app::hooks::{use_enter, use_second_tap, use_told};
use crate::app::parts::{
    Frame, Picture, Verdict, answer_field, icon, pointing, round, seen_card, tests_field, told, use_ahead,
};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::card::{self, Answer, Card, Kind, Mark, Slate};
use crate::device::page;
use crate::learn::Round;
use crate::record::{Draft, Entry};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct HandedProps {
    pub(super) draft: Rc<Draft>,
    pub(super) card: Rc<Card>,
    pub(super) entry: Rc<Entry>,
    pub(super) put: Callback<Option<Draft>>,
}

/// Id of the heading over the answer that is worked once more.
const REWORK: &str = "rework";

#[derive(Clone, Copy, PartialEq)]
enum Step {
    Next,
    Like,
    Board,
}

#[component]
pub(super) fn HandedScreen(props: &HandedProps) -> Html {
    let shop = use_shop();
    let told = use_told();
    let (draft, card, entry) = (&props.draft, &props.card, &props.entry);
    let came = use_came(Some(card), &entry.sheet.slug, Some(&entry.answer));
    let of_entry = (shop.clone(), Rc::clone(card), Rc::clone(entry), came.clone());
    let graded = use_memo(of_entry, |(shop, card, entry, came)| {
        let world = shop.world(&entry.sheet.slug)?;
        came.graded(card, &world, &entry.answer).map(Rc::new)
    });
    let second_tap = use_second_tap();
    let held_back = entry.sure_and_wrong() && !draft.reworked;
    let length = Round::of(shop.content(), draft.within);
    let done = if length.ends(draft.done) { 0 } else { draft.done + 1 };
    // The next card is dealt while this one is read, and its panels are drawn.
    let next = use_memo((shop.clone(), entry.stamp.sequence, draft.within, done), {
        let told = Rc::clone(&told);
        move |(shop, _, within, done)| deal::fresh(shop, &told, *within, None, *done)
    });
    let ahead = use_memo((shop.clone(), Rc::clone(&next)), |(shop, next)| {
        next.as_ref().as_ref().map(|next| deal::panels(shop, next)).unwrap_or_default()
    });
    use_ahead((*ahead).clone());
    let go = use_callback(
        (shop.clone(), told, Rc::clone(draft), next, props.put.clone()),
        move |step: Step, (shop, told, draft, next, put)| {
            match step {
                // The second tap of a double tap is not an answer to a verdict that nobody has read.
                _ if second_tap.now() => {}
                Step::Next => put.emit((**next).clone()),
                Step::Like => {
                    put.emit(deal::fresh(shop, told, draft.within, Some(&draft.card.family), done));
                }
                Step::Board => {
                    put.emit(None);
                    Route::Home.go();
                }
            }
        },
    );
    let ends = length.ends(draft.done);
    let onward = if ends { Step::Board } else { Step::Next };
    let slate = use_state(|| Slate::for_card(card));
    let again = use_state(|| false);
    let at_stand = use_state_eq(|| false);
    let on_slate = {
        let (slate, again) = (slate.setter(), again.setter());
        Callback::from(move |made: Slate| {
            slate.set(made);
            again.set(false);
        })
    };
    let worked = slate.answer(card);
    let worked_came = use_came(Some(card), &entry.sheet.slug, worked.as_ref());
    let measuring = worked_came == Came::Measuring;
    let check = {
        let (shop, card, again, worked) = (shop.clone(), Rc::clone(card), again.setter(), worked.clone());
        let (sheet, draft, put) = (entry.sheet.slug.clone(), Rc::clone(draft), props.put.clone());
        Callback::from(move |()| {
            let graded = shop
                .world(&sheet)
                .zip(worked.as_ref())
                .and_then(|(world, answer)| worked_came.graded(&card, &world, answer));
            if second_tap.now() || measuring {
                // The second tap of a double tap, as above; or it cannot be told yet.
            } else if graded.is_some_and(|graded| graded.mark == Mark::Right) {
                put.emit(Some(Draft { reworked: true, ..(*draft).clone() }));
            } else {
                again.set(worked.is_some());
                page::bring(REWORK);
            }
        })
    };
    let on_enter = if *at_stand {
        Callback::from(|()| ())
    } else if held_back {
        check.clone()
    } else {
        go.reform(move |()| onward)
    };
    use_enter(on_enter);
    let button = |step: Step, key: &'static str, class: &'static str, shown: bool| {
        let onclick = go.reform(move |_: MouseEvent| step);
        html! { <button type="button" {key} {class} hidden={!shown} {onclick}>{ shop.say(key) }</button> }
    };
    let next = if ends { "control" } else { "next-step" };
    let action = html! {
        <div class="onward">
            <p key="done" class="note" hidden={!ends}>{ shop.say_with("verdict.round-done", &[("of", length.cards.to_string())]) }</p>
            { button(Step::Like, "verdict.more", "control", true) }
            { button(Step::Next, "verdict.next", next, true) }
            { button(Step::Board, "verdict.board", "next-step", ends) }
        </div>
    };
    let (said, class) = match &worked {
        Some(_) if measuring => ("spray.measuring", "next-step not-yet"),
        Some(_) => ("verdict.check", "next-step"),
        None => (wanted(card.kind), "next-step not-yet"),
    };
    let toggle = on_slate.reform({
        let slate = (*slate).clone();
        move |_: MouseEvent| slate.clone().toggle_not_enough()
    });
    let rework_action = html! {
        <div class="hand-in">
            <button key="not-enough" type="button" class={classes!("control", "not-enough", slate.not_enough.then_some("picked"))}
                aria-pressed={slate.not_enough.to_string()} onclick={toggle}>
                { icon(Picture::NotEnough) }{ shop.say("card.not-enough") }
            </button>
            <button key="check" type="button" {class} onclick={check.reform(|_: MouseEvent| ())}>{ shop.say(said) }</button>
        </div>
    };
    let action = if held_back { rework_action } else { action };
    if *at_stand && let Some(setup) = setup_of(&shop, card, &entry.sheet.slug) {
        return stand(setup, &slate, &on_slate, &at_stand);
    }
    let points = card.kind == Kind::Point;
    let rework = graded.as_ref().as_ref().filter(|_| entry.sure_and_wrong()).map(|graded| {
        let field = html! {
            <>
                { tests_field(&shop, card, &slate, &on_slate) }
                { answer_field(&shop, card, &slate, &on_slate, "rework") }
                { to_stand(&shop, card, &slate, &at_stand) }
            </>
        };
        rework(&shop, card, &graded.solution.right, (draft.reworked, *again), field)
    });
    let on_place = if held_back { pointing(card, &slate, &on_slate) } else { Callback::from(|_| ()) };
    // Who is to point again has the panel beside what is asked.
    let panels = seen_of(&shop, (card, entry, &came), slate.place, &on_place);
    let panels = if points {
        html! { <>{ panels }{ for rework.clone() }</> }
    } else {
        panels
    };
    let verdict = (*graded).clone().map(|graded| {
        let world = shop.world(&entry.sheet.slug);
        let right = &graded.solution.right;
        let tests = world.map(|world| card::weigh(card, &world, right, &entry.answer)).unwrap_or_default();
        html! {
            <Verdict key="verdict" card={Rc::clone(card)} {graded} {tests} answer={entry.answer.clone()} certainty={entry.certainty} {panels} />
        }
    });
    html! {
        <Frame class="handed" title={stage_name(&shop, card)} note={place(&shop, draft, length)} back={Some(Route::Home)}
            marks={round(&shop, draft.done + 1, length.cards)} cautions={cautions(&shop, card)} {action}>
            <div key="verdict" class="verdict-place">{ verdict.unwrap_or_else(|| told_of_run(&shop, &came)) }</div>
            <div key="rework" hidden={points || rework.is_none()}>
                { for rework.filter(|_| !points) }
            </div>
            { seen_card(&shop, card) }
        </Frame>
    }
}

/// A card that was wrong and would have been done on the job is answered once more before anything else: whether that is
/// done, and whether it was wrong again.
fn rework(shop: &Shop, card: &Card, right: &Answer, (done, again): (bool, bool), field: Html) -> Html {
    let said = match (done, again) {
        (true, _) => shop.say("verdict.rework-done"),
        (_, true) => shop.say("verdict.rework-again"),
        _ => AttrValue::default(),
    };
    html! {
        <section key="rework" class="rework">
            <h2 id={REWORK} tabindex="-1">{ shop.say("verdict.rework-head") }</h2>
            <div key="ask" hidden={done}>
                <p>{ shop.say("verdict.rework-why") }</p>
                <div class="in-view">{ told(shop, card, right) }</div>
                { field }
            </div>
            <p key="said" role="status">{ said }</p>
        </section>
    }
}
