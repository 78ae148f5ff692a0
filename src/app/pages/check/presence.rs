//! Whoever comes back to an attempt has taken it up again; whoever goes has left it, unless the page is killed.

use super::super::events::turn;
use crate::app::hooks::use_book;
use crate::app::state::{OnDesk, use_shop};
use crate::record::Step;
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// Writes both down for as long as the attempt is open; `begun` where it was begun since the page was opened and not left. What
/// is given back is set to true by what closes the attempt: then nobody has left it.
#[hook]
pub(in crate::app::pages) fn use_presence(attempt: String, open: bool, begun: bool) -> Rc<RefCell<bool>> {
    let shop = use_shop();
    let hand_in = use_book().hand_in;
    let closed = use_mut_ref(|| false);
    use_effect_with(open, {
        let closed = Rc::clone(&closed);
        move |open| {
            let open = *open;
            if open && !begun {
                hand_in.emit((turn(&shop, &attempt, Step::Resumed), OnDesk::Same));
            }
            move || {
                if open && !*closed.borrow() {
                    hand_in.emit((turn(&shop, &attempt, Step::Left), OnDesk::Same));
                }
            }
        }
    });
    closed
}
