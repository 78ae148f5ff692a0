//! The journal as it may be told now, worked out with each event.

use super::{use_book, use_standings};
use crate::app::state::{Told, use_shop};
use crate::device::clock;
use crate::learn::check::Now;
use crate::learn::memory::Day;
use crate::record::Moment;
use crate::signoff::Standing;
use std::rc::Rc;
use yew::prelude::*;

/// The clock of the device, as the core takes it.
pub(in crate::app) fn now() -> Now {
    Now { day: clock::today(), at: Moment::of(&clock::now()) }
}

#[hook]
pub(in crate::app) fn use_told() -> Rc<Told> {
    let shop = use_shop();
    let books = use_book();
    let journal = books.book.journal.clone();
    let standings = use_standings();
    let known = (journal.clone(), shop.settings.person.clone(), standings.clone(), clock::today());
    use_memo(known, move |(_, person, ..)| {
        let end = |slug: &str| match standings.of(shop.content(), slug)? {
            Standing::Held(one) => Some((slug.to_owned(), Day(one.until.date()?.number()))),
            _ => None,
        };
        let ends = shop.content().competencies.iter().filter_map(|one| end(&one.slug)).collect();
        let mut followed = books.followed.borrow_mut();
        Told::new(shop.content(), journal, person.clone(), (now(), ends), &mut followed)
    })
}
