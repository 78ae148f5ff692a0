//! Beginning a walk: made, stored, gone to.

use crate::app::hooks::{use_second_tap, use_walks};
use crate::app::route::Route;
use crate::app::state::{Onward, Shop, use_shop};
use crate::device::{clock, page};
use crate::walk::planted::planted;
use crate::walk::window::Became;
use crate::walk::{Kept, Mode, Start, Walk};
use std::rc::Rc;
use yew::prelude::*;

/// What is to be walked, and how.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app::pages) struct Order {
    /// Slug of the walk.
    pub(in crate::app::pages) walk: String,
    /// Slug of the shop sheet, one of this tablet.
    pub(in crate::app::pages) sheet: String,
    pub(in crate::app::pages) mode: Mode,
    /// The number that chance comes from; none: any.
    pub(in crate::app::pages) seed: Option<u32>,
}

/// How beginning stands.
pub(in crate::app::pages) struct Beginning {
    pub(in crate::app::pages) begin: Callback<MouseEvent>,
    pub(in crate::app::pages) busy: bool,
    pub(in crate::app::pages) failed: bool,
}

#[hook]
pub(in crate::app::pages) fn use_begin(order: Option<Order>) -> Beginning {
    let shop = use_shop();
    let keep = use_walks().keep;
    let failed = use_state(|| false);
    let busy = use_state(|| false);
    // A second tap comes before the screen says that the first one is under way.
    let under_way = use_mut_ref(|| false);
    let second_tap = use_second_tap();
    let begin = {
        let (failed, busy) = (failed.setter(), busy.setter());
        let set_busy = Callback::from({
            let under_way = Rc::clone(&under_way);
            move |now: bool| {
                under_way.replace(now);
                busy.set(now);
            }
        });
        Callback::from(move |_: MouseEvent| {
            let Some(order) = order.clone().filter(|_| !second_tap.now() && !*under_way.borrow()) else {
                return;
            };
            let (shop, keep) = (shop.clone(), keep.clone());
            let (failed, set_busy) = (failed.clone(), set_busy.clone());
            set_busy.emit(true);
            // Mistakes are planted in a walk by trying them, which takes a moment.
            page::once_drawn(move || {
                let Some(kept) = begun(&shop, &order) else {
                    set_busy.emit(false);
                    return failed.set(true);
                };
                let to = Route::WalkOf { id: kept.id.clone() };
                let done = Callback::from(move |became: Became| {
                    set_busy.emit(false);
                    if became == Became::Stored {
                        to.go_instead();
                    } else {
                        failed.set(true);
                    }
                });
                keep.emit(Onward { from: None, to: Rc::new(kept), done });
            });
        })
    };
    Beginning { begin, busy: *busy, failed: *failed }
}

/// A walk at its beginning, to be kept.
fn begun(shop: &Shop, order: &Order) -> Option<Kept> {
    let content = shop.content();
    let start = Start::of(content.walk(&order.walk)?, content.sheet(&order.sheet)?, content).ok()?;
    let any = || page::random_bytes::<4>().map_or(0, u32::from_le_bytes);
    let seed = order.seed.unwrap_or_else(any);
    let walk = Walk::begin(start, order.mode, seed);
    let walk = if order.mode == Mode::Inspect { planted(&walk, seed, content)? } else { walk };
    let person = shop.settings.person.clone();
    Some(Kept::begun(page::random_name(), person, clock::now(), walk.saved()))
}

/// What is said while a walk is begun, and where that failed.
pub(in crate::app::pages) fn said(shop: &Shop, beginning: &Beginning) -> Html {
    html! {
        <>
            <p key="busy" role="status" hidden={!beginning.busy}>{ shop.say("walk.preparing") }</p>
            <p key="failed" class="wrong" role="alert" hidden={!beginning.failed}>{ shop.say("walk.not-begun") }</p>
        </>
    }
}
