//! A card after it was handed in: the verdict, and what comes next.

use super::card::{cautions, place, stage_name};
use super::deal;
use crate::app::hooks::{use_book, use_keys};
use crate::app::parts::{Frame, Picture, Verdict, answer_field, card_ticket, icon, round};
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::card::{self, Card, Mark, Slate};
use crate::device::{clock, page};
use crate::learn::{ROUND, ends_round};
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

/// A tap so soon after the screen came up was meant for the one before.
const SECOND_TAP_MS: f64 = 400.0;
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
    let book = use_book().book;
    let (draft, card, entry) = (&props.draft, &props.card, &props.entry);
    let graded = use_memo((shop.clone(), Rc::clone(card), Rc::clone(entry)), |(shop, card, entry)| {
        let world = shop.world(&entry.sheet.slug)?;
        card::grade(card, &world, &entry.answer).map(Rc::new)
    });
    let shown = use_memo((), |()| clock::ticks());
    let held_back = entry.sure_and_wrong() && !draft.reworked;
    let go = use_callback(
        (shop.clone(), Rc::clone(&book.journal), Rc::clone(draft), props.put.clone(), held_back),
        move |step: Step, (shop, journal, draft, put, held_back)| {
            let done = if ends_round(draft.done) { 0 } else { draft.done + 1 };
            match step {
                // The second tap of a double tap is not an answer to a verdict that nobody has read.
                _ if clock::ticks() - *shown < SECOND_TAP_MS => {}
                _ if *held_back => page::bring(REWORK),
                Step::Next => put.emit(deal::fresh(shop, journal, draft.within, None, done)),
                Step::Like => {
                    put.emit(deal::fresh(shop, journal, draft.within, Some(&draft.card.family), done));
                }
                Step::Board => {
                    put.emit(None);
                    Route::Home.go();
                }
            }
        },
    );
    let ends = ends_round(draft.done);
    let onward = if ends { Step::Board } else { Step::Next };
    let on_key = use_callback(go.clone(), move |key: String, go| {
        let enter = key == "Enter";
        if enter {
            go.emit(onward);
        }
        enter
    });
    use_keys(on_key);
    let on_reworked = use_callback((Rc::clone(draft), props.put.clone()), |(), (draft, put)| {
        put.emit(Some(Draft { reworked: true, ..(**draft).clone() }));
    });
    let button = |step: Step, key: &'static str, class: &'static str, shown: bool| {
        let onclick = go.reform(move |_: MouseEvent| step);
        html! { <button type="button" {key} {class} hidden={!shown} {onclick}>{ shop.say(key) }</button> }
    };
    let (free, next) = (!held_back, if ends { "control" } else { "next-step" });
    let action = html! {
        <div class="onward">
            <p key="done" class="note" hidden={!(free && ends)}>{ shop.say_with("verdict.round-done", &[("of", ROUND.to_string())]) }</p>
            { button(Step::Like, "verdict.more", "control", free) }
            { button(Step::Next, "verdict.next", next, free) }
            { button(Step::Board, "verdict.board", "next-step", free && ends) }
            { button(onward, "verdict.first", "next-step not-yet", held_back) }
        </div>
    };
    let verdict = (*graded).clone().map(|graded| {
        html! {
            <Verdict key="verdict" card={Rc::clone(card)} {graded} answer={entry.answer.clone()} certainty={entry.certainty} />
        }
    });
    html! {
        <Frame class="handed" title={stage_name(&shop, card)} note={place(&shop, draft)} back={Some(Route::Home)}
            marks={round(&shop, draft.done + 1, ROUND)} cautions={cautions(&shop, card)} {action}>
            <div key="verdict" class="verdict-place">{ for verdict }</div>
            <div key="rework" hidden={!entry.sure_and_wrong()}>
                <Rework card={Rc::clone(card)} sheet={entry.sheet.slug.clone()} done={draft.reworked} {on_reworked} />
            </div>
            <details key="card" class="seen">
                <summary>{ shop.say("verdict.card") }</summary>
                { card_ticket(&shop, card) }
                <p class="asked">{ shop.voice().ask(card) }</p>
            </details>
        </Frame>
    }
}

#[derive(Properties, PartialEq)]
struct ReworkProps {
    card: Rc<Card>,
    sheet: String,
    done: bool,
    on_reworked: Callback<()>,
}

/// A card that was wrong and would have been done on the job is answered once more before anything else.
#[component]
fn Rework(props: &ReworkProps) -> Html {
    let shop = use_shop();
    let card = &props.card;
    let slate = use_state(|| Slate::for_card(card));
    let again = use_state(|| false);
    let on_slate = use_callback((), {
        let (slate, again) = (slate.setter(), again.setter());
        move |made: Slate, ()| {
            slate.set(made);
            again.set(false);
        }
    });
    let check = {
        let (shop, card, slate, again) = (shop.clone(), Rc::clone(card), (*slate).clone(), again.setter());
        let (sheet, on_reworked) = (props.sheet.clone(), props.on_reworked.clone());
        Callback::from(move |_: MouseEvent| {
            let graded = shop
                .world(&sheet)
                .zip(slate.answer(&card))
                .and_then(|(world, answer)| card::grade(&card, &world, &answer));
            if graded.is_some_and(|graded| graded.mark == Mark::Right) {
                on_reworked.emit(());
            } else {
                again.set(true);
            }
        })
    };
    let not_enough = slate.not_enough;
    let toggle = on_slate.reform({
        let slate = (*slate).clone();
        move |_: MouseEvent| slate.clone().toggle_not_enough()
    });
    html! {
        <section class="rework">
            <h2 id={REWORK} tabindex="-1">{ shop.say("verdict.rework-head") }</h2>
            <div key="ask" hidden={props.done}>
                <p>{ shop.say("verdict.rework-why") }</p>
                { answer_field(&shop, card, &slate, &on_slate, "rework") }
                <div class="hand-in">
                    <button type="button" class={classes!("control", "not-enough", not_enough.then_some("picked"))}
                        aria-pressed={not_enough.to_string()} onclick={toggle}>
                        { icon(Picture::NotEnough) }{ shop.say("card.not-enough") }
                    </button>
                    <button type="button" class="next-step" onclick={check}>{ shop.say("verdict.check") }</button>
                </div>
            </div>
            <p key="said" role="status">
                { if props.done { shop.say("verdict.rework-done") } else if *again { shop.say("verdict.rework-again") } else { AttrValue::default() } }
            </p>
        </section>
    }
}
