//! Where it goes on after a verdict: the next card, another one of its kind, or the board.

use crate::app::hooks::{use_second_tap, use_told};
use crate::app::pages::deal;
use crate::app::parts::use_ahead;
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::learn::Round;
use crate::record::Draft;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Clone, Copy, PartialEq)]
enum Step {
    Next,
    Like,
    Board,
}

/// The ways on, and whether the round ends here.
pub(super) struct Onward {
    pub(super) length: Round,
    ends: bool,
    go: Callback<Step>,
}

/// The ways on from a card that is on the desk, answered as the entry of that number.
#[hook]
pub(super) fn use_onward(draft: &Rc<Draft>, answered: u64, put: &Callback<Option<Draft>>) -> Onward {
    let shop = use_shop();
    let told = use_told();
    let second_tap = use_second_tap();
    let length = Round::of(shop.content(), draft.within);
    let ends = length.ends(draft.done);
    let done = if ends { 0 } else { draft.done + 1 };
    // The next card is dealt while this one is read, and its panels are drawn.
    let next = use_memo((shop.clone(), answered, draft.within, done), {
        let told = Rc::clone(&told);
        move |(shop, _, within, done)| deal::fresh(shop, &told, *within, None, *done)
    });
    let ahead = use_memo((shop.clone(), Rc::clone(&next)), |(shop, next)| {
        next.as_ref().as_ref().map(|next| deal::panels(shop, next)).unwrap_or_default()
    });
    use_ahead((*ahead).clone());
    let go = use_callback(
        (shop, told, Rc::clone(draft), next, put.clone()),
        move |step: Step, (shop, told, draft, next, put)| match step {
            // The second tap of a double tap is not an answer to a verdict that nobody has read.
            _ if second_tap.now() => {}
            Step::Next => put.emit((**next).clone()),
            Step::Like => put.emit(deal::fresh(shop, told, draft.within, Some(&draft.card.family), done)),
            Step::Board => {
                put.emit(None);
                Route::Home.go();
            }
        },
    );
    Onward { length, ends, go }
}

impl Onward {
    /// The one next thing to do.
    pub(super) fn next(&self) -> Callback<()> {
        let step = if self.ends { Step::Board } else { Step::Next };
        self.go.reform(move |()| step)
    }

    pub(super) fn action(&self, shop: &Shop) -> Html {
        let button = |step: Step, key: &'static str, class: &'static str, shown: bool| {
            let onclick = self.go.reform(move |_: MouseEvent| step);
            html! { <button type="button" {key} {class} hidden={!shown} {onclick}>{ shop.say(key) }</button> }
        };
        let next = if self.ends { "control" } else { "next-step" };
        let of = [("of", self.length.cards.to_string())];
        html! {
            <div class="onward">
                <p key="done" class="note" hidden={!self.ends}>{ shop.say_with("verdict.round-done", &of) }</p>
                { button(Step::Like, "verdict.more", "control", true) }
                { button(Step::Next, "verdict.next", next, true) }
                { button(Step::Board, "verdict.board", "next-step", self.ends) }
            </div>
        }
    }
}
