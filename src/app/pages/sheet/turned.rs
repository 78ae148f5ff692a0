//! Finds what changes between two sheets, some families between two frames, so that the screen stays in hand.

use crate::app::state::{Shop, use_shop};
use crate::card::{Change, changed};
use crate::content::World;
use crate::device::{NextFrame, clock};
use crate::rules::sheet::Sheet;
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// Milliseconds of a frame that the search takes; one family is never parted.
const SLICE_MS: f64 = 8.0;

/// What was found so far.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Found {
    /// Places of families in the content, each with what changes of it.
    pub(super) changes: Vec<(usize, Change)>,
    pub(super) done: bool,
}

/// The frame that is waited for; dropped, it is not waited for any more.
type Waiting = Rc<RefCell<Option<NextFrame>>>;

/// Searches from the first family on whenever the sheets are others.
#[hook]
pub(super) fn use_turned(before: Option<Sheet>, after: Option<Sheet>) -> Rc<Found> {
    let shop = use_shop();
    let found = use_state(|| Rc::new(Found::default()));
    use_effect_with((before, after), {
        let set = found.setter();
        move |(before, after)| {
            let waiting = Waiting::default();
            set.set(Rc::new(Found::default()));
            if let (Some(before), Some(after)) = (before.clone(), after.clone()) {
                let search = Search { shop, before, after, set, waiting: Rc::clone(&waiting) };
                next(Rc::new(search), Found::default());
            }
            move || drop(waiting.take())
        }
    });
    (*found).clone()
}

struct Search {
    shop: Shop,
    before: Sheet,
    after: Sheet,
    set: UseStateSetter<Rc<Found>>,
    waiting: Waiting,
}

/// Goes on before the next frame.
fn next(search: Rc<Search>, mut found: Found) {
    let waiting = Rc::clone(&search.waiting);
    let frame = NextFrame::ask(move || {
        let content = search.shop.content();
        let world = |sheet| World { content, sheet };
        let (before, after) = (world(&search.before), world(&search.after));
        let begun = clock::ticks();
        while let Some(family) = content.families.get(found.changes.len()) {
            found.changes.push((found.changes.len(), changed(&family.id, &before, &after)));
            if clock::ticks() - begun > SLICE_MS {
                break;
            }
        }
        found.done = found.changes.len() >= content.families.len();
        search.set.set(Rc::new(found.clone()));
        if !found.done {
            next(Rc::clone(&search), found);
        }
    });
    // The call of the frame that was waited for is over once this one waits.
    let over = waiting.replace(frame);
    drop(over);
}
