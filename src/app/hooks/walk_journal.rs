//! Writes into the journal what happens on walks: decisions after the screen was drawn, so that nobody waits for it.

use super::use_book;
use crate::app::state::{BookContext, OnDesk, Shared, Shop, use_shop};
use crate::device::page;
use crate::record::Walked;
use crate::walk::inspect::Inspected;
use crate::walk::journalled::{Clerk, Desk, inspected, let_go};
use crate::walk::{Kept, Mode, Walk};
use std::rc::Rc;
use yew::prelude::*;

fn hand_in(books: &BookContext, walked: Walked) {
    books.hand_in.emit((walked.into(), OnDesk::Same));
}

/// Writes down what of a walk is not written down yet.
fn write(clerk: &mut Clerk, shop: &Shop, books: &BookContext, kept: &Kept, walk: &Walk) {
    let stamp = || shop.stamp(&kept.person);
    let desk = Desk { kept, content: shop.content(), stamp: &stamp };
    for walked in clerk.rest(walk, books.book.journal.events(), desk) {
        hand_in(books, walked);
    }
}

/// Follows the walk that is on the screen.
#[hook]
pub(in crate::app) fn use_walk_journal(kept: Option<Rc<Kept>>, walk: Option<Shared<Walk>>) {
    let (shop, books) = (use_shop(), use_book());
    let clerk = use_mut_ref(Clerk::default);
    use_effect_with(walk, move |walk| {
        // Somebody else's walk is theirs to walk on.
        let own = kept.filter(|kept| kept.person == shop.settings.person);
        if let Some((kept, walk)) = own.zip(walk.clone()) {
            page::once_drawn(move || write(&mut clerk.borrow_mut(), &shop, &books, &kept, &walk));
        }
    });
}

/// Writes down that somebody else's walk was gone through, once the one that is handed in here is stored as it is: another
/// window may have been first.
#[hook]
pub(in crate::app) fn use_inspected_journal(kept: Option<Rc<Kept>>) -> Callback<(Kept, Inspected)> {
    let (shop, books) = (use_shop(), use_book());
    let waits = use_mut_ref(|| None::<(Kept, Inspected)>);
    use_effect_with(kept, {
        let waits = Rc::clone(&waits);
        move |kept| {
            let stored = waits.borrow_mut().take_if(|(to, _)| kept.as_deref() == Some(&*to));
            if let Some((to, told)) = stored {
                hand_in(&books, inspected(&to, &told, shop.stamp(&to.person)));
            }
        }
    });
    use_callback((), move |graded, ()| *waits.borrow_mut() = Some(graded))
}

/// Writes down that a walk was let go, and before it what of it was not written down yet.
pub(in crate::app) fn write_let_go(shop: &Shop, books: &BookContext, kept: &Kept) {
    if kept.saved.mode == Mode::Inspect || kept.saved.decisions.is_empty() {
        return;
    }
    if let Ok(walk) = kept.saved.replay(shop.content()) {
        write(&mut Clerk::default(), shop, books, kept, &walk);
    }
    hand_in(books, let_go(kept, shop.stamp(&kept.person)));
}
